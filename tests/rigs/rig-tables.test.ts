import { describe, expect, test } from "vitest";
import type { FlyClass } from "../../build/rigs/fly-classes.ts";
import { evenStream, hang, NO_BODY, surfaceAngle_deg } from "../../build/rigs/physics/hanging-line.ts";
import {
  drawnLineDepth_m,
  drawnTipDepth_m,
  holdingSpeed_mps,
  tipCount_s,
  tipDepth_m,
  trolledLineOut_m,
} from "../../build/rigs/physics/sinking-line.ts";
import { tightWait_s } from "../../build/rigs/physics/swing-down.ts";
import { longestDrawnSet_m } from "../../build/rigs/tables/drifting-boat.ts";
import { nakedLine } from "../../build/rigs/tables/naked-line.ts";
import { plumbDepth } from "../../build/rigs/tables/plumb-table.ts";
import {
  DEPTHS_FT,
  DRAWN_SETS,
  NAKED_LINES,
  RETRIEVES,
  SHOT_TABLE,
  TIGHT_WAITS,
  TIP_DRAWN,
  TIP_SINKS,
  WEIGHTLESS_ANGLES,
} from "../reference/rig-tables.ts";
import { FT } from "./box-fixture.ts";
import { board, clubBox, rigOver, shotBody, water10 } from "./club-box.ts";
import { expectWithin } from "./near.ts";

const IN = 0.0254;
const BOARDS = [
  "Edge",
  "Edge",
  "Edge",
  "Nine-foot",
  "Usual long",
  "Usual long",
  "Usual long",
  "Deep",
] as const;

describe("tight-line waits", () => {
  test.each(TIGHT_WAITS)("$fly, $shot", ({ fly, shot, waits_s }) => {
    for (const [i, ft] of DEPTHS_FT.entries()) {
      const found_s = tightWait_s(rigOver(ft, BOARDS[i] ?? "", fly, shot), 0.15, water10);
      expectWithin(found_s, waits_s[i] ?? Number.NaN, 0.51 + 0.002 * found_s);
    }
  });
});

describe("shot table", () => {
  const FLIES: readonly FlyClass[] = ["beaded pupa", "balanced leech", "unweighted"];
  test.each(SHOT_TABLE)("$ft ft", ({ ft, leech, unweighted, lifts_cm }) => {
    const { rows } = plumbDepth(ft * FT, FLIES, clubBox, "imperial");
    const said = rows.map(({ cells }) =>
      cells.map(({ text, hold }) => `${text.replace("×", "x")}${hold ? " hold" : ""}`).join(" / "),
    );
    expect(said.slice(1)).toEqual([leech, unweighted]);
    const cm = (lift_m: number): number => Math.round(lift_m * 100);
    const lifts = rows[0]?.cells.flatMap(({ lift, hold }) =>
      lift === null || hold ? [] : [`${cm(lift.expected_m)}-${cm(lift.doubtful_m)}`],
    );
    expect(lifts?.join(", ")).toBe(lifts_cm);
  });
});

describe("longest sets drawn by a drifting boat", () => {
  test.each(DRAWN_SETS.rows)("$shot", ({ shot, sets_ft }) => {
    for (const [i, rod_s] of DRAWN_SETS.rod_s.entries()) {
      const found_m = longestDrawnSet_m(board("Deep"), shotBody(shot), (9 * FT) / rod_s, 0.15, water10);
      const published_ft = sets_ft[i] ?? null;
      if (published_ft === null) expect(found_m === null || found_m > 24 * FT).toBe(true);
      else expectWithin((found_m ?? Number.NaN) / FT, published_ft, 0.051);
    }
  });
});

describe("sink tips", () => {
  const tip = (ft: number) => ({ length_m: ft * FT, sinkRate_mps: 3 * IN });
  test.each(TIP_SINKS)("15 ft, $seconds s", ({ seconds, depth_ft }) =>
    expectWithin(tipDepth_m(tip(15), seconds) / FT, depth_ft, 0.051),
  );
  test.each(TIP_DRAWN)("$tip_ft ft drawn at $speed_cmps cm/s", ({ tip_ft, speed_cmps, depth_ft }) =>
    expectWithin(drawnTipDepth_m(tip(tip_ft), speed_cmps / 100) / FT, depth_ft, 0.051),
  );
  test("no count takes a tip deeper than it is long; a count takes it where it says", () => {
    expect(tipCount_s(tip(15), 18 * FT)).toBeNull();
    for (const ft of [3, 9, 14]) {
      const seconds = tipCount_s(tip(15), ft * FT) ?? Number.NaN;
      expectWithin(tipDepth_m(tip(15), seconds), ft * FT, 1e-4);
      expect(tipDepth_m(tip(15), seconds - 0.1)).toBeLessThan(ft * FT);
    }
    expect(tipDepth_m(tip(15), 1000)).toBe(15 * FT);
  });
});

describe("sinking lines drawn from a 50 ft cast", () => {
  test.each(RETRIEVES)("$rate_ips in/s at $speed_cmps cm/s", ({ speed_cmps, rate_ips, depths_ft }) => {
    for (const [i, share] of [0.75, 0.5, 0.3].entries()) {
      const found_m = drawnLineDepth_m(
        { depth_m: 9 * FT, out_m: 50 * FT },
        rate_ips * IN,
        speed_cmps / 100,
        50 * share * FT,
      );
      expectWithin(found_m / FT, depths_ft[i] ?? Number.NaN, 0.51);
    }
  });
  test("drawn at w R/z a line keeps its depth for a foot; steeper than 37.5 degrees nothing does", () => {
    const line = { depth_m: 3, out_m: 15 };
    const speed_mps = holdingSpeed_mps(line, 0.0762) ?? Number.NaN;
    expectWithin(drawnLineDepth_m(line, 0.0762, speed_mps, 14.7), 3, 0.005);
    expectWithin(speed_mps, 0.381, 1e-12);
    expect(holdingSpeed_mps({ depth_m: 10, out_m: 15 }, 0.0762)).toBeNull();
  });
});

describe("naked line", () => {
  test.each(NAKED_LINES)("$fly, $ft ft", ({ fly, ft, at }) => {
    for (const [speed_cmps, [depth_ft, angle_deg]] of Object.entries(at)) {
      const found = nakedLine(board("Usual long"), ft * FT, fly, Number(speed_cmps) / 100, water10);
      expectWithin(found.depth_m / FT, depth_ft, 0.051);
      expectWithin(found.angle_deg, angle_deg, 0.51);
    }
  });
  test.each(WEIGHTLESS_ANGLES)("weightless at $angle_deg degrees", ({ angle_deg, share }) => {
    // Cd 3 over 4 m of 0.2 mm, 4 mN: cot(angle) = k L with k = rho Cd d U^2 / (2 W), so U follows from the angle.
    const speed_mps = Math.sqrt((2 * 0.004) / Math.tan((angle_deg * Math.PI) / 180) / (1000 * 3 * 2e-4 * 4));
    const line = [{ length_m: 4, lowerDiameter_m: 2e-4, upperDiameter_m: 2e-4, density_kgm3: 1000 }];
    const stream = evenStream(speed_mps, { density_kgm3: 1000, viscosity_m2s: 1e-6 });
    const found = hang({ ...NO_BODY, weight_N: 0.004 }, line, stream, 400, { constant: 3, twoThirds: 0 });
    expectWithin(surfaceAngle_deg(found), angle_deg, 1e-4);
    expectWithin(found.z_m / 4, share, 0.0051);
  });
});

test("a tip and a trolled line are one: as much line out as the tip is long ends at the tip's depth", () => {
  for (const speed_mps of [0.05, 0.2, 0.5]) {
    const tip = { length_m: 4, sinkRate_mps: 0.0762 };
    expectWithin(trolledLineOut_m(drawnTipDepth_m(tip, speed_mps), 0.0762, speed_mps), 4, 1e-9);
  }
});
