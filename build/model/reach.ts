import type { Trip } from "./club.ts";

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
