import type { LeaderStock } from "../model/club.ts";
import { atFly, type LinePoint, type LineSegment, lean_deg, marchUp, type Stream } from "./hang.ts";
import { flyLoad, hungLine } from "./rig-line.ts";
import type { LeanExample } from "./rig-tables.ts";
import { toMillimetre } from "./round.ts";
import { comboLoad, type ShotCombo } from "./shot-combos.ts";

/** Points on each section of the line: enough for a smooth curve. */
const PIECES = 10;

type ProfilePoint = LeanExample["points"][number];

const pointAt = ({ x_m, z_m }: LinePoint, at: ProfilePoint["at"]): ProfilePoint => ({
  x_m: toMillimetre(x_m),
  z_m: toMillimetre(z_m),
  at,
});

/** An even piece of a section, from `i` to `i + 1` of the pieces it is cut in. */
function pieceOf(segment: LineSegment, i: number): LineSegment {
  const widening = (segment.upperDiameter_m - segment.lowerDiameter_m) / PIECES;
  const { top: _, ...line } = segment;
  return {
    ...line,
    length_m: segment.length_m / PIECES,
    lowerDiameter_m: segment.lowerDiameter_m + i * widening,
    upperDiameter_m: segment.lowerDiameter_m + (i + 1) * widening,
    ...(i === PIECES - 1 && segment.top !== undefined ? { top: segment.top } : {}),
  };
}

/** The line of a rig in a drift, point by point from the fly to the indicator, and its lean there. */
export function leanProfile(
  leader: LeaderStock,
  set_m: number,
  combo: ShotCombo,
  stream: Stream,
): { readonly points: ProfilePoint[]; readonly lean_deg: number } {
  const { below, above } = hungLine(leader, set_m);
  const shot = comboLoad(combo, stream);
  const segments = [...below.map((segment) => ({ ...segment, top: shot })), ...above];
  let point = atFly(flyLoad(stream));
  const points = [pointAt(point, "fly")];
  for (const [k, segment] of segments.entries())
    for (let i = 0; i < PIECES; i++) {
      point = marchUp(point, pieceOf(segment, i), stream);
      const isEnd = i === PIECES - 1;
      const end = k === segments.length - 1 ? "indicator" : k === 0 ? "ring" : "knot";
      points.push(pointAt(point, isEnd ? end : null));
    }
  return { points, lean_deg: Math.round(lean_deg(point)) };
}
