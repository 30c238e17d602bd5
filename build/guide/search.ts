import type { Lake, Pattern } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { phaseName } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { METHODS_OF_PHASE } from "../rigs/methods.ts";
import type { SearchPlan } from "../rigs/rig-schemas.ts";
import { searchCells, searchSteps } from "../rigs/search-cells.ts";
import { USUAL_TIMES } from "../rigs/search-plan.ts";
import { tableStep_m } from "../rigs/tables/plumb-table.ts";
import type { GuideLake } from "./guide-schema.ts";

/** Numbers of rods a search is planned for. */
const ROD_COUNTS: readonly number[] = [1, 2, 3];

/** The search of a lake, phase by phase; none where the club names no place, or has no fly for the phase. */
export function composeSearch(
  { places }: Pick<Lake, "places">,
  plan: GuideLake["plan"],
  units: UnitSystem,
): SearchPlan[] {
  if (places.length === 0) return [];
  return plan
    .filter(({ flies }) => flies.length > 0)
    .map(({ phase, band, flies }) => {
      const cells = searchCells(
        places,
        band,
        flies.map(({ pattern, name, way }) => ({ pattern, name, method: way })),
        METHODS_OF_PHASE[phase],
        tableStep_m(units),
      );
      return searchOfPhase(phase, cells);
    });
}

/** The search of one phase, for each number of rods. */
export function searchOfPhase(
  phase: SearchPlan["phase"],
  cells: Parameters<typeof searchSteps>[0],
): SearchPlan {
  const { day_min, change_min, move_min } = USUAL_TIMES;
  return {
    phase,
    day_min,
    change_min,
    move_min,
    byRods: ROD_COUNTS.map((rods) => ({ rods, steps: searchSteps(cells, { ...USUAL_TIMES, rods }) })),
  };
}

/** Patterns that no lake can list: none of their methods is fished in any of their phases. */
export const unfishedPatterns = (patterns: readonly Pattern[]): Diagnostic[] =>
  patterns
    .filter(({ phases, ways }) =>
      phases.every((phase) => !METHODS_OF_PHASE[phase].some((method) => ways.includes(method))),
    )
    .map(({ slug, name, phases, ways }) => ({
      file: `patterns/${slug}.yaml`,
      line: 1,
      column: 1,
      severity: "warning",
      code: "pattern-nowhere",
      message: `“${name}” stands on no lake: ${ways.join(" and ")} ${ways.length === 1 ? "is" : "are"} not fished in ${phases.map((phase) => phaseName(phase).toLowerCase()).join(" or ")}`,
      hint: `write another of its ways, such as ${METHODS_OF_PHASE[phases[0] ?? "post-turnover"].join(", ")}`,
    }));
