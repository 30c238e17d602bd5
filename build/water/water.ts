import type { CalendarDate } from "../model/calendar.ts";
import type { Lake, Report } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { LakeShape } from "../model/lake-shape.ts";
import { type Memoize, unmemoized } from "../model/memoize.ts";
import { temperatureText, type UnitSystem } from "../model/units.ts";
import { STOP_C, TAKE_CARE_C } from "../model/warm-water.ts";
import { composeShape, type ShapeOptions } from "./compose-shape.ts";
import { lightOn } from "./light.ts";
import { mixingWords, osgoodIndex } from "./morphometry.ts";
import { OXYGEN_LEAST_C, OXYGEN_MOST_C, oxygenSaturation_mgL, standardPressure_Pa } from "./oxygen.ts";
import { toDecimals } from "./plane.ts";
import type { LakeWater, Oxygen, WarmWater } from "./water-schema.ts";

/** What a water temperature asks of somebody who releases trout; null while it asks nothing more than usual. */
export function handlingWords(water_C: number): string | null {
  if (water_C < TAKE_CARE_C) return null;
  return water_C < STOP_C
    ? "Too warm to play with: fish early, land fish quickly and keep them in the water, or keep what the rules allow and stop."
    : "Stop. Do not catch trout to release them in water this warm.";
}

/** The two thresholds as a rule to carry along. */
export const warmWaterRule = (units: UnitSystem): string =>
  `From ${temperatureText(TAKE_CARE_C, units)} take special care of trout; from ${temperatureText(STOP_C, units)} stop. Local closures come first.`;

export interface WaterOptions extends Omit<ShapeOptions, "memoize"> {
  /** IANA name. */
  readonly timezone: string;
  /** Days whose light is wanted; each takes about a millisecond. */
  readonly days: readonly CalendarDate[];
  /** Reports of this lake, up to the as-of date. */
  readonly reports: readonly Report[];
  /** Computes always unless it is given. */
  readonly memoize?: Memoize;
}

const HECTARES_PER_KM2 = 100;
/** The table of saturation, degC: lakes in spring. */
const TABLE_MOST_C = 20;

function composeOxygen(elevation_m: number, reports: readonly Report[]): Oxygen {
  const pressure_Pa = standardPressure_Pa(elevation_m);
  const at = (water_C: number): number => oxygenSaturation_mgL(water_C, pressure_Pa);
  return {
    pressure_kPa: toDecimals(pressure_Pa / 1000, 2),
    saturation: Array.from({ length: TABLE_MOST_C + 1 }, (_, water_C) => ({
      water_C,
      oxygen_mgL: toDecimals(at(water_C), 2),
    })),
    readings: reports.flatMap(({ date, water_C, oxygen_mgL }) =>
      oxygen_mgL === undefined || water_C === undefined || water_C < OXYGEN_LEAST_C || water_C > OXYGEN_MOST_C
        ? []
        : [{ date, water_C, oxygen_mgL, percent: toDecimals((100 * oxygen_mgL) / at(water_C), 0) }],
    ),
  };
}

function composeWarmWater(reports: readonly Report[], units: UnitSystem): WarmWater {
  const latest = reports
    .filter(({ water_C }) => water_C !== undefined)
    .reduce<Report | undefined>(
      (last, report) => (last === undefined || report.date >= last.date ? report : last),
      undefined,
    );
  const words = latest?.water_C === undefined ? null : handlingWords(latest.water_C);
  return {
    care_C: TAKE_CARE_C,
    stop_C: STOP_C,
    rule: warmWaterRule(units),
    latest:
      latest?.water_C === undefined || words === null
        ? null
        : { date: latest.date, water_C: latest.water_C, words },
  };
}

interface LightInputs extends Pick<WaterOptions, "days" | "timezone"> {
  readonly position: Lake["position"];
}

const lightOf = ({ days, position, timezone }: LightInputs): LakeWater["light"] =>
  days.map((date) => lightOn(date, position, timezone));

function composeMixing(lake: Lake, shaped: Pick<LakeWater, "size" | "depths">): LakeWater["mixing"] {
  const by = shaped.size !== null && shaped.depths !== null ? "shape" : "club";
  const [area_ha, mean_m] =
    by === "shape" ? [shaped.size?.area_ha, shaped.depths?.mean_m] : [lake.area_ha, lake.meanDepth_m];
  if (area_ha === undefined || mean_m === undefined) return null;
  const osgood = osgoodIndex(mean_m, area_ha / HECTARES_PER_KM2);
  return { osgood_mpkm: toDecimals(osgood, 1), by, words: mixingWords(osgood) };
}

/**
 * Everything about a lake as a place: its size, depths and wind by its shape, its light and oxygen without one.
 * Problems are warnings: figures that disagree with the shape, depths outside the shoreline.
 */
export function composeWater(
  lake: Lake,
  shape: LakeShape | undefined,
  { memoize = unmemoized, ...options }: WaterOptions,
): { readonly water: LakeWater; readonly problems: readonly Diagnostic[] } {
  const problems: Diagnostic[] = [];
  const shaped =
    shape === undefined
      ? { map: null, size: null, depths: null, zones: [], wind: null }
      : composeShape(lake, shape, { ...options, memoize }, problems);
  return {
    water: {
      ...shaped,
      mixing: composeMixing(lake, shaped),
      light: memoize(
        "light",
        { days: options.days, position: lake.position, timezone: options.timezone },
        lightOf,
      ),
      oxygen: lake.elevation_m === undefined ? null : composeOxygen(lake.elevation_m, options.reports),
      warmWater: composeWarmWater(options.reports, options.units),
    },
    problems,
  };
}
