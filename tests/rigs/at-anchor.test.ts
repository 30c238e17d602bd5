import { describe, expect, test } from "vitest";
import { swingTableSchema } from "../../build/rigs/rig-schemas.ts";
import { anchorRope_m, atAnchor, swingTable, swingTime_s } from "../../build/rigs/tables/at-anchor.ts";
import { oppositeWind, WINDS, windBearing_deg } from "../../build/water/compass.ts";
import { box, FT } from "./box-fixture.ts";
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
  test("swings longer from a wider angle and shorter in a faster drift", () => {
    for (const [i, { cells }] of table.rows.entries())
      for (const [k, { seconds }] of cells.entries()) {
        expect(seconds).toBeGreaterThan(table.rows[i - 1]?.cells[k]?.seconds ?? 0);
        expect(seconds).toBeLessThan(cells[k - 1]?.seconds ?? Number.POSITIVE_INFINITY);
      }
  });
  test("covers an arc: 12 m of line from 90 to 10 degrees is 12 x 80 pi/180 = 16.755 m", () =>
    expect(table.rows.at(-1)?.covers_m).toBe(16.755));
});

test("rods at anchor point downwind: half the compass from where the wind blows from", () => {
  for (const wind of WINDS)
    expect((windBearing_deg(oppositeWind(wind)) - windBearing_deg(wind) + 360) % 360).toBe(180);
  expect(oppositeWind("W")).toBe("E");
  expect(oppositeWind("NNW")).toBe("SSE");
});

test("two anchors belong to calm and ripple; what is trade practice says that it has no source", () => {
  const plan = atAnchor();
  expect(plan.note).toBe("Common practice, no source.");
  expect(plan.moorings.map(({ words }) => words).join(" ")).toMatch(/only way in chop.*Calm and ripple only/);
  expect(plan.holders.map(({ name }) => name)).toEqual(["dead still", "swing"]);
});

describe("anchor rope, by hand: scope x (depth + bow), up to the next 5 ft or 1 m", () => {
  test.each([
    ["imperial", 18 * FT, "calm", 100 * FT], // 5 x (18 + 2) = 100
    ["imperial", 18 * FT, "chop", 140 * FT], // 7 x 20 = 140
    ["imperial", 3 * FT, "chop", 35 * FT],
    ["metric", 5, "ripple", 29], // 5 x (5 + 0.6096) = 28.05
  ] as const)("%s, %d m, %s", (units, depth_m, condition, rope_m) =>
    expect(anchorRope_m(depth_m, condition, box, units)).toBeCloseTo(rope_m, 9),
  );
  test("a club that writes 3 gets 3", () =>
    expect(
      anchorRope_m(18 * FT, "calm", { ...box, scope: { calm: 3, ripple: 3, chop: 3 } }, "imperial"),
    ).toBeCloseTo(60 * FT, 9));
});
