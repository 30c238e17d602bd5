import type { CalendarDate } from "./calendar.ts";
import type { Chapter } from "./content.ts";
import type { SourceSpot } from "./diagnostic.ts";
import type { LakeShape } from "./lake-shape.ts";
import type { Phase } from "./phase.ts";
import type { UnitSystem } from "./units.ts";

/** What a club wrote, read and checked: plain records in SI units, no behaviour. */
export interface Club {
  readonly name: string;
  /** A sentence shown on every page and card, such as "Everything here is invented." */
  readonly notice?: string;
  readonly season: number;
  /** The day the guide speaks from; nothing dated later is used. */
  readonly asOf: CalendarDate;
  /** IANA name, such as America/Denver. */
  readonly timezone: string;
  readonly units: UnitSystem;
  /** In file-name order. */
  readonly lakes: readonly Lake[];
  readonly patterns: readonly Pattern[];
  readonly reports: readonly Report[];
  readonly trips: readonly Trip[];
  readonly holidays: readonly Holiday[];
  readonly rigs: RigBox;
  /** Pages of the club's own. */
  readonly pages: readonly Chapter[];
}

/** What a lake's water looks like in spring: the colour its scuds take. */
export const WATER_COLOURS = ["marl", "clear", "green", "tea"] as const;
export type WaterColour = (typeof WATER_COLOURS)[number];

export interface Lake {
  /** File name without its ending; the lake's folder in the output. */
  readonly slug: string;
  readonly name: string;
  /** WGS 84 degrees. */
  readonly position: { readonly lat: number; readonly lon: number };
  readonly elevation_m?: number;
  /** Lakes of one region share a spring; all lakes are one region unless said. */
  readonly region?: string;
  readonly area_ha?: number;
  readonly maxDepth_m?: number;
  readonly meanDepth_m?: number;
  readonly water?: WaterColour;
  /** One line: what kind of lake it is. */
  readonly summary?: string;
  /** How to get there and from when the road is open. */
  readonly access?: {
    readonly text: string;
    readonly opens?: CalendarDate;
    /** From the club's usual meeting place to the launch, one way. */
    readonly travel_h?: number;
  };
  readonly hazards: readonly string[];
  /** Rules as somebody read them on a day; the agency's own word rules. */
  readonly rules?: { readonly text: string; readonly checked: CalendarDate };
  /** Places worth trying, each with the depths plumbed there, the likeliest first. */
  readonly places: readonly FishedPlace[];
  /** Depths at which fish were found, by phase; plumbed by the club. */
  readonly depthBands: Partial<Readonly<Record<Phase, DepthBand>>>;
  readonly iceOff: readonly IceOffRecord[];
  readonly turnover: readonly TurnoverRecord[];
  readonly turnoverRule: TurnoverRule;
  /** Markdown. */
  readonly notes?: string;
  /** Shoreline, contours and soundings, where the club drew or plumbed them. */
  readonly shape?: LakeShape;
}

/** A place on a lake that the club names. */
export interface FishedPlace {
  readonly name: string;
  /** How to find it, such as "off the long point". */
  readonly at?: string;
  /** Plumbed depths of the water there. */
  readonly depths_m: readonly number[];
}

export interface DepthBand {
  readonly from_m: number;
  readonly to_m: number;
}

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

export const FOODS = [
  "scud",
  "chironomid pupa",
  "chironomid larva",
  "damsel nymph",
  "dragonfly nymph",
  "mayfly nymph",
  "caddis larva",
  "water boatman",
  "leech",
  "daphnia",
  "small fish",
  "nothing in particular",
] as const;
export type Food = (typeof FOODS)[number];

/** Foods that can be found in a fish: every one but the pattern that imitates none. */
export type FoundFood = Exclude<Food, "nothing in particular">;

/** How a fly is fished. */
export const METHODS = [
  "indicator still",
  "indicator twitched",
  "floating line",
  "clear intermediate",
  "sink tip",
  "buoyant on sinking line",
  "trolled",
] as const;
export type Method = (typeof METHODS)[number];

export interface Pattern {
  readonly slug: string;
  readonly name: string;
  readonly imitates: Food;
  /** Its place in the club's own order, 1 first; patterns without one come after those with one. */
  readonly rank?: number;
  /** Hook sizes, largest hook (smallest number) first. */
  readonly sizes: readonly number[];
  readonly colours: readonly string[];
  readonly phases: readonly Phase[];
  readonly ways: readonly Method[];
  /** Water colours it is tied for; empty means any. */
  readonly waters: readonly WaterColour[];
  readonly stock: readonly { readonly size: number; readonly colour: string; readonly count: number }[];
  readonly dressing: readonly { readonly part: string; readonly material: string }[];
  /** Mass of the finished fly and the diameter of its bead, for sinking and drag. */
  readonly mass_g?: number;
  /** Markdown. */
  readonly notes?: string;
}

export const ICE_STATES = ["on", "part", "off"] as const;
export type IceState = (typeof ICE_STATES)[number];

/** Fish taken on one pattern; none is worth knowing too. */
export interface Catch {
  /** Slug of one of the club's patterns. */
  readonly pattern: string;
  readonly way?: Method;
  readonly fish: number;
  /** Rod-hours it was fished; where absent, its share of the visit's rod-hours. */
  readonly rodHours?: number;
}

/** What one fish's throat held; empty when it held nothing. */
export type ThroatSample = readonly {
  readonly food: FoundFood;
  readonly count: number;
  /** Of all of them together, blotted. */
  readonly mass_g?: number;
}[];

/** What one party saw and caught on one lake on one day. */
export interface Report {
  readonly lake: string;
  readonly date: CalendarDate;
  readonly ice?: IceState;
  readonly phase?: Phase;
  readonly water_C?: number;
  /** Secchi depth. */
  readonly clarity_m?: number;
  readonly oxygen_mgL?: number;
  readonly rods?: number;
  /** How long they fished, each rod. */
  readonly hours?: number;
  readonly catches: readonly Catch[];
  readonly samples: readonly ThroatSample[];
  readonly notes?: string;
  readonly where: SourceSpot;
}

export const BOAT_KINDS = ["pram", "canoe", "motor boat", "float tube", "kick boat", "shore"] as const;
export type BoatKind = (typeof BOAT_KINDS)[number];

export interface Boat {
  readonly name: string;
  readonly kind: BoatKind;
  readonly seats: number;
}

/** A named run of days on which people can get away, both ends included. */
export interface Holiday {
  readonly name: string;
  readonly from: CalendarDate;
  readonly to: CalendarDate;
}

export interface Trip {
  readonly slug: string;
  readonly name: string;
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly rods: number;
  /** As they are called in the club; empty when the file names nobody. */
  readonly people: readonly string[];
  readonly boats: readonly Boat[];
  /** Flies a rod is expected to lose in a day. */
  readonly flyLoss_rodDay?: number;
  /** Lakes farther from the club's usual meeting place than this are out. */
  readonly longestTravel_h?: number;
  /** Slugs, the first choice first; empty when any of the club's lakes will do. */
  readonly lakes: readonly string[];
  /** Markdown. */
  readonly notes?: string;
  readonly unlisted: boolean;
}

/** How many people a trip has to seat and keep safe: the people named, and never fewer than its rods. */
export const partySize = ({ people, rods }: Pick<Trip, "people" | "rods">): number =>
  Math.max(people.length, rods);

/** A piece of tippet or a leader's end by its X size, such as 4 or 4.5. */
export type TippetSize = number;

export interface LeaderStock {
  readonly name: string;
  readonly taper: { readonly length_m: number; readonly size: TippetSize };
  readonly middle: { readonly length_m: number; readonly size: TippetSize };
  readonly tippet: { readonly length_m: number; readonly size: TippetSize };
  /** Already tied and on a board. */
  readonly tied: number;
  readonly where: SourceSpot;
}

export const LINE_KINDS = ["floating", "clear intermediate", "sink tip", "sinking"] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** The three states of a lake's surface that the plumb table has columns for. */
export const CONDITIONS = ["calm", "ripple", "chop"] as const;
export type Condition = (typeof CONDITIONS)[number];

/** Shot pinched on together; no pieces is none. */
export type ShotStep = readonly { readonly shot: string; readonly count: number }[];

/** What the club owns to build rigs from. Lists are never empty: the loader fills in `content/rig-defaults.yaml`. */
export interface RigBox {
  readonly rod_m: number;
  /** How much less than a rod's length of fixed leader can be landed, for the arm's reach. */
  readonly reach_m: number;
  /** How far above the plumbed bottom the fly hangs. */
  readonly offBottom: DepthBand;
  /** Knot-free leader left below and above the indicator. */
  readonly margin_m: number;
  /** How far the fly may lift from straight below in the current that is expected. */
  readonly lift_m: number;
  /** The same in the worst current that is likely. */
  readonly mostLift_m: number;
  /** What is pinched on, lightest first. */
  readonly steps: readonly ShotStep[];
  /** The longest wait on a tight line that any but the heaviest step may ask for. */
  readonly longestWait_s: number;
  /** The longest count after every cast. */
  readonly longestCount_s: number;
  /** From the water up to the bow. */
  readonly bow_m: number;
  /** Anchor rope over depth and bow together. */
  readonly scope: Readonly<Record<Condition, number>>;
  /** Share of an indicator's volume that stays dry. */
  readonly dryShare: number;
  /** The most weight that still casts comfortably. */
  readonly castLimit_g: number;
  readonly leaders: readonly LeaderStock[];
  readonly lines: readonly {
    readonly name: string;
    readonly kind: LineKind;
    /** Absent for a floating line. */
    readonly sinkRate_mps?: number;
    /** Length of a sink tip. */
    readonly tip_m?: number;
    readonly where: SourceSpot;
  }[];
  readonly shot: readonly {
    readonly name: string;
    readonly mass_g: number;
    readonly density_kgm3: number;
    readonly carried: number;
    readonly where: SourceSpot;
  }[];
  readonly indicators: readonly {
    readonly name: string;
    readonly diameter_m: number;
    readonly density_kgm3: number;
    readonly carried: number;
    readonly where: SourceSpot;
  }[];
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
