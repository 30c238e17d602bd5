import type { LeaderStock, RigBox } from "../model/club.ts";
import { rounded, smallLengthText, temperatureText, type UnitSystem } from "../model/units.ts";
import { DRIFT_COLUMNS, drift_mps, type RodSeconds } from "./drift.ts";
import { hang, lift_m, type Stream } from "./hang.ts";
import { type HoldLadder, holdLadder } from "./hold-ladder.ts";
import { leastIndicatorDiameter_m, smallestIndicator } from "./indicator.ts";
import { chooseIndicatorLeader } from "./leaders/choose-leader.ts";
import { leanProfile } from "./lean-profile.ts";
import { waterAt } from "./physics/water-properties.ts";
import { flyLoad, hungLine, ringWeight_N, segmentWeight_N, USUAL_FLY } from "./rig-line.ts";
import type { ShotCell, ShotTable } from "./rig-tables.ts";
import { toMillimetre } from "./round.ts";
import { flyDepth_m, LEAST_SET_M } from "./set-depth.ts";
import { comboLoad, comboText, type ShotCombo, shotCombos } from "./shot-combos.ts";

const problemCell = (
  rod_s: RodSeconds,
  problem: NonNullable<ShotCell["problem"]>,
  words: string,
): ShotCell => ({
  rod_s,
  text: problem,
  shot: [],
  mass_g: null,
  lift_m: null,
  indicator: null,
  problem,
  words,
});

const grams = (mass_g: number): string => `${rounded(mass_g, 2)} g`;

function tooFastWords({ flyLifts, rungs }: HoldLadder): string {
  if (flyLifts)
    return "The tippet lifts the fly, whatever the shot above it: a heavier fly, or calmer water.";
  const most = rungs.at(-1);
  return most === undefined || most.combo.count === 0
    ? "There is no shot to hold it."
    : `Not even ${comboText(most.combo)} holds it: calmer water, or a sinking line.`;
}

/** What hangs on the indicator in still water, where nothing is carried by the drift, N. */
function hungWeight_N(leader: LeaderStock, set_m: number, combo: ShotCombo, still: Stream): number {
  const { below, above } = hungLine(leader, set_m);
  const line_N = [...below, ...above].reduce((sum, part) => sum + segmentWeight_N(part, still.water), 0);
  return flyLoad(still).weight_N + comboLoad(combo, still).weight_N + ringWeight_N(still.water) + line_N;
}

/** The lift of the fly under a combination, m. */
export function liftOf_m(leader: LeaderStock, set_m: number, combo: ShotCombo, stream: Stream): number {
  const { below, above } = hungLine(leader, set_m);
  const ring = comboLoad(combo, stream);
  return lift_m(hang(flyLoad(stream), [...below.map((part) => ({ ...part, top: ring })), ...above], stream));
}

function shotCell(
  leader: LeaderStock,
  set_m: number,
  rod_s: RodSeconds,
  water_C: number,
  box: RigBox,
): ShotCell {
  const ladder = holdLadder(leader, rod_s, water_C, box);
  const combo = ladder.rungs.find(({ holdsTo_m }) => holdsTo_m >= set_m)?.combo;
  if (combo === undefined) return problemCell(rod_s, "too fast", tooFastWords(ladder));
  if (combo.mass_g > box.castLimit_g)
    return problemCell(
      rod_s,
      "too heavy",
      `Needs ${comboText(combo)}, ${grams(combo.mass_g)}: more than the ${grams(box.castLimit_g)} that casts well.`,
    );
  const water = waterAt(water_C);
  const load_N = hungWeight_N(leader, set_m, combo, { speed_mps: 0, water });
  const indicator = smallestIndicator(load_N, box.dryShare, box.indicators, water);
  if (indicator === undefined) return problemCell(rod_s, "sinks it", sinksWords(combo, load_N, water_C, box));
  return {
    rod_s,
    text: comboText(combo),
    shot: combo.pieces.map(({ shot, count }) => ({ name: shot.name, count })),
    mass_g: Number(combo.mass_g.toFixed(3)),
    lift_m: toMillimetre(liftOf_m(leader, set_m, combo, { speed_mps: drift_mps(box, rod_s), water })),
    indicator: indicator.name,
    problem: null,
    words: null,
  };
}

function sinksWords(combo: ShotCombo, load_N: number, water_C: number, box: RigBox): string {
  const lightest_kgm3 = Math.min(...box.indicators.map(({ density_kgm3 }) => density_kgm3));
  const needed_m = leastIndicatorDiameter_m(load_N, box.dryShare, lightest_kgm3, waterAt(water_C));
  const rig = combo.count === 0 ? "The rig" : `${comboText(combo)} and the rig`;
  return needed_m === undefined || !Number.isFinite(needed_m)
    ? `${rig} needs an indicator that rides higher than any carried.`
    : `${rig} needs an indicator of ${Math.ceil(needed_m * 1000)} mm; none that big is carried.`;
}

function shotRow(depth_m: number, water_C: number, box: RigBox): ShotTable["rows"][number] {
  const set_m = flyDepth_m(depth_m, box);
  const none = (problem: "too shallow" | "no leader", words: string): ShotCell[] =>
    DRIFT_COLUMNS.map((rod_s) => problemCell(rod_s, problem, words));
  if (set_m < LEAST_SET_M)
    return {
      depth_m,
      set_m: null,
      leader: null,
      cells: none("too shallow", "Too shallow for an indicator: cast a floating line."),
    };
  const leader = chooseIndicatorLeader({ from_m: set_m, to_m: set_m }, box)?.leader;
  return {
    depth_m,
    set_m,
    leader: leader?.name ?? null,
    cells:
      leader === undefined
        ? none("no leader", "No leader in the box serves this set: see the boards to tie.")
        : DRIFT_COLUMNS.map((rod_s) => shotCell(leader, set_m, rod_s, water_C, box)),
  };
}

/** The deepest cell that names shot, in the fastest drift it holds: where the lean shows most. */
function exampleOf(rows: ShotTable["rows"], water_C: number, box: RigBox): ShotTable["example"] {
  for (const { depth_m, set_m, leader: name, cells } of rows.toReversed()) {
    const leader = box.leaders.find((one) => one.name === name);
    const cell = cells.findLast(({ shot, rod_s }) => shot.length > 0 && rod_s !== null);
    if (set_m === null || leader === undefined || cell === undefined || cell.indicator === null) continue;
    const { rod_s, text, indicator, lift_m: lift } = cell;
    const combo = shotCombos(box.shot).find((one) => comboText(one) === text);
    if (rod_s === null || lift === null || combo === undefined) continue;
    const stream = { speed_mps: drift_mps(box, rod_s), water: waterAt(water_C) };
    const { points, lean_deg } = leanProfile(leader, set_m, combo, stream);
    return {
      depth_m,
      rod_s,
      set_m,
      leader: leader.name,
      shot: text,
      indicator,
      lift_m: lift,
      aside_m: points.at(-1)?.x_m ?? 0,
      lean_deg,
      points,
    };
  }
  return null;
}

/**
 * The least shot, by mass, that keeps the fly within the club's tolerance of straight down, by depth and drift.
 * @param water_C 0 to 40 °C, worked at whole degrees
 * @param depths_m plumbed depths of the water
 * @throws RangeError for other water
 */
export function shotTable(
  box: RigBox,
  water_C: number,
  depths_m: readonly number[],
  units: UnitSystem,
): ShotTable {
  const whole_C = Math.round(water_C);
  const rows = depths_m.map((depth_m) => shotRow(depth_m, whole_C, box));
  return {
    water_C: whole_C,
    columns: DRIFT_COLUMNS.map((rod_s) => ({ rod_s, drift_mps: drift_mps(box, rod_s) })),
    rows,
    example: exampleOf(rows, whole_C, box),
    assumes: [
      `The fly hangs at most ${smallLengthText(box.lift_m, units)} higher than straight below the indicator.`,
      `A fly of ${grams(USUAL_FLY.mass_g)} with a bead; shot pinched on just above the ring at the tippet's upper end.`,
      `Fresh water of ${temperatureText(whole_C, units)}, drifting past as fast at the fly as on top.`,
    ],
    check:
      "A planning aid: lower the rig beside the boat; if the line leans, add the next size, and if the indicator rides low, take the next bigger one.",
  };
}
