import { describe, expect, test } from "vitest";
import { shotTable } from "../../build/rigs/shot-table.ts";
import { box, FT } from "./box-fixture.ts";

describe.each([6, 12, 18])("the example of a table over %d ft", (depth_ft) => {
  const { example, rows } = shotTable(box, 11, [depth_ft * FT], "imperial");
  const points = example?.points ?? [];

  test("runs from the fly by the ring to the indicator", () => {
    const named = points.flatMap(({ at }) => (at === null ? [] : [at]));
    expect(named[0]).toBe("fly");
    expect(named[1]).toBe("ring");
    expect(named.at(-1)).toBe("indicator");
  });

  test("is as long as the set, and ends lower than straight down by the cell's lift", () => {
    const chords_m = points.slice(1).map((point, i) => {
      const before = points[i] ?? point;
      return Math.hypot(point.x_m - before.x_m, point.z_m - before.z_m);
    });
    const length_m = chords_m.reduce((sum, chord_m) => sum + chord_m, 0);
    // Points are written to the millimetre, and chords of a gentle curve fall short by less than that.
    expect(Math.abs(length_m - (example?.set_m ?? 0))).toBeLessThan(0.01);
    expect(points.at(-1)?.z_m).toBeCloseTo((example?.set_m ?? 0) - (example?.lift_m ?? 0), 2);
    expect(points.at(-1)?.x_m).toBe(example?.aside_m);
    const cell = rows[0]?.cells.find(({ rod_s }) => rod_s === example?.rod_s);
    expect(cell).toMatchObject({ text: example?.shot, lift_m: example?.lift_m });
  });

  test("leans as its last piece does", () => {
    const [below, top] = points.slice(-2);
    const last_deg =
      (Math.atan2((top?.x_m ?? 0) - (below?.x_m ?? 0), (top?.z_m ?? 0) - (below?.z_m ?? 0)) * 180) / Math.PI;
    // The line bends by under 3 degrees within a tenth of a section.
    expect(Math.abs((example?.lean_deg ?? 0) - last_deg)).toBeLessThan(3);
  });
});

test("still water and drifts nothing holds have no example", () => {
  expect(shotTable(box, 11, [0.3 * FT], "imperial").example).toBeNull();
});
