import type { RigBox } from "../../model/club.ts";
import { TABLE_FLY } from "../fly-classes.ts";
import { toMillimetre } from "../leaders/leader.ts";
import { shotAboveFly_m } from "../leaders/leader-line.ts";
import { type Current, currentOver, PROFILES } from "../physics/current-profile.ts";
import { freeEnd, type LinePoint, lift_m, marchUp, stretchOf } from "../physics/hanging-line.ts";
import { mendedDrift, windDrive } from "../physics/indicator-drift.ts";
import { waterAt } from "../physics/water-properties.ts";
import type { LeanExample } from "../rig-schemas.ts";
import { FOAM_MPS } from "./conditions.ts";
import { type PlumbDepth, TABLE_WATER_C } from "./plumb-table.ts";
import { rigWith, stepText, TABLE_INDICATOR_M, weighedSteps } from "./shot-choice.ts";

/** Points on each stretch of line, and of the current from the surface to the bottom. */
const POINTS = { line: 6, current: 12 } as const;

type At = LeanExample["points"][number]["at"];

const pointAt = ({ x_m, z_m }: LinePoint, at: At): LeanExample["points"][number] => ({
  x_m: toMillimetre(x_m),
  z_m: toMillimetre(z_m),
  at,
});

/**
 * The deepest row whose shot holds a mended rig down in chop, drawn out: how it leans in water that slows with depth.
 * Null when no row does.
 */
export function leanExample(
  depths: readonly PlumbDepth[],
  box: Pick<RigBox, "leaders" | "shot" | "castLimit_g" | "steps">,
): LeanExample | null {
  const water = waterAt(TABLE_WATER_C);
  const steps = weighedSteps(box.steps, box);
  for (const { depth_m, set_m, board, rows } of depths.toReversed()) {
    const row = rows.find(({ fly }) => fly === TABLE_FLY);
    const cell = row?.cells.find(({ condition }) => condition === "chop");
    const leader = box.leaders.find(({ name }) => name === board);
    const step = steps.find((one) => stepText(one) === cell?.text);
    if (set_m === null || leader === undefined || step === undefined || row?.indicator === undefined)
      continue;
    if (row.indicator === null || cell === undefined || cell.hold) continue;
    const foam_mps = FOAM_MPS.chop;
    const current: Current = currentOver(depth_m, foam_mps, PROFILES.expected);
    const rig = rigWith({ leader, depth_m, set_m, fly: TABLE_FLY }, step, water);
    const { point: top, indicator_mps } = mendedDrift(
      rig,
      current,
      windDrive(foam_mps, TABLE_INDICATOR_M),
      water,
    );
    const stream = {
      speedAt_mps: (aboveFly_m: number) => current(top.z_m - aboveFly_m) - indicator_mps,
      water,
    };
    let point = freeEnd(rig.fly, stream);
    const points = [pointAt(point, "fly")];
    for (const [k, segment] of rig.segments.entries())
      for (let i = 0; i < POINTS.line; i++) {
        const [from_m, to_m] = [i, i + 1].map((n) => (n * segment.length_m) / POINTS.line) as [
          number,
          number,
        ];
        const isEnd = i === POINTS.line - 1;
        const stretch = stretchOf(segment, from_m, to_m);
        point = marchUp(
          point,
          isEnd && segment.top !== undefined ? { ...stretch, top: segment.top } : stretch,
          stream,
        );
        points.push(
          pointAt(point, isEnd ? endOf(k, rig.segments.length, point, shotAboveFly_m(leader)) : null),
        );
      }
    return {
      depth_m,
      condition: "chop",
      foam_mps,
      set_m: toMillimetre(set_m),
      leader: leader.name,
      shot: cell.text,
      indicator: row.indicator,
      lift_m: toMillimetre(lift_m(top)),
      aside_m: toMillimetre(point.x_m),
      points,
      current: Array.from({ length: POINTS.current + 1 }, (_, i) => {
        const at_m = (i * depth_m) / POINTS.current;
        return { depth_m: toMillimetre(at_m), speed_mps: toMillimetre(current(at_m)) };
      }),
    };
  }
  return null;
}

/** What stands at the upper end of a segment. */
function endOf(k: number, segments: number, { length_m }: LinePoint, shotAt_m: number): At {
  if (k === segments - 1) return "indicator";
  return Math.abs(length_m - shotAt_m) < 1e-6 ? "shot" : null;
}
