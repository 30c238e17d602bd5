import { type CalendarDate, daysBetween } from "../model/calendar.ts";
import type { Trip } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { unknownLake } from "./named.ts";
import { present } from "./present.ts";
import { errorAt, type Fault, warningAt } from "./problem.ts";
import { quoted } from "./quote.ts";
import { readRecord } from "./read-record.ts";
import { fromAfterTo } from "./season-checks.ts";
import { tripSchema } from "./trip-schema.ts";
import { readYaml, type YamlDocument } from "./yaml-document.ts";

/** A trip is worked out day by day; a longer one is most likely a slip in a date. */
const LONGEST_TRIP_DAYS = 60;

/** A trip as it was read, with its file for what is checked once the season and the lakes are known. */
export interface TripDraft {
  readonly trip: Trip;
  readonly doc: YamlDocument;
}

/** Reads one trip; undefined when something it needs is missing. */
export function readTrip(
  { file, slug, text }: ClubFile,
  lakes: ReadonlySet<string>,
  problems: Diagnostic[],
): TripDraft | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const fields = readRecord(tripSchema, doc, problems);
  const { name, from, to, rods, people = [], boats = [], lakes: chosen = [] } = fields;
  const dates = from === undefined || to === undefined ? undefined : datesFault(from, to);
  if (dates !== undefined) problems.push(errorAt(doc.spot(["to"]), dates));
  problems.push(...lakeProblems(chosen, lakes, doc));
  if (name === undefined || from === undefined || to === undefined || rods === undefined) return undefined;
  const trip: Trip = {
    slug,
    name,
    from,
    to,
    rods,
    people,
    boats,
    lakes: [...new Set(chosen)],
    unlisted: fields.unlisted ?? false,
    ...present({
      flyLoss_rodDay: fields.flyLoss,
      longestTravel_h: fields.travel?.longest,
      notes: fields.notes,
    }),
  };
  return { trip, doc };
}

function datesFault(from: CalendarDate, to: CalendarDate): Fault | undefined {
  const days = daysBetween(from, to) + 1;
  if (days < 1) return fromAfterTo(from, to);
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
