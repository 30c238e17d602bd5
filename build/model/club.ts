import type { CalendarDate } from "./calendar.ts";
import type { Condition, FoundFood } from "./choices.ts";
import type { Chapter } from "./content.ts";
import type { SourceSpot } from "./diagnostic.ts";
import type { clubSchema } from "./fields/club-fields.ts";
import type { ClubOf } from "./fields/field.ts";
import type { depthBand, lakeSchema } from "./fields/lake-fields.ts";
import type { patternSchema } from "./fields/pattern-fields.ts";
import type { caughtRow, reportRow } from "./fields/report-fields.ts";
import type { indicatorRow, leaderRow, lineRow, rigBoxSchema, shotRow } from "./fields/rigs-fields.ts";
import type { tripSchema } from "./fields/trip-fields.ts";
import type { LakeShape } from "./lake-shape.ts";

export * from "./choices.ts";

// Every key of a club file is defined once, in build/model/fields/: what may be written, in which units, and what it is
// called here. The types below follow from there; they add what is found out in reading.

/** What a club wrote, read and checked: plain records in SI units, no behaviour. */
export interface Club extends Omit<ClubOf<typeof clubSchema>, "asOf" | "reportForm"> {
  /** The day the guide speaks from; nothing dated later is used. */
  readonly asOf: CalendarDate;
  /** In file-name order. */
  readonly lakes: readonly Lake[];
  /** Lakes outside the guide that tell how early the season is; no reports, no page, no card. */
  readonly indicators: readonly Lake[];
  readonly patterns: readonly Pattern[];
  readonly reports: readonly Report[];
  readonly trips: readonly Trip[];
  readonly rigs: RigBox;
  /** Pages of the club's own. */
  readonly pages: readonly Chapter[];
}

export interface Lake
  extends Omit<ClubOf<typeof lakeSchema>, "iceOff" | "turnover" | "lastGood" | "turnoverRule"> {
  /** File name without its ending; the lake's folder in the output. */
  readonly slug: string;
  readonly iceOff: readonly IceOffRecord[];
  readonly turnover: readonly TurnoverRecord[];
  readonly lastGood: readonly LastGoodRecord[];
  readonly turnoverRule: TurnoverRule;
  /** Shoreline, contours and soundings, where the club drew or plumbed them. */
  readonly shape?: LakeShape;
}

export type DepthBand = ClubOf<ReturnType<typeof depthBand>>;

/** One season's ice-off: seen on its day, or between a day still iced and a day already open. */
export type IceOffRecord = IceOffDates & { readonly where: SourceSpot };

/** What such a record says, wherever it was written. */
export type IceOffDates = { readonly season: number } & (
  | { readonly on: CalendarDate }
  /** Still iced on `after`, open by `by`; one of the two may be missing. */
  | { readonly after?: CalendarDate; readonly by?: CalendarDate }
);

/** Turnover seen from its first cloudy day to its last. */
export interface TurnoverRecord {
  readonly season: number;
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly where: SourceSpot;
}

/** The last day of a season's best weeks, as the club judged it. */
export interface LastGoodRecord {
  readonly season: number;
  readonly on: CalendarDate;
  readonly where: SourceSpot;
}

/** Whole days, both ends included, each day as likely as another. */
export interface DayRange {
  readonly from: number;
  readonly to: number;
}

/** When a lake turns over: days from ice-off to onset, and days it stays poor; or that it never does. */
export type TurnoverRule =
  | { readonly turnsOver: true; readonly onset: DayRange; readonly duration: DayRange }
  | { readonly turnsOver: false };

/** 8 to 15 days after ice-off, for 8 to 15 days. Common practice, no published source. */
export const USUAL_TURNOVER: TurnoverRule = {
  turnsOver: true,
  onset: { from: 8, to: 15 },
  duration: { from: 8, to: 15 },
};

/** Its sizes run from the largest hook (the smallest number); sizes, phases, ways and waters name each value once. */
export interface Pattern extends ClubOf<typeof patternSchema> {
  readonly slug: string;
}

/** Fish taken on one pattern; none is worth knowing too. Without rod-hours, its share of the visit's. */
export type Catch = ClubOf<typeof caughtRow>;

/** What one fish's throat held; empty when it held nothing. */
export type ThroatSample = readonly {
  readonly food: FoundFood;
  readonly count: number;
  /** Of all of them together, blotted. */
  readonly mass_g?: number;
}[];

/** What one party saw and caught on one lake on one day. */
export interface Report extends Omit<ClubOf<typeof reportRow>, "caught" | "samples"> {
  readonly catches: readonly Catch[];
  readonly samples: readonly ThroatSample[];
  readonly where: SourceSpot;
}

/** A named run of days on which people can get away, both ends included. */
export type Holiday = Club["holidays"][number];

/** Its lakes are slugs, each once, the first choice first; none when any of the club's lakes will do. */
export interface Trip extends ClubOf<typeof tripSchema> {
  readonly slug: string;
}
export type Boat = Trip["boats"][number];

/** How many people a trip has to seat and keep safe: the people named, and never fewer than its rods. */
export const partySize = ({ people, rods }: Pick<Trip, "people" | "rods">): number =>
  Math.max(people.length, rods);

/** A piece of tippet or a leader's end by its X size, such as 4 or 4.5. */
export type TippetSize = number;

interface Placed {
  readonly where: SourceSpot;
}

export type LeaderStock = ClubOf<typeof leaderRow> & Placed;
/** Without a sink rate where it floats. */
export type LineStock = ClubOf<typeof lineRow> & Placed;
/** Of a material known by its density. */
export type ShotStock = Omit<ClubOf<typeof shotRow>, "material"> & Placed & { readonly density_kgm3: number };
type IndicatorStock = ClubOf<typeof indicatorRow> & Placed;

/** The lists of a rig box; none is empty. */
export interface RigStock {
  readonly leaders: readonly LeaderStock[];
  readonly lines: readonly LineStock[];
  readonly shot: readonly ShotStock[];
  readonly indicators: readonly IndicatorStock[];
}

/** Shot pinched on together; no pieces is none. */
export type ShotStep = readonly { readonly shot: string; readonly count: number }[];

/** What the club owns to build rigs from, complete: what it left out comes from `content/rig-defaults.yaml`. */
export interface RigBox
  extends Omit<ClubOf<typeof rigBoxSchema>, keyof RigStock | "steps" | "scope">,
    RigStock {
  /** What is pinched on, lightest first. */
  readonly steps: readonly ShotStep[];
  /** Anchor rope over depth and bow together. */
  readonly scope: Readonly<Record<Condition, number>>;
}

/** The lakes that come into question for a trip: those it names, in its order, else all. */
export const lakesOfTrip = <L extends { readonly slug: string }>(
  { lakes: named }: Pick<Trip, "lakes">,
  lakes: readonly L[],
): L[] =>
  named.length === 0 ? [...lakes] : named.flatMap((slug) => lakes.find((lake) => lake.slug === slug) ?? []);

/**
 * True where a lake is farther than a trip will go. A lake whose journey nobody has written down is near enough when
 * the trip names it, and is not taken on trust when any lake will do.
 */
export function isTooFar(
  travel_h: number | null | undefined,
  { lakes, longestTravel_h }: Pick<Trip, "lakes" | "longestTravel_h">,
): boolean {
  if (longestTravel_h === undefined) return false;
  return (travel_h ?? (lakes.length > 0 ? 0 : Number.POSITIVE_INFINITY)) > longestTravel_h;
}
