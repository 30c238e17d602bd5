import { describe, expect, test } from "vitest";
import type { RigBox } from "../../build/model/club.ts";
import { rigDiagnostics } from "../../build/rigs/gear-checks.ts";
import { box, leader } from "./box-fixture.ts";

const first = <T>(list: readonly T[], changed: Partial<T>): T[] =>
  list.map((item, i) => (i === 0 ? { ...item, ...changed } : item));

test("an ordinary box has nothing wrong", () => expect(rigDiagnostics(box)).toEqual([]));

test("a short leader for a buoyant fly needs no room for an indicator", () =>
  expect(rigDiagnostics({ ...box, leaders: [leader("A", [0.75, 1], [1.5, 2], [1.75, 3])] })).toEqual([]));

const CASES: readonly [name: string, changed: Partial<RigBox>, severity: string, code: string][] = [
  ["thicker toward the fly", { leaders: [leader("A", [9, 4], [2, 3], [2, 5])] }, "warning", "leader-thicker"],
  ["a step missing", { leaders: [leader("A", [9, 3], [2, 6], [2, 7])] }, "warning", "leader-step"],
  ["no such size", { leaders: [leader("A", [9, 3], [2, 4], [2, 12])] }, "error", "leader-size"],
  ["no taper", { leaders: [leader("A", [0, 3], [2, 4], [2, 5])] }, "error", "leader-length"],
  [
    "no room for an indicator",
    { leaders: [leader("A", [0.5, 3], [4, 4], [3, 5])] },
    "warning",
    "leader-no-indicator",
  ],
  ["metres for feet", { leaders: [leader("A", [30, 3], [2, 4], [2, 5])] }, "warning", "leader-long"],
  ["shot of no mass", { shot: first(box.shot, { mass_g: 0 }) }, "error", "shot-mass"],
  ["shot of a pound", { shot: first(box.shot, { mass_g: 450 }) }, "warning", "shot-odd-mass"],
  ["shot that floats", { shot: first(box.shot, { density_kgm3: 900 }) }, "error", "shot-floats"],
  ["shot beyond osmium", { shot: first(box.shot, { density_kgm3: 73100 }) }, "warning", "shot-density"],
  ["no shot carried", { shot: box.shot.map((one) => ({ ...one, carried: 0 })) }, "warning", "no-shot"],
  [
    "an indicator that sinks",
    { indicators: first(box.indicators, { density_kgm3: 1200 }) },
    "error",
    "indicator-sinks",
  ],
  [
    "an indicator too wet",
    { indicators: first(box.indicators, { density_kgm3: 600 }) },
    "warning",
    "indicator-low",
  ],
  [
    "an indicator of a metre",
    { indicators: first(box.indicators, { diameter_m: 1 }) },
    "warning",
    "indicator-odd-size",
  ],
  [
    "an indicator of no size",
    { indicators: first(box.indicators, { diameter_m: 0 }) },
    "error",
    "indicator-size",
  ],
  [
    "no indicator carried",
    { indicators: box.indicators.map((one) => ({ ...one, carried: 0 })) },
    "warning",
    "no-indicator",
  ],
  [
    "a line that rises",
    { lines: first(box.lines, { kind: "sinking", sinkRate_mps: -1 }) },
    "error",
    "line-rate",
  ],
  [
    "a line like a stone",
    { lines: first(box.lines, { kind: "sinking", sinkRate_mps: 2 }) },
    "warning",
    "line-fast",
  ],
  [
    "a sinking line of unknown rate",
    { lines: first(box.lines, { kind: "sinking" }) },
    "warning",
    "line-no-rate",
  ],
  [
    "a floating line that sinks",
    { lines: first(box.lines, { sinkRate_mps: 0.03 }) },
    "warning",
    "line-floats",
  ],
];

describe("one thing wrong is one problem, where it is", () => {
  test.each(CASES)("%s", (_, changed, severity, code) => {
    const spots = { file: "rigs.yaml", line: 1, column: 1 };
    expect(rigDiagnostics({ ...box, ...changed })).toEqual([
      expect.objectContaining({ ...spots, severity, code, hint: expect.stringMatching(/\w/) }),
    ]);
  });
});
