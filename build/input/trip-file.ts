import { type CalendarDate, daysBetween, type Hemisphere, seasonOf } from "../model/calendar.ts";
import { isTooFar, type Lake, lakesOfTrip, partySize, type Trip } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Fault, quoted } from "../model/fault.ts";
import { clubRecordIfWhole } from "../model/fields/field.ts";
import { tripSchema } from "../model/fields/trip-fields.ts";
import { hoursText } from "../model/units.ts";
import { fromAfterTo } from "./checks/season-checks.ts";
import type { ClubFile } from "./club-files.ts";
import { unknownLake } from "./names.ts";
import { errorAt, startOf, warningAt } from "./problem.ts";
import { readRecord } from "./schema/read-record.ts";
import { readYaml, type YamlDocument } from "./yaml/yaml-document.ts";

/** A trip is worked out day by day; a longer one is most likely a slip in a date. */
const LONGEST_TRIP_DAYS = 60;

/** A trip as it was read, with its file for what is checked once the season and the lakes are known. */
interface TripDraft {
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
  const { from, to, lakes: chosen = [] } = fields;
  const dates = from === undefined || to === undefined ? undefined : datesFault(from, to);
  if (dates !== undefined) problems.push(errorAt(doc.spot(["to"]), dates));
  problems.push(...lakeProblems(chosen, lakes, doc));
  const trip = clubRecordIfWhole(tripSchema, fields);
  return trip && { trip: { ...trip, slug, lakes: [...new Set(chosen)] }, doc };
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

/** Leaves out trips of other seasons, with a warning: the guide says nothing about those days. */
export const tripsOfSeason = (
  drafts: readonly TripDraft[],
  season: number,
  hemisphere: Hemisphere,
  problems: Diagnostic[],
): TripDraft[] =>
  drafts.filter(({ trip: { slug, from, to } }) => {
    if (seasonOf(from, hemisphere) === season && seasonOf(to, hemisphere) === season) return true;
    problems.push(
      warningAt(startOf(`trips/${slug}.yaml`), {
        code: "trip-of-another-season",
        message: `${from} to ${to} is not in season ${season}; the trip is left out`,
        hint: "correct its dates, or delete the file",
      }),
    );
    return false;
  });

/** More people than the boats carry; a trip without boats is on foot. */
function seatProblems({ trip, doc }: TripDraft): Diagnostic[] {
  const seats = trip.boats.reduce((sum, boat) => sum + boat.seats, 0);
  const people = partySize(trip);
  if (trip.boats.length === 0 || seats >= people) return [];
  return [
    warningAt(doc.spot(["boats"]), {
      code: "too-few-seats",
      message: `the boats seat ${seats}, and ${people} people come`,
      hint: "add a boat, or plan who stays ashore",
    }),
  ];
}

/** No lake that comes into question is near enough. */
function travelProblems({ trip, doc }: TripDraft, lakes: readonly Lake[]): Diagnostic[] {
  const { longestTravel_h } = trip;
  if (longestTravel_h === undefined) return [];
  const named = lakesOfTrip(trip, lakes);
  if (named.length === 0 || !named.every((lake) => isTooFar(lake.access?.travel_h, trip))) return [];
  const which = trip.lakes.length === 0 ? "the club’s lakes" : "the trip’s lakes";
  return [
    warningAt(doc.spot(["travel", "longest"]), {
      code: "no-lake-near-enough",
      message: `none of ${which} is known to lie within ${hoursText(longestTravel_h)}`,
      hint: "allow a longer journey, name nearer lakes, or write “travel” under each lake’s access",
    }),
  ];
}

/** Lakes named by the trip whose road is still closed when it begins. */
const roadProblems = ({ trip, doc }: TripDraft, lakes: readonly Lake[]): Diagnostic[] =>
  trip.lakes.flatMap((slug, i) => {
    const opens = lakes.find((lake) => lake.slug === slug)?.access?.opens;
    if (opens === undefined || opens <= trip.from) return [];
    const when = opens > trip.to ? "after the trip is over" : "after the trip begins";
    return [
      warningAt(doc.spot(["lakes", i]), {
        code: "road-opens-later",
        message: `the road to ${slug} opens on ${opens}, ${when}; no day before counts`,
        hint: "go later, leave the lake out, or correct “opens” in the lake’s file",
      }),
    ];
  });

/** What speaks against a trip once the season's lakes are known; warnings only. */
export const tripProblems = (drafts: readonly TripDraft[], lakes: readonly Lake[]): Diagnostic[] =>
  drafts.flatMap((draft) => [
    ...seatProblems(draft),
    ...travelProblems(draft, lakes),
    ...roadProblems(draft, lakes),
  ]);
