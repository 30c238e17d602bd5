import { power } from "../../model/power.ts";
import { at } from "../numbers.ts";
import { areaOf, DAYS, LAST_DAY, type LakeTraits, REFERENCE_AREA_HA } from "./lake-traits.ts";
import { clamp } from "./logistic.ts";

/** A year in radians a day. */
const YEAR = (2 * Math.PI) / 365.25;

/**
 * Yearly equilibrium of a lake's surface with the air above it: mean at 43 degrees and 400 m, its fall with latitude and elevation,
 * amplitude and peak day; the surface starts from `start_C` at ice-off and follows with a lag that grows with area.
 * @source fitted to 302 lake-years of 14 lakes in North America and Norway (open monitoring records); the lapse rate is a compromise
 * between the EPA National Lakes Assessments of 2007 and 2012 (3.9 C/km), Sharma et al. (2015), Scientific Data 2:150008 (4.4 C/km)
 * and eight mountain lakes (2.4 to 5.1 C/km)
 */
const CURVE = {
  mean_C: 10.1,
  latitude_deg: 43,
  elevation_km: 0.4,
  perDegree_C: -0.3,
  lapse_C_km: 4.3,
  amplitude_C: 14.3,
  peakDay: 199,
  start_C: 3.3,
  lag_d: 6.7,
  lagPower: 0.205,
  perLateDay_C: -0.03,
};

/** Equilibrium on the lake's usual ice-off day, from the same fit: the lake as its own weather station. */
const ANCHOR = { mean_C: 8.8, variance: 2.5 ** 2, perIceOffVariance: 0.04 };

/** Standard deviations of the place: between lakes, per km from 400 m beyond 150 m, per degree beyond the fit's latitudes. */
const PLACE_SD = { lake_C: 1.2, perKm_C: 1.5, freeKm: 0.15, perDegree_C: 0.15, south_deg: 41, north_deg: 61 };
/** Usual ice-off days outside this range were not in the fit. */
const USUAL_RANGE = { from: 60, to: 215, perDay_C: 0.05 };
const NO_AREA_VARIANCE = 1;
/** Our judgement from six lakes of one mountain valley. */
const SNOW = { mean_C: -2.5, variance: 1 };

/** Standard deviation of one year about the curve, degrees C. From the fit. */
export const YEAR_SD_C = 1.4;

/** A lake's yearly equilibrium temperature and how fast its surface follows. */
export interface Climate {
  /** Mean of the yearly equilibrium, degrees C. */
  readonly mean_C: number;
  /** Variance of that mean, what is not known of the place. */
  readonly variance: number;
  /** Lag of the surface behind the equilibrium, days. */
  readonly lag_d: number;
  /** The mean that the usual ice-off day alone would give, degrees C. */
  readonly anchor_C: number;
  /** Share of the place (latitude and elevation) against the anchor, 0 to 1. */
  readonly placeWeight: number;
}

/** The climate of a lake's surface from its place and its usual ice-off. */
export function climateOf(lake: LakeTraits): Climate {
  const { elevation_m, usualIceOff } = lake;
  const latitude = Math.abs(lake.latitude_deg);
  const anchor_C = ANCHOR.mean_C - CURVE.amplitude_C * Math.cos(YEAR * (usualIceOff - CURVE.peakDay));
  const anchorVariance = ANCHOR.variance + ANCHOR.perIceOffVariance * (lake.usualIceOffVariance ?? 0);
  let [mean_C, variance, placeWeight] = [anchor_C, anchorVariance, 0];
  if (elevation_m !== undefined) {
    const above_km = elevation_m / 1000 - CURVE.elevation_km;
    const place_C =
      CURVE.mean_C + CURVE.perDegree_C * (latitude - CURVE.latitude_deg) - CURVE.lapse_C_km * above_km;
    const beyond_km = Math.max(0, Math.abs(above_km) - PLACE_SD.freeKm);
    const beyond_deg = Math.max(0, PLACE_SD.south_deg - latitude, latitude - PLACE_SD.north_deg);
    const placeVariance =
      PLACE_SD.lake_C ** 2 + (PLACE_SD.perKm_C * beyond_km) ** 2 + (PLACE_SD.perDegree_C * beyond_deg) ** 2;
    variance = 1 / (1 / placeVariance + 1 / anchorVariance);
    mean_C = (place_C / placeVariance + anchor_C / anchorVariance) * variance;
    placeWeight = variance / placeVariance;
  }
  const outside_d = Math.max(0, USUAL_RANGE.from - usualIceOff, usualIceOff - USUAL_RANGE.to);
  variance += (USUAL_RANGE.perDay_C * outside_d) ** 2;
  if (lake.area_ha === undefined) variance += NO_AREA_VARIANCE;
  if (lake.fedBySnow) {
    mean_C += SNOW.mean_C;
    variance += SNOW.variance;
  }
  const lag_d = CURVE.lag_d * power(areaOf(lake) / REFERENCE_AREA_HA, CURVE.lagPower);
  return { mean_C, variance, lag_d, anchor_C, placeWeight };
}

/** Share of a warmer or colder place that the surface shows on each day after ice-off, 0 to 1. */
export const shownByDay = ({ lag_d }: Pick<Climate, "lag_d">): Float64Array =>
  Float64Array.from({ length: DAYS }, (_, d) => -Math.expm1(-d / lag_d));

/** Days of season that an ice-off and the 150 days after it may fall on: a year before and two after its first. */
const TABLED_DAYS = { from: -365, to: 730 };

/**
 * Makes the expected surface temperature of each day after an ice-off, degrees C, in a middling year.
 * @returns of an ice-off, day of season: temperatures of days 0 to 150
 */
export function surfaceTemperature(
  { mean_C, lag_d }: Climate,
  usualIceOff: number,
): (iceOff: number) => Float64Array {
  const amplitude = CURVE.amplitude_C / Math.sqrt(1 + (YEAR * lag_d) ** 2);
  const behind = Math.atan(YEAR * lag_d);
  const decay = Float64Array.from({ length: DAYS }, (_, d) => Math.exp(-d / lag_d));
  const equilibrium = new Float64Array(TABLED_DAYS.to - TABLED_DAYS.from + 1);
  for (let i = 0; i < equilibrium.length; i++)
    equilibrium[i] = amplitude * Math.cos(YEAR * (TABLED_DAYS.from + i - CURVE.peakDay) - behind);
  return (iceOff) => {
    const place = clamp(iceOff, TABLED_DAYS.from, TABLED_DAYS.to - LAST_DAY) - TABLED_DAYS.from;
    const level = mean_C + CURVE.perLateDay_C * (iceOff - usualIceOff);
    const start = CURVE.start_C - (level + at(equilibrium, place));
    const surface_C = new Float64Array(DAYS);
    for (let d = 0; d < DAYS; d++) surface_C[d] = level + at(equilibrium, place + d) + start * at(decay, d);
    return surface_C;
  };
}
