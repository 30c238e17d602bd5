import type { Freezing, IceState } from "../../model/club.ts";

/** Why a lake has no forecast, in plain words. */
export const REFUSALS = {
  never: "does not freeze: no ice-off to count from. Use the launch card.",
  notThisWinter: "did not freeze this winter: no ice-off to count from. Use the launch card.",
  noDates: "no lake of this region has a date yet",
  tooFar: "too far from every lake with a date: add a date, or say that it does not freeze",
  mayNotFreeze: "it may not freeze: add a date, or say whether it freezes",
} as const;
export type Refusal = keyof typeof REFUSALS;

/** Where a lake lies. */
interface Place {
  readonly latitude_deg: number;
  readonly elevation_m?: number;
}

export interface FreezingEvidence {
  readonly lake: Place & { readonly freezes?: Freezing };
  /** Seasons with a date of its own. */
  readonly ownRecords: number;
  /** Lakes of the region that have a date. */
  readonly dated: readonly Place[];
  /** Ice-off in a middling spring as the fit has it, day of season, and its standard deviation over seasons. */
  readonly usual: number;
  readonly usualSd: number;
  /** This season's reports of ice. */
  readonly ice: readonly { readonly day: number; readonly ice: IceState }[];
}

/** How far beyond the dated lakes a forecast is carried. Our judgement. */
const FARTHEST = { elevation_m: 600, latitude_deg: 3 };
/** An ice-off that may well fall before this day of season, 1 March, may not come at all. Our judgement. */
const EARLIEST_DAY = 60;
const SURE_SDS = 2;

/** Why no ice-off may be forecast for a lake; undefined where one may. */
export function refusalOf(evidence: FreezingEvidence): Refusal | undefined {
  const { lake, ownRecords, dated, usual, usualSd, ice } = evidence;
  if (lake.freezes === "never") return "never";
  const latest = ice.reduce<FreezingEvidence["ice"][number] | undefined>(
    (last, report) => (last === undefined || report.day >= last.day ? report : last),
    undefined,
  );
  if (latest?.ice === "none") return "notThisWinter";
  if (ownRecords > 0 || ice.some((report) => report.ice !== "none")) return undefined;
  if (dated.length === 0) return "noDates";
  const latitude = (place: Place): number => Math.abs(place.latitude_deg);
  const { elevation_m } = lake;
  const elevations = dated.flatMap((place) => (place.elevation_m === undefined ? [] : [place.elevation_m]));
  if (
    isFar(latitude(lake), dated.map(latitude), FARTHEST.latitude_deg) ||
    (elevation_m !== undefined && isFar(elevation_m, elevations, FARTHEST.elevation_m))
  )
    return "tooFar";
  if (lake.freezes !== "every-year" && usual - SURE_SDS * usualSd < EARLIEST_DAY) return "mayNotFreeze";
  return undefined;
}

const isFar = (value: number, known: readonly number[], farthest: number): boolean =>
  known.length > 0 && (value > Math.max(...known) + farthest || value < Math.min(...known) - farthest);
