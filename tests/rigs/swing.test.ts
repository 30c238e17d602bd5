import { describe, expect, test } from "vitest";
import { swingTableSchema } from "../../build/rigs/rig-schemas.ts";
import { swingTable, swingTime_s } from "../../build/rigs/tables/at-anchor.ts";
import { box } from "./box-fixture.ts";
import { expectNear } from "./near.ts";

describe("swingTime_s", () => {
  test("R = 12 m, u = 0.12 m/s, 90 to 10 degrees: 243.6 s (closed form by hand)", () =>
    expect(Math.abs(swingTime_s(12, 0.12, 90, 10) - 243.6)).toBeLessThanOrEqual(0.05));

  test("agrees with small steps of dphi/dt = -(u/R) sin(phi)", () => {
    const [line_m, speed_mps, dt_s] = [9, 0.2, 0.001];
    let [phi, time_s] = [(75 * Math.PI) / 180, 0];
    while (phi > (10 * Math.PI) / 180) {
      const middle = phi - (dt_s / 2) * (speed_mps / line_m) * Math.sin(phi);
      phi -= dt_s * (speed_mps / line_m) * Math.sin(middle);
      time_s += dt_s;
    }
    expectNear(swingTime_s(line_m, speed_mps, 75, 10), time_s, 1e-4);
  });

  test("already there, dead upwind and still water", () => {
    expect(swingTime_s(12, 0.1, 8, 10)).toBe(0);
    expect(swingTime_s(12, 0.1, 180, 10)).toBe(Number.POSITIVE_INFINITY);
    expect(swingTime_s(12, 0, 90, 10)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("swingTable", () => {
  const table = swingTable(box);
  test("keeps its schema", () => expect(swingTableSchema.parse(table)).toEqual(table));
  test("says in words that still water does not swing a line", () => {
    expect(table.columns[0]).toEqual({ rod_s: null, drift_mps: 0 });
    for (const { cells } of table.rows)
      expect(cells[0]).toEqual({ rod_s: null, seconds: null, text: "no swing" });
  });
  test("swings longer from a wider angle and shorter in a faster drift", () => {
    for (const [i, { cells }] of table.rows.entries())
      for (const [k, { seconds }] of cells.entries()) {
        if (seconds === null) continue;
        expect(seconds).toBeGreaterThan(table.rows[i - 1]?.cells[k]?.seconds ?? 0);
        expect(seconds).toBeLessThan(cells[k - 1]?.seconds ?? Number.POSITIVE_INFINITY);
      }
  });
});
