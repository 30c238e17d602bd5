import { describe, expect, test } from "vitest";
import { searchCells, searchSteps } from "../../build/rigs/search-cells.ts";
import { USUAL_TIMES } from "../../build/rigs/search-plan.ts";
import { expectWithin } from "./near.ts";

const PUPA = { pattern: "pupa", name: "Pupa", method: "indicator still" } as const;
const LEECH = { pattern: "leech", name: "Leech", method: "indicator twitched" } as const;
const SCUD = { pattern: "scud", name: "Scud", method: "indicator still" } as const;
const METHODS = ["indicator still", "indicator twitched"] as const;
const BAND = { from_m: 3, to_m: 5 };

const [dropOff, edge] = searchCells(
  [
    { name: "Drop-off", depths_m: [4, 6, 8] },
    { name: "Edge", depths_m: [2, 2.5] },
  ],
  BAND,
  [PUPA, LEECH, SCUD],
  METHODS,
  1,
);
const cells = (dropOff?.cells ?? []).concat(edge?.cells ?? []);

describe("chances by hand: weights .6 .3 .1 by depth, 1 1/2 1/4 by fly, 1 1/2 by method", () => {
  // Drop-off: pupa .6 .3 .1; leech at 4 m .6/2/2 = .15; scud .6/4 = .15. Edge: pupa .3 .3; leech .075; scud .075.
  const weights = [0.6, 0.3, 0.1, 0.15, 0.15, 0.3, 0.3, 0.075, 0.075];
  const sum = weights.reduce((total, weight) => total + weight, 0);
  test("in the order of flies, then of depths", () => {
    expect(cells.map(({ pattern, depth_m }) => `${pattern} ${depth_m}`)).toEqual([
      ...["pupa 4", "pupa 6", "pupa 8", "leech 4", "scud 4"],
      ...["pupa 2", "pupa 2.5", "leech 2", "scud 2"],
    ]);
    for (const [i, { chance }] of cells.entries())
      expectWithin(chance, (0.9 * (weights[i] ?? 0)) / sum, 1e-12);
  });
  test("they sum to nine tenths", () =>
    expectWithin(
      cells.reduce((total, { chance }) => total + chance, 0),
      0.9,
      1e-12,
    ));
});

test("steps are timed to five minutes and hold no chance", () => {
  const steps = searchSteps(
    [dropOff, edge].flatMap((place) => place ?? []),
    USUAL_TIMES,
  );
  expect(steps.length).toBeGreaterThan(3);
  for (const step of steps) {
    expect(step.from_min % 5).toBe(0);
    expect(step.until_min % 5).toBe(0);
    expect(step).not.toHaveProperty("chance");
  }
});

test("no places, no plan; a place without flies is passed over", () => {
  expect(searchSteps([], USUAL_TIMES)).toEqual([]);
  expect(searchSteps(searchCells([{ name: "A", depths_m: [3] }], BAND, [], METHODS, 1), USUAL_TIMES)).toEqual(
    [],
  );
});
