import { hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { Club, Lake, Report } from "../model/club.ts";
import { DAY_STATES, type DayState, PHASES, type Phase, stateOfPhase } from "../model/phase.ts";
import type { LakeForecast } from "../season/forecast.ts";
import { pastState } from "../season/past-state.ts";

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
 * past seasons by that season's records. Null under the ice, in summer, and where nobody can tell.
 */
export function phaseOfReport(
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
