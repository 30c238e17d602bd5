import { describe, expect, test } from "vitest";
import type { RigBox } from "../../build/model/club.ts";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import { shotTableSchema } from "../../build/rigs/rig-schemas.ts";
import type { ShotCombo } from "../../build/rigs/shot-combos.ts";
import { liftOf_m, shotTable } from "../../build/rigs/shot-table.ts";
import { box, leader, where } from "./box-fixture.ts";
import { expectNear, expectWithin } from "./near.ts";

const DEPTHS_M = [0.4, 0.7, 1.5, 2.5, 3, 4, 5, 6, 9];
const table = shotTable(box, 7.6, DEPTHS_M, "imperial");

/** Every way of pinching on up to three of the box's three sizes, by plain loops. */
function everyCombo({ shot }: RigBox): ShotCombo[] {
  const combos: ShotCombo[] = [];
  const [a, b, c] = shot;
  if (a === undefined || b === undefined || c === undefined)
    throw new Error("the box has three sizes of shot");
  for (let i = 0; i <= 3; i++)
    for (let j = 0; i + j <= 3; j++)
      for (let k = 0; i + j + k <= 3; k++)
        combos.push({
          pieces: [
            { shot: a, count: i },
            { shot: b, count: j },
            { shot: c, count: k },
          ].filter(({ count }) => count > 0),
          mass_g: i * a.mass_g + j * b.mass_g + k * c.mass_g,
          count: i + j + k,
        });
  return combos;
}

test("keeps its schema, and no cell is blank", () => {
  expect(shotTableSchema.parse(table)).toEqual(table);
  for (const { cells } of table.rows)
    for (const cell of cells) {
      expect(cell.text).not.toBe("");
      expect(cell.problem === null).toBe(cell.words === null);
      expect(JSON.stringify(cell)).not.toContain("NaN");
    }
});

describe("each cell against every combination marched by itself", () => {
  const water = waterAt(8);
  for (const { depth_m, set_m, leader: name, cells } of table.rows) {
    const used = box.leaders.find((one) => one.name === name);
    if (set_m === null || used === undefined) continue;
    for (const [i, cell] of cells.entries())
      test(`${depth_m} m, ${cell.rod_s ?? "no"} s a rod`, () => {
        const stream = { speed_mps: table.columns[i]?.drift_mps ?? Number.NaN, water };
        const holding = everyCombo(box).filter((combo) => liftOf_m(used, set_m, combo, stream) <= box.lift_m);
        const least_g = Math.min(...holding.map(({ mass_g }) => mass_g));
        if (cell.problem === null) {
          expect(cell.mass_g).toBeCloseTo(least_g, 6);
          expect(cell.lift_m).toBeLessThanOrEqual(box.lift_m);
        } else if (cell.problem === "too heavy") expect(least_g).toBeGreaterThan(box.castLimit_g);
        else if (cell.problem === "too fast") expect(holding).toEqual([]);
      });
  }
});

/**
 * Two cells reworked by hand at 8 °C (999.849 kg/m3, 1.3849e-6 m2/s) in one piece for tippet and middle and three or
 * four for the taper, each piece's forces taken at its middle. The hand sums are good to about 3 mm.
 */
const HAND_CELLS = [
  { depth_m: 3, rod_s: 60, shot: [{ name: "No. 4", count: 2 }], lift_m: 0.141, indicator: "Medium" },
  { depth_m: 1.5, rod_s: 45, shot: [{ name: "No. 4", count: 1 }], lift_m: 0.066, indicator: "Small" },
] as const;
/** The next lighter choice in the same two places, by the same sums: both lift more than the 0.15 m allowed. */
const HAND_LIGHTER = [
  { depth_m: 3, rod_s: 60, count: 1, lift_m: 0.265 },
  { depth_m: 1.5, rod_s: 45, count: 0, lift_m: 0.179 },
] as const;

describe("cells reworked by hand", () => {
  test.each(HAND_CELLS)("$depth_m m, $rod_s s a rod", ({ depth_m, rod_s, shot, lift_m, indicator }) => {
    const row = shotTable(box, 8, [depth_m], "metric").rows[0];
    const cell = row?.cells.find((one) => one.rod_s === rod_s);
    expect(cell).toMatchObject({ shot, indicator, problem: null });
    expectWithin(cell?.lift_m ?? Number.NaN, lift_m, 0.003);
  });
  test.each(HAND_LIGHTER)("$depth_m m, $rod_s s a rod, lighter", ({ depth_m, rod_s, count, lift_m }) => {
    const [used, shot] = [box.leaders[0], box.shot[0]];
    if (used === undefined || shot === undefined) throw new Error("the box has a leader and shot");
    const combo = { pieces: count === 0 ? [] : [{ shot, count }], mass_g: count * shot.mass_g, count };
    const stream = { speed_mps: box.rod_m / rod_s, water: waterAt(8) };
    expectNear(liftOf_m(used, depth_m - 7 * 0.0254, combo, stream), lift_m, 0.03);
  });
});

test("still water asks for no shot; the note says what is assumed", () => {
  for (const { cells } of table.rows)
    if (cells[0]?.problem === null)
      expect(cells[0]).toMatchObject({ text: "none", lift_m: 0, mass_g: 0, shot: [] });
  expect(table.assumes.join(" ")).toContain("46 °F");
});

test("deeper and faster never ask for less shot on one leader", () => {
  for (const [i, { cells, leader: name }] of table.rows.entries())
    for (const [k, { mass_g }] of cells.entries()) {
      if (mass_g === null) continue;
      expect(mass_g).toBeGreaterThanOrEqual(cells[k - 1]?.mass_g ?? 0);
      const above = table.rows[i - 1];
      if (above?.leader === name) expect(mass_g).toBeGreaterThanOrEqual(above.cells[k]?.mass_g ?? 0);
    }
});

const cellsOf = (changed: Partial<RigBox>, depth_m = 4) =>
  shotTable({ ...box, ...changed }, 8, [depth_m], "metric").rows[0]?.cells ?? [];

describe("what cannot be done is said in words", () => {
  test("too shallow for an indicator", () =>
    expect(new Set(table.rows[0]?.cells.map(({ problem }) => problem))).toEqual(new Set(["too shallow"])));
  test("no leader reaches", () =>
    expect(new Set(table.rows.at(-1)?.cells.map(({ problem }) => problem))).toEqual(new Set(["no leader"])));
  test("over the club's cast limit", () => {
    const limited = cellsOf({ castLimit_g: 0.1 });
    expect(limited.map(({ text }) => text)).toContain("too heavy");
    expect(limited.find(({ problem }) => problem === "too heavy")?.words).toContain("0.1 g");
  });
  test("no indicator carried floats it, and how big one would have to be", () => {
    const tiny = box.indicators.map((one) => ({ ...one, diameter_m: 0.006 }));
    const cells = cellsOf({ indicators: tiny });
    expect(cells[0]?.problem).toBe("sinks it");
    expect(cells[0]?.words).toMatch(/needs an indicator of \d+ mm/);
  });
  test("indicators that ride too low are named as such", () => {
    const sodden = box.indicators.map((one) => ({ ...one, density_kgm3: 700 }));
    expect(cellsOf({ indicators: sodden })[0]?.words).toContain("rides higher");
  });
  test("no shot carried", () => {
    const none = box.shot.map((one) => ({ ...one, carried: 0 }));
    const cells = cellsOf({ shot: none });
    expect(cells[0]?.text).toBe("none");
    expect(cells.at(-1)?.problem).toBe("too fast");
  });
  test("never more pieces than are carried", () => {
    const one = box.shot.map((shot) => ({ ...shot, carried: 1 }));
    for (const { shot } of cellsOf({ shot: one })) for (const { count } of shot) expect(count).toBe(1);
  });
});

test("a short tippet above no knots: the table works on a two-part leader", () => {
  const two = leader("Two", [12, 3], [0, 4], [3, 5]);
  const cells = cellsOf({ leaders: [two] }, 3);
  expect(cells.some(({ problem }) => problem === null)).toBe(true);
});

test("lead of the same mass holds no worse than tin: less drag, more weight in water", () => {
  const tin = { name: "Tin", mass_g: 0.4, density_kgm3: 7310, carried: 3, where };
  const lead = { ...tin, name: "Lead", density_kgm3: 11350 };
  const leadCells = cellsOf({ shot: [lead] });
  const held = cellsOf({ shot: [tin] }).map(({ mass_g }, i) => ({
    tin_g: mass_g,
    lead_g: leadCells[i]?.mass_g ?? null,
  }));
  expect(held.filter(({ tin_g }) => tin_g !== null && tin_g > 0)).not.toEqual([]);
  for (const { tin_g, lead_g } of held)
    if (tin_g !== null) expect(lead_g ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(tin_g);
});
