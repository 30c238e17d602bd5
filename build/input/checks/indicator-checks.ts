import type { Lake, Report } from "../../model/club.ts";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { type Fault, quoted } from "../../model/fault.ts";
import { errorAt, startOf } from "../problem.ts";

const ONLY_INDICATORS = errorAt(startOf("lakes"), {
  code: "no-lakes",
  message: "every lake is an indicator: there is no lake to write a guide for",
  hint: "remove “role” from the lakes of the guide",
});

const indicatorFault = (slug: string): Fault => ({
  code: "indicator-lake",
  message: `${quoted(slug)} is an indicator lake, outside the guide: it has no reports and no trips`,
  hint: `write the day it opened under iceOff in lakes/${slug}.yaml, or remove “role” there to take it into the guide`,
});

/** Indicator lakes named by reports or trips, and a club of nothing else. */
export function indicatorProblems(
  lakes: readonly Lake[],
  reports: readonly Report[],
  trips: readonly { readonly lakes: readonly string[]; spotOf(place: number): SourceSpot }[],
): Diagnostic[] {
  const slugs = new Set(lakes.filter(({ role }) => role === "indicator").map(({ slug }) => slug));
  if (slugs.size === 0) return [];
  return [
    ...(slugs.size === lakes.length ? [ONLY_INDICATORS] : []),
    ...reports
      .filter(({ lake }) => slugs.has(lake))
      .map(({ lake, where }) => errorAt(where, indicatorFault(lake))),
    ...trips.flatMap((trip) =>
      trip.lakes.flatMap((slug, place) =>
        slugs.has(slug) ? [errorAt(trip.spotOf(place), indicatorFault(slug))] : [],
      ),
    ),
  ];
}
