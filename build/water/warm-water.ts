import { temperatureText, type UnitSystem } from "../model/units.ts";

/**
 * From 65 degF think before fishing, from 70 degF stop. Notices of the Wyoming Game and Fish Department, 2021 to 2025; the
 * local agency's own limits come first.
 */
export const CARE_C = (65 - 32) / 1.8;
export const STOP_C = (70 - 32) / 1.8;

/** What a water temperature asks of somebody who releases trout; null while it asks nothing more than usual. */
export function handlingWords(water_C: number): string | null {
  if (water_C < CARE_C) return null;
  return water_C < STOP_C
    ? "Too warm to play with: fish early, land fish quickly and keep them in the water, or keep what the rules allow and stop."
    : "Stop. Do not catch trout to release them in water this warm.";
}

/** Metric readers get the whole degree below, never above. */
const limitText = (limit_C: number, units: UnitSystem): string =>
  temperatureText(units === "metric" ? Math.floor(limit_C) : limit_C, units);

/** The two thresholds as a rule to carry along. */
export const warmWaterRule = (units: UnitSystem): string =>
  `From ${limitText(CARE_C, units)} take special care of trout; from ${limitText(STOP_C, units)} stop. Local closures come first.`;
