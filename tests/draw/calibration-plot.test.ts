import { describe, expect, test } from "vitest";
import { calibrationPlot } from "../../build/draw/charts.ts";
import { screenInk } from "../../build/draw/ink.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { BacktestRow } from "../../build/season/forecast.ts";
import { letteringBoxes } from "./lettering-boxes.ts";

const row = (moment: BacktestRow["moment"], calibration: BacktestRow["calibration"]): BacktestRow => ({
  moment,
  reporting: "perfect",
  n: 10,
  seasons: 5,
  baseline: { mae: 5, crps: 3 },
  shifted: { mae: 4.5, crps: 2.5 },
  opening: null,
  model: { mae: 4, crps: 2, cover50: 0.5, cover80: 0.8 },
  calibration,
});

const numbers = (text: string | undefined): number[] => (text?.match(/-?[\d.]+/g) ?? []).map(Number);

describe("calibration plot", () => {
  const plot = calibrationPlot(
    [
      row("before", [
        { said: 0, came: 0 },
        { said: 0.25, came: 0.75 },
        { said: 1, came: 1 },
      ]),
      row("50%", [{ said: 0.5, came: 0.5 }]),
    ],
    screenInk,
  );
  const svg = renderSvg(plot);
  const [corner, quarter, far, half] = [...svg.matchAll(/translate\(([^)]*)\)/g)].map(([, at]) =>
    numbers(at),
  );
  const [left = 0, low = 0] = corner ?? [];
  const [right = 0, high = 0] = far ?? [];

  test("has chance said from left to right and share that came from the bottom up", () => {
    expect(right).toBeGreaterThan(left);
    expect(high).toBeLessThan(low);
    expect(quarter?.[0]).toBeCloseTo(left + 0.25 * (right - left), 1);
    expect(quarter?.[1]).toBeCloseTo(low + 0.75 * (high - low), 1);
    expect(half?.[0]).toBeCloseTo((left + right) / 2, 1);
  });

  test("draws the line on which chances come true from corner to corner", () => {
    expect(svg).toContain(`M${left} ${low}L${right} ${high}`);
  });

  test("names each moment it shows, and no other, with a shape of its own", () => {
    expect(svg).toContain("Before any opens");
    expect(svg).toContain("Half open");
    expect(svg).not.toContain("First lake open");
    expect(new Set([...svg.matchAll(/<path d="([^"]*)" transform/g)].map(([, shape]) => shape)).size).toBe(2);
  });

  test("stays inside its frame", () => {
    expect(
      letteringBoxes(plot).filter(({ right, bottom }) => right > plot.width || bottom > plot.height),
    ).toEqual([]);
  });
});
