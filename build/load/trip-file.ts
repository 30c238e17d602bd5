import { type CalendarDate, daysBetween, type Hemisphere, seasonOf } from "../model/calendar.ts";
import type { Trip } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { unknownLake } from "./named.ts";
import { present } from "./present.ts";
import { errorAt, type Fault, warningAt } from "./problem.ts";
import { quoted } from "./quote.ts";
import { readRecord } from "./read-record.ts";
import { tripSchema } from "./trip-schema.ts";
import { readYaml, type YamlDocument } from "./yaml-document.ts";

/** A trip is worked out day by day; a longer one is most likely a slip in a date. */
const LONGEST_TRIP_DAYS = 60;

/** Reads one trip; undefined when something it needs is missing. */
export function readTrip(
  { file, slug, text }: ClubFile,
  lakes: ReadonlySet<string>,
  problems: Diagnostic[],
): Trip | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const { name, from, to, rods, lakes: chosen, notes, unlisted } = readRecord(tripSchema, doc, problems);
  const dates = from === undefined || to === undefined ? undefined : datesFault(from, to);
  if (dates !== undefined) problems.push(errorAt(doc.spot(["to"]), dates));
  if (chosen !== undefined) problems.push(...lakeProblems(chosen, lakes, doc));
  if (name === undefined || from === undefined || to === undefined) return undefined;
  if (rods === undefined || chosen === undefined) return undefined;
  return {
    slug,
    name,
    from,
    to,
    rods,
    people: [],
    boats: [],
    lakes: [...new Set(chosen)],
    unlisted: unlisted ?? false,
    ...present({ notes }),
  };
}

function datesFault(from: CalendarDate, to: CalendarDate): Fault | undefined {
  const days = daysBetween(from, to) + 1;
  if (days < 1)
    return {
      code: "from-after-to",
      message: `to ${to} is before from ${from}`,
      hint: "swap or correct them",
    };
  return days <= LONGEST_TRIP_DAYS
    ? undefined
    : {
        code: "trip-too-long",
        message: `from ${from} to ${to} are ${days} days; a trip may have ${LONGEST_TRIP_DAYS}`,
        hint: "correct a date, or write several trips",
      };
}

const lakeProblems = (
  chosen: readonly string[],
  lakes: ReadonlySet<string>,
  doc: YamlDocument,
): Diagnostic[] =>
  chosen.flatMap((slug, i) => {
    const where = doc.spot(["lakes", i]);
    if (!lakes.has(slug)) return [errorAt(where, unknownLake(slug, lakes))];
    if (chosen.indexOf(slug) === i) return [];
    return [
      warningAt(where, {
        code: "lake-named-twice",
        message: `${quoted(slug)} is named twice; it counts once`,
        hint: "remove one of the two",
      }),
    ];
  });

/** Leaves out trips of other seasons, with a warning: the guide says nothing about those days. */
export const tripsOfSeason = (
  trips: readonly Trip[],
  season: number,
  hemisphere: Hemisphere,
  problems: Diagnostic[],
): Trip[] =>
  trips.filter(({ slug, from, to }) => {
    if (seasonOf(from, hemisphere) === season && seasonOf(to, hemisphere) === season) return true;
    problems.push(
      warningAt(
        { file: `trips/${slug}.yaml`, line: 1, column: 1 },
        {
          code: "trip-of-another-season",
          message: `${from} to ${to} is not in season ${season}; the trip is left out`,
          hint: "correct its dates, or delete the file",
        },
      ),
    );
    return false;
  });
