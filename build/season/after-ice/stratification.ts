import { power } from "../../model/power.ts";
import { areaOf, type LakeTraits, REFERENCE_AREA_HA } from "./lake-traits.ts";

/** Surface temperature at which half of the lakes have stratified, degrees C, and its rise with area. Fit to 410 lake-years. */
const LAYERED = { at_C: 8.1, perLnArea_C: 0.46 };
/** Scale (not standard deviation) of the logistic law of that temperature, degrees C; 1.28 fitted, widened. */
export const LAYERED_SCALE_C = 1.6;

/** Depth to which the summer wind mixes a lake: 4.6 m times its area in km2 to this power. From memory, no source at hand. */
const MIXING = { depth_m: 4.6, power: 0.205 };
/** A mean depth of this share of the mixing depth makes a polymictic lake as likely as not; chosen on one wind-stirred lake. */
const POLYMICTIC = { share: 0.57, scale: 0.3, unknown: 0.1 };
/** Maximum depth over mean depth where only the maximum is known. */
const MAX_OVER_MEAN_DEPTH = 2.2;

/** Thermal stratification of a lake. */
export interface Stratification {
  /** Chance that wind keeps it mixed all summer (polymictic), 0 to 1. */
  readonly never: number;
  /** Surface temperature at which it is as likely stratified as not, degrees C. */
  readonly at_C: number;
  /** Depth that the summer wind mixes, about where the thermocline lies, m. */
  readonly mixingDepth_m: number;
}

/** What stratification follows from. */
export type Basin = Pick<LakeTraits, "area_ha" | "meanDepth_m" | "maxDepth_m" | "stratifies">;

export function stratificationOf(lake: Basin): Stratification {
  const area_ha = areaOf(lake);
  const mixingDepth_m = MIXING.depth_m * power(area_ha / 100, MIXING.power);
  const at_C = LAYERED.at_C + LAYERED.perLnArea_C * Math.log(area_ha / REFERENCE_AREA_HA);
  return { never: neverStratifies(lake, mixingDepth_m), at_C, mixingDepth_m };
}

function neverStratifies(lake: Basin, mixingDepth_m: number): number {
  if (lake.stratifies !== undefined) return lake.stratifies ? 0 : 1;
  const { maxDepth_m } = lake;
  const depth_m =
    lake.meanDepth_m ?? (maxDepth_m === undefined ? undefined : maxDepth_m / MAX_OVER_MEAN_DEPTH);
  if (depth_m === undefined || lake.area_ha === undefined) return POLYMICTIC.unknown;
  return 1 / (1 + power(depth_m / mixingDepth_m / POLYMICTIC.share, 1 / POLYMICTIC.scale));
}

/** Terms of the density of pure water in powers of its temperature, kg/m3. UNESCO (1981), Technical Papers in Marine Science 36. */
const DENSITY_TERMS = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9];

/** Density of fresh water at 1 atm, kg/m3. @param water_C 0 to 40 degrees C */
const waterDensity_kg_m3 = (water_C: number): number =>
  DENSITY_TERMS.reduceRight((sum, term) => sum * water_C + term, 0);

/** Water of this density difference does not mix under a breeze; above 4 degrees C, where colder water sinks. Our judgement. */
const LAYERS_KG_M3 = 0.1;
const DENSEST_C = 4;

/** True where two thermometer readings show stratified water. */
export const showsLayers = (surface_C: number, deep_C: number): boolean =>
  surface_C > DENSEST_C && waterDensity_kg_m3(deep_C) - waterDensity_kg_m3(surface_C) >= LAYERS_KG_M3;
