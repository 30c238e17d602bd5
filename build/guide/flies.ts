import {
  catchesWithHours,
  catchRate,
  outingsOf,
  type PhasedReport,
  visitTally,
} from "../flies/catch-rates.ts";
import { gatherDiet } from "../flies/diet.ts";
import { lakePhaseDiet } from "../flies/lake-diet.ts";
import { chooseFlies, type FlyEvidence, gatherCatches, rankFlies, whyFly } from "../flies/rank-flies.ts";
import { hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { Club, Lake, Report } from "../model/club.ts";
import { DAY_STATES, type DayState, PHASES, type Phase, stateOfPhase } from "../model/phase.ts";
import type { PhaseRigs } from "../rigs/rig-schemas.ts";
import type { LakeForecast } from "../season/forecast.ts";
import { pastState } from "../season/past-state.ts";
import type { FlyChoice, GuideLake } from "./guide-schema.ts";

/** The likeliest state of an open lake on a day of the season in progress. */
function stateThisSeason({ date }: Report, { daily }: LakeForecast): DayState | null {
  const chances = daily.find((row) => row.date === date);
  if (chances === undefined) return null;
  const open = DAY_STATES.filter((state) => state !== "iced" && chances[state] > 0);
  return open.reduce<DayState | null>(
    (best, state) => (best === null || chances[state] > chances[best] ? state : best),
    null,
  );
}

/**
 * The phase a report belongs to: the one it names, or else the lake's likeliest on that day, taken to be open because somebody fished; in
 * past seasons by that season's records. Null under the ice, and where nobody can tell.
 */
function phaseOfReport(
  report: Report,
  lake: Lake,
  forecast: LakeForecast,
  { season, asOf }: Pick<Club, "season" | "asOf">,
): Phase | null {
  if (report.phase !== undefined) return report.phase;
  if (report.ice === "on") return null;
  const hemisphere = hemisphereOf(lake.position.lat);
  const state =
    seasonOf(report.date, hemisphere) === season
      ? stateThisSeason(report, forecast)
      : pastState(lake, report.date, asOf, hemisphere);
  return PHASES.find((phase) => stateOfPhase(phase) === state) ?? null;
}

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
