import { USUAL_TIMES } from "../../build/rigs/search-plan.ts";

const cell = (what: string, chance: number) => ({ what, chance });

/** The rig model's own worked example of a search, invented. */
export const WORKED_LAKE = [
  {
    name: "drop-off",
    cells: [
      cell("14 ft pupa", 0.24),
      cell("10 ft pupa", 0.16),
      cell("18 ft pupa", 0.1),
      cell("14 ft leech", 0.08),
    ],
  },
  {
    name: "weed edge",
    cells: [cell("8 ft pupa", 0.1), cell("8 ft damsel", 0.07), cell("12 ft pupa", 0.05)],
  },
  { name: "mid basin", cells: [cell("20 ft pupa", 0.06), cell("16 ft leech", 0.04)] },
] as const;

/** Two rods, 240 min, 3 to change, 12 to move, 20 at least. */
export const WORKED_TIMES = USUAL_TIMES;
