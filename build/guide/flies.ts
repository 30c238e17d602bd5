import { catchRate } from "../flies/catch-rates.ts";
import { catchesWithHours, outingsOf, type PhasedReport, visitTally } from "../flies/catch-rates-outings.ts";
import { chooseFlies } from "../flies/choose-flies.ts";
import { gatherDiet } from "../flies/diet.ts";
import { lakePhaseDiet } from "../flies/diet-lake.ts";
import { type FlyEvidence, rankFlies } from "../flies/rank.ts";
import { gatherCatches } from "../flies/rank-rates.ts";
import { whyFly } from "../flies/rank-words.ts";
import type { Club, Lake, Report } from "../model/club.ts";
import { PHASES } from "../model/phase.ts";
import type { PhaseRigs } from "../rigs/rig-plan.ts";
import type { LakeForecast } from "../season/forecast.ts";
import type { FlyChoice, GuideLake } from "./guide-schema.ts";
import { phaseOfReport } from "./report-phase.ts";

/** The reports of the club's lakes with something caught or sampled, up to the as-of date, each with its phase. */
export function fishedReports(
  club: Club,
  lakesBySlug: ReadonlyMap<string, Lake>,
  forecasts: ReadonlyMap<string, LakeForecast>,
): PhasedReport[] {
  return club.reports.flatMap((report) => {
    const lake = lakesBySlug.get(report.lake);
    const forecast = forecasts.get(report.lake);
    const isFished = report.catches.length > 0 || report.samples.length > 0;
    if (lake === undefined || forecast === undefined || !isFished || report.date > club.asOf) return [];
    return [{ report, phase: phaseOfReport(report, lake, forecast, club) }];
  });
}

/** What those reports say about flies anywhere. */
export const flyEvidence = (reports: readonly PhasedReport[]): FlyEvidence => ({
  dietAt: gatherDiet(reports),
  catchesAt: gatherCatches(outingsOf(reports)),
});

/** The flies for one phase of a lake, the first choice first. */
export function composeFlies(
  lake: Lake,
  { phase, rigs }: PhaseRigs,
  { patterns }: Pick<Club, "patterns">,
  evidence: FlyEvidence,
): FlyChoice[] {
  const ways = rigs.map(({ way }) => way);
  const diet = evidence.dietAt(lake.slug, phase);
  const suited = chooseFlies(patterns, phase, ways, lake.water);
  return rankFlies(suited, lake.slug, phase, evidence).map((fly) => ({
    pattern: fly.pattern.slug,
    name: fly.pattern.name,
    sizes: [...fly.pattern.sizes],
    colours: [...fly.pattern.colours],
    way: fly.way,
    score: fly.score,
    rate: catchRate(fly.catches.here),
    why: whyFly(fly, diet),
  }));
}

/** What fish were found to eat in one lake, phase by phase. */
export const composeDiet = (lake: Lake, { dietAt }: FlyEvidence): GuideLake["diet"] =>
  PHASES.flatMap((phase) => lakePhaseDiet(phase, dietAt(lake.slug, phase)) ?? []);

/** What a report tells of fish. */
export function composeCatches(
  report: Report,
  { patterns }: Pick<Club, "patterns">,
): Pick<GuideLake["reports"][number], "rodHours" | "catches" | "samples"> {
  return {
    rodHours: visitTally(report)?.rodHours ?? null,
    catches: catchesWithHours(report).map(({ pattern, way, fish, rodHours }) => ({
      pattern,
      name: patterns.find(({ slug }) => slug === pattern)?.name ?? pattern,
      way: way ?? null,
      fish,
      rodHours: rodHours ?? null,
    })),
    samples: report.samples.map((sample) =>
      sample.map(({ food, count, mass_g }) => ({ food, count, mass_g: mass_g ?? null })),
    ),
  };
}
