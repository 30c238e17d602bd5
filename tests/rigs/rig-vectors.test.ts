import { expect, test } from "vitest";
import { FLY_BALLS, type FlyClass } from "../../build/rigs/fly-classes.ts";
import { hungRig } from "../../build/rigs/leaders/leader-line.ts";
import {
  BED_STRESS,
  currentOver,
  doubleLog,
  doubleLogStress,
  FOAM_SHARE_OF_WIND,
  parabola,
} from "../../build/rigs/physics/current-profile.ts";
import {
  ballBody,
  evenStream,
  hang,
  lift_m,
  NO_BODY,
  surfaceAngle_deg,
  together,
} from "../../build/rigs/physics/hanging-line.ts";
import { heldDrift, mendedDrift, windDrive } from "../../build/rigs/physics/indicator-drift.ts";
import { gaussLegendre } from "../../build/rigs/physics/numeric.ts";
import {
  drawnAngle_rad,
  drawnLineDepth_m,
  drawnTipDepth_m,
  K_HALF,
  stripSink_m,
  tipDepth_m,
  tipHangs_s,
} from "../../build/rigs/physics/sinking-line.ts";
import { slackFall_s, swingDown_s, tightWait_s } from "../../build/rigs/physics/swing-down.ts";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import { searchPlan, shareMinutes } from "../../build/rigs/search-plan.ts";
import { anchorRope_m } from "../../build/rigs/tables/at-anchor.ts";
import { longestDrawnSet_m } from "../../build/rigs/tables/drifting-boat.ts";
import { slowestInTime } from "../../build/rigs/tables/line-counts.ts";
import { nakedLine } from "../../build/rigs/tables/naked-line.ts";
import { type PlumbDepth, plumbDepth } from "../../build/rigs/tables/plumb-table.ts";
import reference from "../reference/rig-vectors.json" with { type: "json" };
import { FT, where } from "./box-fixture.ts";
import { board, clubBox, rigOver, setOf_m, shotBody, water10 } from "./club-box.ts";
import { WORKED_LAKE, WORKED_TIMES } from "./worked-lake.ts";

const IN = 0.0254;
const TOLERANCE_M = 0.15;

/** Closed form: a weightless line of 4 m and 0.2 mm, Cd 3, 4 mN at its end, 0.05 m/s. */
const CD_3 = { constant: 3, twoThirds: 0 };
const ROUND_WATER = { density_kgm3: 1000, viscosity_m2s: 1e-6 };
const weightless = (length_m: number) => [
  { length_m, lowerDiameter_m: 2e-4, upperDiameter_m: 2e-4, density_kgm3: 1000 },
];
const END = { ...NO_BODY, weight_N: 0.004 };
const closedForm = hang(END, weightless(4), evenStream(0.05, ROUND_WATER), 400, CD_3);

const pupa: FlyClass = "beaded pupa";
const wait = (ft: number, name: string, fly: FlyClass, shot: string): number =>
  tightWait_s(rigOver(ft, name, fly, shot), TOLERANCE_M, water10);

/** Today's old table: a fly of 0.2 g, shot of full mass at the tippet's top, 18 ft set, 11 °C. */
function oldRigWait(shot: string): number {
  const water = waterAt(11);
  const fly = ballBody({ mass_g: 0.2, density_kgm3: 4000, width_m: 0.005 }, water);
  return tightWait_s(
    hungRig(board("Usual long"), 18 * FT, fly, shotBody(shot, 1), 3 * FT),
    TOLERANCE_M,
    water,
  );
}

const PROFILE = { log: doubleLog, parabola, even: () => 1 } as const;
function mended(ft: number, name: string, shot: string, foam_mps: number, profile: keyof typeof PROFILE) {
  const rig = rigOver(ft, name, pupa, shot);
  return mendedDrift(
    rig,
    currentOver(ft * FT, foam_mps, PROFILE[profile]),
    windDrive(foam_mps, 0.01905),
    water10,
  );
}
const held = (
  ft: number,
  name: string,
  shot: string,
  foam_mps: number,
  profile: keyof typeof PROFILE,
): number =>
  lift_m(
    heldDrift(rigOver(ft, name, pupa, shot), currentOver(ft * FT, foam_mps, PROFILE[profile]), water10).point,
  );

/** Water of one speed, and air at the indicator that moves with it. */
const carried = mendedDrift(
  rigOver(6, "Edge", pupa, "No. 4"),
  () => 0.1,
  { foam_mps: 0.1, air_mps: 0.1, indicatorDiameter_m: 0.01905 },
  water10,
);
const drawnSet = (rod_s: number, shot: string): number | null =>
  longestDrawnSet_m(board("Deep"), shotBody(shot), (9 * FT) / rod_s, TOLERANCE_M, water10);

const depths = new Map<number, PlumbDepth>(
  [3, 6, 9, 12, 15, 18, 21, 24].map((ft) => [ft, plumbDepth(ft * FT, [pupa], clubBox, "imperial")]),
);
const rowAt = (ft: number): PlumbDepth => {
  const found = depths.get(ft);
  if (found === undefined) throw new Error(`no row at ${ft} ft`);
  return found;
};
const shotAt = (ft: number) =>
  rowAt(ft).rows[0]?.cells.map(({ text, hold }) => `${text.replace("×", "x")}${hold ? " h" : ""}`);
const boardAt = (ft: number) => [rowAt(ft).board, rowAt(ft).rows[0]?.indicator];
const ropeAt = (ft: number) => rowAt(ft).rope.map(({ length_m }) => Number((length_m / FT).toFixed(6)));
const waitAt = (ft: number) => [rowAt(ft).rows[0]?.wait?.from_s, rowAt(ft).rows[0]?.wait?.to_s];

const TIP = { length_m: 15 * FT, sinkRate_mps: 3 * IN };
const RATED_LINES = [
  { name: "intermediate", kind: "sinking", sinkRate_mps: 1.5 * IN, where },
  { name: "medium", kind: "sinking", sinkRate_mps: 3 * IN, where },
  { name: "fast", kind: "sinking", sinkRate_mps: 6 * IN, where },
] as const;
const drawn = (rate_ips: number, from_ft: number): number =>
  drawnLineDepth_m({ depth_m: from_ft * FT, out_m: 50 * FT }, rate_ips * IN, 0.1, 25 * FT);
const naked = (ft: number, fly: FlyClass, draw_mps: number) =>
  nakedLine(board("Usual long"), ft * FT, fly, draw_mps, water10);

const cells = (chances: readonly number[]) => chances.map((chance) => ({ chance }));
const NO_COSTS = { rods: 2, day_min: 60, change_min: 0, move_min: 0, least_min: 0 };
const rungs = (rods: number) =>
  searchPlan(WORKED_LAKE, { ...WORKED_TIMES, rods }).map(({ place, rod, cell, from_min, to_min }) => [
    place,
    rod,
    cell.what,
    Math.round(from_min),
    Math.round(to_min),
  ]);

const COMPUTED: Readonly<Record<string, () => unknown>> = {
  "hang.1": () => closedForm.z_m,
  "hang.2": () => closedForm.x_m,
  "hang.4": () => Math.hypot(closedForm.pullX_N, closedForm.pullZ_N),
  "naked.1": () => surfaceAngle_deg(closedForm),
  "settle.1": () =>
    gaussLegendre((y) => (2 * Math.PI * y ** 3) / Math.sqrt(Math.sin((Math.PI / 2) * y ** 4)), 0, 1),
  "settle.3": () => swingDown_s({ fly: END, segments: weightless(5) }, 0, ROUND_WATER, CD_3),
  "settle.4": () => swingDown_s({ fly: END, segments: weightless(5) }, Math.PI / 6, ROUND_WATER, CD_3),
  "settle.5": () => wait(6, "Edge", pupa, "none"),
  "settle.7": () => wait(12, "Nine-foot", pupa, "none"),
  "settle.8": () => wait(12, "Nine-foot", pupa, "No. 4"),
  "settle.9": () => wait(15, "Usual long", pupa, "BB"),
  "settle.11": () => wait(18, "Usual long", pupa, "No. 4"),
  "settle.12": () => wait(18, "Usual long", pupa, "BB"),
  "settle.13": () => wait(18, "Usual long", pupa, "2 x BB"),
  "settle.15": () => wait(18, "Usual long", "unweighted", "none"),
  "settle.16": () => wait(18, "Usual long", "balanced leech", "none"),
  "settle.17": () => oldRigWait("none"),
  "settle.19": () => oldRigWait("AB"),
  "settle.20": () =>
    slackFall_s(
      together([ballBody(FLY_BALLS[pupa], water10), shotBody("BB")]),
      0.006 * IN,
      setOf_m(18),
      water10,
    ),
  "profile.1": () => parabola(0),
  "profile.3": () => parabola(2 / 3),
  "profile.4": () => parabola(1),
  "profile.5": () => gaussLegendre(parabola, 0, 1),
  "profile.7": () => doubleLog(1),
  "profile.8": () => doubleLogStress(1 - 0.4),
  "profile.9": () => BED_STRESS,
  ...Object.fromEntries(
    [
      ["profile.11", 0.05],
      ["profile.12", 0.1],
      ["profile.13", 0.2],
      ["profile.15", 0.7],
      ["profile.16", 0.9],
    ].map(([name, s]) => [name, () => currentOver(5, 1, doubleLog)(5 * Number(s))]),
  ),
  "drift.1": () => FOAM_SHARE_OF_WIND * 5,
  "drift.3": () => carried.indicator_mps / 0.1,
  "drift.4": () => lift_m(carried.point),
  "drift.5": () => held(6, "Edge", "No. 4", 0.15, "log"),
  "drift.7": () => lift_m(mended(6, "Edge", "No. 4", 0.15, "log").point),
  "drift.8": () => held(6, "Edge", "No. 4", 0.15, "even"),
  "drift.9": () => mended(6, "Edge", "No. 4", 0.15, "log").indicator_mps / 0.15,
  "drift.11": () => held(12, "Nine-foot", "BB", 0.09, "parabola"),
  "drift.12": () => lift_m(mended(12, "Nine-foot", "BB", 0.09, "log").point),
  "drift.13": () => held(12, "Nine-foot", "BB", 0.09, "even"),
  "drift.15": () => held(18, "Usual long", "2 x BB", 0.15, "log"),
  "drift.16": () => held(18, "Usual long", "2 x BB", 0.15, "parabola"),
  "drift.17": () => lift_m(mended(18, "Usual long", "2 x BB", 0.15, "log").point),
  "drift.19": () => mended(18, "Usual long", "2 x BB", 0.15, "log").indicator_mps / 0.15,
  "drift.20": () => held(24, "Deep", "2 x BB", 0.15, "log"),
  "drift.21": () => held(24, "Deep", "2 x BB", 0.15, "parabola"),
  "drift.23": () => held(24, "Deep", "2 x BB", 0.15, "even"),
  "drift.24": () => mended(24, "Deep", "2 x BB", 0.15, "log").indicator_mps / 0.15,
  "drift.25": () => drawnSet(60, "No. 4"),
  "drift.27": () => drawnSet(60, "2 x BB"),
  "drift.28": () => drawnSet(30, "2 x BB"),
  ...Object.fromEntries(
    [3, 6, 9, 12, 15, 18, 21, 24].flatMap((ft, i) => [
      [`table.${4 * i + 1}`, () => shotAt(ft)],
      [`table.${4 * i + 3}`, () => boardAt(ft)],
      [`table.${4 * i + 4}`, () => ropeAt(ft)],
    ]),
  ),
  "table.33": () => rowAt(12).set_m,
  "line.1": () => K_HALF,
  "line.2": () => tipHangs_s(TIP),
  "line.3": () => (drawnAngle_rad(0.1, 0.1) * 180) / Math.PI,
  "line.5": () => stripSink_m({ depth_m: 0, out_m: 10 }, 0.1, 1, 1),
  "line.6": () => stripSink_m({ depth_m: 0, out_m: 10 }, 3 * IN, 0.1, 0.2),
  "line.7": () => tipDepth_m(TIP, 20),
  "line.9": () => drawnTipDepth_m(TIP, 0.05),
  "line.10": () => drawnTipDepth_m(TIP, 0.1),
  "line.11": () => drawnTipDepth_m(TIP, 0.2),
  "line.13": () => drawn(3, 12),
  "line.14": () => drawn(6, 18),
  "line.15": () => slowestInTime(RATED_LINES, 17.5 * FT, 60)?.name ?? null,
  "line.17": () => slowestInTime(RATED_LINES, 35 * FT, 60)?.name ?? null,
  "naked.2": () => naked(15, pupa, 0.02).depth_m,
  "naked.3": () => naked(15, pupa, 0.02).angle_deg,
  "naked.5": () => naked(20, pupa, 0.02).angle_deg,
  "naked.6": () => naked(15, "unweighted", 0.02).depth_m,
  "naked.7": () => naked(15, "unweighted", 0.02).angle_deg,
  "naked.9": () => naked(15, "balanced leech", 0.05).angle_deg,
  "naked.10": () => hang(END, weightless(4), evenStream(0, ROUND_WATER)).z_m,
  "anchor.1": () => anchorRope_m(12 * FT, "calm", clubBox, "imperial") / FT,
  "wait.1": () => waitAt(18),
  "wait.2": () => waitAt(3),
  "search.21": () => shareMinutes([{ name: "a", cells: cells([0.4, 0.1]) }], NO_COSTS)[0]?.cells[0]?.minutes,
  "search.23": () =>
    shareMinutes([{ name: "a", cells: cells([0.64, 0.25, 0.01]) }], {
      ...NO_COSTS,
      rods: 1,
      change_min: 3,
      least_min: 20,
    })[0]?.cells[0]?.minutes,
  "search.24": () => rungs(2),
  "search.25": () => rungs(1),
  "search.27": () => [
    ...new Set(
      searchPlan(
        [
          { name: "a", cells: cells([0.3]) },
          { name: "b", cells: cells([0.2, 0.2]) },
        ],
        WORKED_TIMES,
      ).map(({ place }) => place),
    ),
  ],
};

test.each(reference.vectors)("$name: $what", ({ name, expect: expected, tolerance }) => {
  const compute = COMPUTED[name];
  if (compute === undefined) throw new Error(`nothing computes ${name}`);
  const found = compute();
  if (tolerance === null) expect(found).toEqual(expected);
  else expect(Math.abs(Number(found) - Number(expected)), `${found}`).toBeLessThanOrEqual(tolerance);
});
