import type { LeaderStock, RigBox } from "../model/club.ts";
import { drift_mps, type RodSeconds } from "./drift.ts";
import { atFly, type LinePoint, type LineSegment, lift_m, marchUp, type Stream } from "./hang.ts";
import { leaderLength_m } from "./leaders/leader.ts";
import { waterAt } from "./physics/water-properties.ts";
import { flyLoad, hungLine } from "./rig-line.ts";
import { comboLoad, type ShotCombo, shotCombos } from "./shot-combos.ts";

/** The longest set at which a combination keeps the fly down. */
interface Rung {
  readonly combo: ShotCombo;
  readonly holdsTo_m: number;
}

/** Shot against length for one leader in one drift. */
export interface HoldLadder {
  /** The tippet below the shot lifts the fly too far by itself: no shot helps. */
  readonly flyLifts: boolean;
  /** Lightest first; each holds a longer set than any lighter one. */
  readonly rungs: readonly Rung[];
}

const PIECE_M = 0.3;
const STEPS_A_PIECE = 2;
const HALVINGS = 14; // finds the length to 0.3 m / 2^14, a fiftieth of a millimetre

/** The lower `share` of a segment. */
const lowerPart = (segment: LineSegment, share: number): LineSegment => ({
  ...segment,
  length_m: segment.length_m * share,
  upperDiameter_m: segment.lowerDiameter_m + (segment.upperDiameter_m - segment.lowerDiameter_m) * share,
});

function inPieces(segment: LineSegment): LineSegment[] {
  const count = Math.ceil(segment.length_m / PIECE_M);
  const widening = (segment.upperDiameter_m - segment.lowerDiameter_m) / count;
  return Array.from({ length: count }, (_, i) => ({
    ...segment,
    length_m: segment.length_m / count,
    lowerDiameter_m: segment.lowerDiameter_m + i * widening,
    upperDiameter_m: segment.lowerDiameter_m + (i + 1) * widening,
  }));
}

/** The length at which the lift, which only grows with length, passes the limit; Infinity when it never does. */
function holdsTo_m(from: LinePoint, pieces: readonly LineSegment[], stream: Stream, limit_m: number): number {
  let point = from;
  for (const piece of pieces) {
    const next = marchUp(point, piece, stream, STEPS_A_PIECE);
    if (lift_m(next) > limit_m) {
      let [holds, lifts] = [0, 1];
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (holds + lifts) / 2;
        const end = marchUp(point, lowerPart(piece, middle), stream, STEPS_A_PIECE);
        if (lift_m(end) > limit_m) lifts = middle;
        else holds = middle;
      }
      return point.length_m + holds * piece.length_m;
    }
    point = next;
  }
  return Number.POSITIVE_INFINITY;
}

function climb(leader: LeaderStock, stream: Stream, box: RigBox): HoldLadder {
  const { below, above } = hungLine(leader, leaderLength_m(leader));
  const atRing = below.reduce((point, segment) => marchUp(point, segment, stream), atFly(flyLoad(stream)));
  if (lift_m(atRing) > box.lift_m) return { flyLifts: true, rungs: [] };
  const pieces = above.flatMap(inPieces);
  const rungs: Rung[] = [];
  let longest_m = 0;
  for (const combo of shotCombos(box.shot)) {
    if (longest_m === Number.POSITIVE_INFINITY) break;
    const load = comboLoad(combo, stream);
    const loaded = {
      ...atRing,
      pullX_N: atRing.pullX_N + load.drag_N,
      pullZ_N: atRing.pullZ_N + load.weight_N,
    };
    const reach_m = holdsTo_m(loaded, pieces, stream, box.lift_m);
    if (reach_m > longest_m) rungs.push({ combo, holdsTo_m: reach_m });
    longest_m = Math.max(longest_m, reach_m);
  }
  return { flyLifts: false, rungs };
}

/** Ladders already climbed; a ladder depends on nothing but its box, leader, drift and temperature. */
const climbed = new WeakMap<RigBox, Map<string, HoldLadder>>();

/** The ladder of one leader of a box in one drift, in water of `water_C`. */
export function holdLadder(
  leader: LeaderStock,
  rodSeconds: RodSeconds,
  water_C: number,
  box: RigBox,
): HoldLadder {
  const ladders = climbed.get(box) ?? new Map<string, HoldLadder>();
  climbed.set(box, ladders);
  const key = `${box.leaders.indexOf(leader)} ${rodSeconds} ${water_C}`;
  const known = ladders.get(key);
  if (known !== undefined) return known;
  const stream = { speed_mps: drift_mps(box, rodSeconds), water: waterAt(water_C) };
  const ladder = climb(leader, stream, box);
  ladders.set(key, ladder);
  return ladder;
}
