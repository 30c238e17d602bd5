import { type Box, holds, isWithin, overlaps, wordBox } from "./boxes.ts";
import type { Spot } from "./map-frame.ts";

/** One contour in a drawing: its depth in words and its lines. */
export interface DrawnContour {
  readonly text: string;
  readonly lines: readonly (readonly Spot[])[];
}

export interface ContourLabel {
  readonly text: string;
  readonly at: Spot;
  readonly box: Box;
}

/** A line wants to be this many times as long as its label is wide. */
const LENGTH_WANTED = 4;

const lengthOf = (line: readonly Spot[]): number =>
  line.slice(1).reduce((sum, to, i) => {
    const from = line[i] ?? to;
    return sum + Math.hypot(to.x - from.x, to.y - from.y);
  }, 0);

/** Points along a line, no two farther apart than `step`. */
const along = (line: readonly Spot[], step: number): Spot[] =>
  line.flatMap((to, i) => {
    const from = line[i - 1] ?? to;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
    return Array.from({ length: steps }, (_, n) => ({
      x: from.x + ((to.x - from.x) * (n + 1)) / steps,
      y: from.y + ((to.y - from.y) * (n + 1)) / steps,
    }));
  });

/**
 * One label a contour, on its longest line, where it runs into no other label, hides nothing of the shore and as little of the other lines as
 * may be. A contour with no such place has none.
 */
export function contourLabels(
  contours: readonly DrawnContour[],
  shore: readonly (readonly Spot[])[],
  room: Box,
  taken: readonly Box[],
  size: number,
): ContourLabel[] {
  const labels: ContourLabel[] = [];
  const step = size / 4;
  const shoreSpots = shore.flatMap((ring) => along(ring, step));
  for (const { text, lines } of contours) {
    const line = lines.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0] ?? [];
    const others = contours
      .flatMap((one) => one.lines.filter((other) => other !== line))
      .flatMap((other) => along(other, step));
    const long = lengthOf(line);
    const inUse = [...taken, ...labels.map((label) => label.box)];
    const places = along(line, size)
      .map((at) => ({ at, box: wordBox(text, at, size) }))
      .filter(({ box }) => long > LENGTH_WANTED * (box.right - box.left) && isWithin(box, room))
      .filter(
        ({ box }) => !inUse.some((b) => overlaps(b, box)) && !shoreSpots.some((spot) => holds(box, spot)),
      )
      .map((place) => ({ ...place, hidden: others.filter((spot) => holds(place.box, spot)).length }));
    const least = Math.min(...places.map(({ hidden }) => hidden));
    const even = places.filter(({ hidden }) => hidden === least);
    // Up the same side of the lake, so that the eye finds them in a row.
    const best = even.toSorted((a, b) => b.at.x + b.at.y - (a.at.x + a.at.y))[0];
    if (best !== undefined) labels.push({ text, at: best.at, box: best.box });
  }
  return labels;
}
