import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Lake, RigBox } from "../../build/model/club.ts";
import type { UnitSystem } from "../../build/model/units.ts";
import { rigsForLake } from "../../build/rigs/lake-rigs.ts";
import {
  driftingTableSchema,
  leaderSchema,
  leanExampleSchema,
  lineSchema,
  nakedTableSchema,
  type PhaseRigs,
  phaseRigsSchema,
  plumbTableSchema,
  tippetSchema,
} from "../../build/rigs/rig-schemas.ts";
import { rigTables } from "../../build/rigs/tables/rig-tables.ts";
import { box, FT, lake, leader } from "./box-fixture.ts";

const phaseOf = (rigs: readonly PhaseRigs[], phase: PhaseRigs["phase"]): PhaseRigs => {
  const found = rigs.find((one) => one.phase === phase);
  if (found === undefined) throw new Error(`no ${phase}`);
  return found;
};
const best = (changed: Partial<Lake>, changedBox: Partial<RigBox> = {}): PhaseRigs =>
  phaseOf(rigsForLake({ ...lake, ...changed }, { ...box, ...changedBox }, "imperial"), "post-turnover");
const rigOf = ({ rigs }: PhaseRigs, way: PhaseRigs["rigs"][number]["way"]): PhaseRigs["rigs"][number] => {
  const found = rigs.find((rig) => rig.way === way);
  if (found === undefined) throw new Error(`no ${way}`);
  return found;
};

describe("phases and bands", () => {
  test("every phase for a lake that turns over, all but turnover for one that does not", () => {
    expect(rigsForLake(lake, box, "metric").map(({ phase }) => phase)).toEqual([
      "ice-off",
      "turnover",
      "post-turnover",
      "later-weeks",
    ]);
    const still: Lake = { ...lake, turnoverRule: { turnsOver: false } };
    expect(rigsForLake(still, box, "metric").map(({ phase }) => phase)).toEqual([
      "ice-off",
      "post-turnover",
      "later-weeks",
    ]);
  });
  test("without the club's own band the usual one, common practice, no deeper than the lake", () => {
    expect(best({}).band).toEqual({ from_m: 2.5, to_m: 5.5, source: "usual" });
    expect(best({ maxDepth_m: 4 }).band).toEqual({ from_m: 2.5, to_m: 4, source: "usual" });
    expect(best({ maxDepth_m: 2 }).band).toEqual({ from_m: 2, to_m: 2, source: "usual" });
  });
  test("the club's own band where there is one", () => {
    const depthBands = { "post-turnover": { from_m: 3, to_m: 4 } };
    expect(best({ depthBands }).band).toEqual({ from_m: 3, to_m: 4, source: "club" });
  });
  test("turnover is called poor", () => {
    for (const { check } of phaseOf(rigsForLake(lake, box, "metric"), "turnover").rigs)
      expect(check.toLowerCase()).toContain("poor");
  });
});

describe("under an indicator", () => {
  test("the set is the plumbed depth less 6 to 8 in (common practice, no source)", () => {
    const { setDepth } = rigOf(
      best({ depthBands: { "post-turnover": { from_m: 3, to_m: 4 } } }),
      "indicator still",
    );
    for (const [set_m, depth_m] of [
      [setDepth?.from_m ?? 0, 3],
      [setDepth?.to_m ?? 0, 4],
    ] as const) {
      expect(depth_m - set_m).toBeGreaterThanOrEqual(6 * 0.0254);
      expect(depth_m - set_m).toBeLessThanOrEqual(8 * 0.0254);
    }
  });
  test("fixed up to the rod less the reach, 8 ft here; deeper it slips", () => {
    const holdAt = (to_m: number) =>
      rigOf(best({ depthBands: { "post-turnover": { from_m: 1, to_m } } }), "indicator still").landing;
    const set_m = (depth_m: number) => depth_m - 7 * 0.0254;
    expect(set_m(2.61)).toBeLessThan(8 * FT);
    expect(holdAt(2.61)).toBe("fixed");
    expect(set_m(2.62)).toBeGreaterThan(8 * FT);
    expect(holdAt(2.62)).toBe("slip");
  });
  test("takes the shortest leader at each depth, as the plumb table does, and says where each ends", () => {
    const rig = rigOf(best({}), "indicator still");
    // Sets 2.32 to 5.32 m; Shallow to 3.20 m (10.5 ft), Long from 2.89 m.
    expect(rig.leader).toBe("Long");
    expect(rig.check).toContain("Shallow to a set of 10.5 ft, then Long.");
    expect(rig.uncovered).toBeNull();
  });
  test("of two equally long that serve all, one already tied", () => {
    const twins = [leader("New", [12, 3], [2, 4], [3, 5]), leader("Tied", [13, 3], [1, 4], [3, 5], 1)];
    const depthBands = { "post-turnover": { from_m: 2.5, to_m: 3 } };
    expect(rigOf(best({ depthBands }, { leaders: twins }), "indicator still").leader).toBe("Tied");
  });
  test("what no leader serves is named, with a leader that would", () => {
    const leaders = [leader("Long", [12, 3], [6, 4], [3, 5])];
    expect(rigOf(best({}, { leaders }), "indicator still").uncovered).toMatch(
      /No leader here serves sets of 7.5–9.5 ft: tie 12 ft taper to 3X/,
    );
  });
  test("water too shallow has no set, and says so", () => {
    const rig = rigOf(best({ maxDepth_m: 0.4 }), "indicator still");
    expect(rig).toMatchObject({ setDepth: null, leader: null, landing: null });
    expect(rig.uncovered).toContain("too shallow");
  });
});

describe("lines", () => {
  test("counts an intermediate down by depth over rate, by hand: (2.5 - 0.178) / 0.0381 = 61 s", () => {
    const { countdown, line } = rigOf(best({}), "clear intermediate");
    expect(line).toBe("Glass");
    expect(countdown?.from_s).toBe(61);
  });
  test("a line too slow for the deep end is named, its count to the shallow end called long", () => {
    const { countdown, uncovered } = rigOf(best({}), "clear intermediate");
    // (5.5 - 0.178) / 0.0381 = 140 s, over 90 s.
    expect(uncovered).toContain("over 90 s");
    expect(countdown).toEqual({ from_s: 61, to_s: null, long: true });
  });
  test("a sink tip goes no deeper than it is long", () => {
    const rig = rigOf(best({ depthBands: { "post-turnover": { from_m: 2, to_m: 6 } } }), "sink tip");
    expect(rig.fly?.to_m).toBeCloseTo(15 * FT, 3);
    expect(rig.countdown?.to_s).toBeNull();
    expect(rig.uncovered).toContain("Not with this tip");
  });
  test("a naked line says how deep it fishes and how it is drawn; a troll how much line is out", () => {
    const naked = rigOf(best({}), "floating line");
    expect(naked.draw).toBe("Pull 4 in every 5 s.");
    // A pupa on the 21 ft leader at 2 cm/s fishes a little deeper than the 14.9 ft of 20 ft.
    expect((naked.fly?.to_m ?? 0) / FT).toBeGreaterThan(14.9);
    expect((naked.fly?.to_m ?? 0) / FT).toBeLessThan(16);
    expect(rigOf(best({}), "trolled").draw).toMatch(/Row a rod length in \d+ s, about \d+ ft of line out/);
  });
  test("of two sinking lines the slowest that is down within a minute", () => {
    const at = (to_m: number) =>
      rigOf(best({ depthBands: { "post-turnover": { from_m: 2, to_m } } }), "buoyant on sinking line").line;
    expect(at(4)).toBe("Slow");
    expect(at(6)).toBe("Quick");
  });
  test("a kind of line the club does not own is named, with the nearest", () => {
    const lines = box.lines.filter(({ kind }) => kind !== "sink tip");
    const rig = rigOf(best({}, { lines }), "sink tip");
    expect(rig.line).toBeNull();
    expect(rig.uncovered).toMatch(/No sink tip line in the box: the nearest carried is Glass/);
  });
  test("without a floating line nothing does instead", () => {
    const lines = box.lines.filter(({ kind }) => kind !== "floating");
    expect(rigOf(best({}, { lines }), "indicator still").uncovered).toContain("No floating line");
  });
  test("a line of unknown rate is to be timed", () => {
    const lines = box.lines.map(({ sinkRate_mps: _, ...line }) => line);
    const rig = rigOf(best({}, { lines }), "clear intermediate");
    expect(rig.countdown).toBeNull();
    expect(rig.uncovered).toContain("time it");
  });
});

test("tables keep their schemas; 5X is 0.1524 mm, rule of 11", () => {
  for (const units of ["imperial", "metric"] satisfies UnitSystem[]) {
    const { tippet, leaders, lines, plumb, drifting, lean, naked } = rigTables(box, units);
    expect(tippet.map((row) => tippetSchema.parse(row))).toContainEqual({ size: "5X", diameter_mm: 0.1524 });
    expect(tippet).toHaveLength(17);
    for (const row of leaders) expect(leaderSchema.parse(row)).toEqual(row);
    for (const row of lines) expect(lineSchema.parse(row)).toEqual(row);
    expect(plumbTableSchema.parse(plumb)).toEqual(plumb);
    expect(driftingTableSchema.parse(drifting)).toEqual(drifting);
    expect(leanExampleSchema.parse(lean)).toEqual(lean);
    expect(nakedTableSchema.parse(naked)).toEqual(naked);
    expect(lines[0]?.counts).toEqual([]);
    for (const { depth_m, seconds } of lines[1]?.counts ?? []) {
      const exact_s = depth_m / (1.5 * 0.0254);
      if (seconds === null) expect(exact_s).toBeGreaterThan(90);
      else expect(Math.abs(seconds - exact_s)).toBeLessThanOrEqual(0.5);
    }
  }
});

test("no lake and no box makes a rig that breaks its schema, goes below zero or says nothing", () => {
  const depth = fc.double({ min: 0.01, max: 30, noNaN: true });
  fc.assert(
    fc.property(
      fc.tuple(depth, depth),
      fc.option(depth),
      fc.subarray([...box.leaders]),
      fc.subarray([...box.lines]),
      fc.constantFrom<UnitSystem>("imperial", "metric"),
      ([a, b], deepest, leaders, lines, units) => {
        const own = { from_m: Math.min(a, b), to_m: Math.max(a, b) };
        const odd: Lake = {
          ...lake,
          depthBands: { "ice-off": own, "post-turnover": own },
          ...(deepest === null ? {} : { maxDepth_m: deepest }),
        };
        for (const phase of rigsForLake(odd, { ...box, leaders, lines }, units)) {
          expect(phaseRigsSchema.parse(phase)).toEqual(phase);
          for (const rig of phase.rigs) {
            expect(rig.check).not.toBe("");
            if (rig.setDepth !== null) expect(rig.setDepth.from_m).toBeLessThanOrEqual(rig.setDepth.to_m);
            if (rig.line === null) expect(rig.uncovered).not.toBeNull();
            if (rig.landing !== null && rig.leader === null) expect(rig.uncovered).not.toBeNull();
            expect(JSON.stringify(rig)).not.toMatch(/NaN|Infinity|undefined/);
          }
        }
      },
    ),
    { seed: 1 },
  );
});
