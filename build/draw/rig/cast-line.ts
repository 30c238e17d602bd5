import type { Method } from "../../model/club.ts";
import { depthY, type SideView } from "./side-view.ts";

export type LinePoint = readonly [x: number, y: number];

/** How a fly line is drawn: solid floats, hollow is clear, broken sinks. */
export type Stroke = "floating" | "clear" | "sinking" | "leader";

export interface LineSegment {
  readonly stroke: Stroke;
  readonly through: readonly LinePoint[];
}

/** Where things stand in the drawing. */
export interface Scene {
  readonly view: SideView;
  readonly boat: number;
  readonly entry: number;
  readonly right: number;
  /** Depth of the fly over the deep end. */
  readonly fly_m: number;
}

/** Tackle, and the fly at its end. */
export interface Tackle {
  readonly stretches: readonly LineSegment[];
  /** In the middle of its fly line and of its leader, to hang their names on. */
  readonly lineAt: LinePoint;
  readonly leaderAt: LinePoint;
  readonly fly: LinePoint;
  /** Where the line's end lies on the bottom, if it does. */
  readonly bottomAt?: LinePoint;
}

/** Fly line, leader and fly of a way of fishing. */
export function tackleOf(way: Method, stroke: Stroke, { view, entry, right, fly_m }: Scene): Tackle {
  const { top, ink } = view;
  const size = ink.textSize;
  const fly: LinePoint = [right - size, depthY(view, fly_m)];
  const between = (a: LinePoint, b: LinePoint, share = 0.5): LinePoint => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
  ];
  const start: LinePoint = [entry, top];
  if (way === "floating line") {
    // Not to scale sideways, but the leader enters the water at its right angle, about 40 degrees.
    const deep = fly[1] - top;
    const end: LinePoint = [Math.max(entry + size * 1.5, fly[0] - deep * 0.85), top];
    const bend: LinePoint = [end[0] + (fly[0] - end[0]) * 0.75, top + deep * 0.55];
    return {
      stretches: [
        { stroke, through: [start, end] },
        { stroke: "leader", through: [end, bend, fly] },
      ],
      lineAt: between(start, end, 0.8),
      leaderAt: between(bend, fly, 0.3),
      fly,
    };
  }
  if (way === "sink tip") {
    const tip: LinePoint = [entry + (right - entry) * 0.35, top];
    const end: LinePoint = [fly[0] - size * 1.8, fly[1] - size * 0.5];
    return {
      stretches: [
        { stroke: "floating", through: [start, tip] },
        { stroke: "sinking", through: [tip, end] },
        { stroke: "leader", through: [end, fly] },
      ],
      lineAt: between(tip, end, 0.6),
      leaderAt: between(end, fly),
      fly,
    };
  }
  if (way === "buoyant on sinking line") {
    const bottom = depthY(view, view.depth_m) - 1.8;
    const down: LinePoint = [entry + (right - entry) * 0.45, bottom];
    const end: LinePoint = [right - size * 2, bottom];
    const up: LinePoint = [end[0] + size * 0.8, Math.max(top, fly[1])];
    return {
      stretches: [
        { stroke, through: [start, down] },
        { stroke, through: [down, end] },
        { stroke: "leader", through: [end, up] },
      ],
      lineAt: between(start, down, 0.4),
      leaderAt: between(end, up),
      fly: up,
      bottomAt: end,
    };
  }
  const end: LinePoint = [fly[0] - size * 3, fly[1] - size * 0.4];
  return {
    stretches: [
      { stroke, through: [start, [entry + (end[0] - entry) * 0.55, top + (end[1] - top) * 0.85], end] },
      { stroke: "leader", through: [end, fly] },
    ],
    lineAt: [entry + (end[0] - entry) * 0.525, top + (end[1] - top) * 0.675],
    leaderAt: between(end, fly),
    fly,
  };
}
