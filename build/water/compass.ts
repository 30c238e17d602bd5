/** The sixteen winds by the direction they blow from, clockwise from north. */
export const WINDS = [
  "N",
  "NNE",
  "NE",
  "ENE",
  "E",
  "ESE",
  "SE",
  "SSE",
  "S",
  "SSW",
  "SW",
  "WSW",
  "W",
  "WNW",
  "NW",
  "NNW",
] as const;
export type Wind = (typeof WINDS)[number];

/** Degrees clockwise from north. */
export const windBearing_deg = (wind: Wind): number => (WINDS.indexOf(wind) * 360) / WINDS.length;

/** The wind from the other side; where that wind blows to. */
export const oppositeWind = (wind: Wind): Wind =>
  WINDS[(WINDS.indexOf(wind) + WINDS.length / 2) % WINDS.length] ?? "N";

/** The sides of a lake. */
export const SIDES = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"] as const;
export type Side = (typeof SIDES)[number];

/** The side on which something lies that is `east` and `north` of the lake's middle. */
export function sideOf(east: number, north: number): Side {
  const eighth = Math.round(((Math.atan2(east, north) * 180) / Math.PI + 360) / 45) % SIDES.length;
  return SIDES[eighth] ?? "N";
}
