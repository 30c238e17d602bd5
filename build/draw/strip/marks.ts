import type { GuideLake } from "../../guide/guide-schema.ts";
import { dayMonth } from "../../model/calendar.ts";
import { PHASES, type Phase, phaseName } from "../../model/phase.ts";
import { type DrawingContent, group, path, text } from "../drawing.ts";
import { clamp, LEADING, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";
import { textWidth } from "./date-axis.ts";

type Seen = GuideLake["marks"][number]["seen"];

const isPhase = (seen: Seen): seen is Phase => PHASES.some((phase) => phase === seen);

/** "ice on", "turnover", "best weeks": what a mark says, in the words used everywhere. */
export const seenText = (seen: Seen): string => (isPhase(seen) ? phaseName(seen).toLowerCase() : seen);

/** What is inked within a mark's outline: all, the lower half, a dot in the middle, or nothing. */
const INKED: Readonly<Record<Seen, "all" | "half" | "dot" | "none">> = {
  "ice on": "all",
  "ice part": "half",
  "ice off": "none",
  "ice-off": "none",
  turnover: "half",
  "post-turnover": "all",
  "later-weeks": "dot",
};

interface MarkShapeProps {
  readonly seen: Seen;
  readonly doubted: boolean;
  readonly x: number;
  readonly y: number;
  /** Half its width. */
  readonly r: number;
  readonly ink: Ink;
}

/** What somebody saw: squares for the ice, circles for the water's phase; struck through where doubted. */
export function drawMarkShape({ seen, doubted, x, y, r, ink }: MarkShapeProps): DrawingContent {
  const round = isPhase(seen);
  const inked = INKED[seen];
  const outline = round
    ? `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
    : `M${x - r} ${y - r}h${2 * r}v${2 * r}h${-2 * r}Z`;
  const lowerHalf = round
    ? `M${x - r} ${y}a${r} ${r} 0 0 0 ${2 * r} 0Z`
    : `M${x - r} ${y}h${2 * r}v${r}h${-2 * r}Z`;
  const dot = `M${x - r / 2} ${y}a${r / 2} ${r / 2} 0 1 0 ${r} 0a${r / 2} ${r / 2} 0 1 0 ${-r} 0Z`;
  return group({ stroke: ink.words, "stroke-width": 1 }, [
    path({ d: outline, fill: inked === "all" ? ink.words : ink.paper }),
    inked === "half" ? path({ d: lowerHalf, fill: ink.words, stroke: "none" }) : null,
    inked === "dot" ? path({ d: dot, fill: ink.words, stroke: "none" }) : null,
    doubted ? path({ d: `M${x - 1.6 * r} ${y + 1.6 * r}L${x + 1.6 * r} ${y - 1.6 * r}` }) : null,
  ]);
}

interface PlacedMark {
  readonly mark: GuideLake["marks"][number];
  readonly x: number;
  /** Its word and where it stands; only the latest mark of each kind has one. */
  readonly word?: WordPlace & { readonly text: string };
}

interface WordPlace {
  readonly anchor: "start" | "end" | "middle";
  readonly x: number;
  readonly row: 0 | 1;
}

type Stretch = readonly [from: number, to: number];

/** Finds room for the word of each kind of mark: after its shape, else well clear before it, else below it. */
export function placeMarks(width: number, marks: readonly PlacedMark[], ink: Ink): PlacedMark[] {
  const r = markRadius(ink);
  const shapes: Stretch[] = marks.map(({ x }) => [x - r * 1.6, x + r * 1.6]);
  const taken: readonly [Stretch[], Stretch[]] = [shapes, []];
  const said = new Set<string>();
  return marks.toReversed().map((placed) => {
    const text = `${seenText(placed.mark.seen)}${placed.mark.doubted ? "?" : ""}`;
    if (said.has(text)) return placed;
    said.add(text);
    const length = textWidth(text, ink);
    const [after, before] = [placed.x + r * 2, placed.x - r * 2];
    const clear = before < length ? -1 : Math.max(0, before - length - ink.textSize);
    const below = clamp(placed.x, length / 2, width - length / 2);
    const places: readonly (WordPlace & { readonly room: Stretch })[] = [
      { x: after, row: 0, anchor: "start", room: [after, after + length] },
      { x: before, row: 0, anchor: "end", room: [clear, before] },
      { x: below, row: 1, anchor: "middle", room: [below - length / 2, below + length / 2] },
    ];
    const free = places.find(
      ({ row, room: [from, to] }) =>
        from >= 0 && to <= width && taken[row].every(([a, b]) => to <= a || from >= b),
    );
    if (free === undefined) return placed;
    taken[free.row].push([free.room[0] - r, free.room[1] + r]);
    return { ...placed, word: { text, x: free.x, row: free.row, anchor: free.anchor } };
  });
}

/** Half the width of a mark's shape. */
const markRadius = (ink: Ink): number => tenth(ink.textSize * 0.3);

/** What was seen, in a lane of its own. */
export function drawMarks({
  placed,
  ink,
  y,
}: {
  placed: readonly PlacedMark[];
  ink: Ink;
  y: number;
}): DrawingContent {
  return group({}, [
    placed.map(({ mark, x, word }) =>
      group(
        {},
        [
          drawMarkShape({ seen: mark.seen, doubted: mark.doubted, x, y: tenth(y), r: markRadius(ink), ink }),
          word === undefined
            ? null
            : text(
                {
                  x: tenth(word.x),
                  y: tenth(y + ink.textSize * (0.34 + LEADING * word.row)),
                  "text-anchor": word.anchor,
                  fill: ink.words,
                },
                word.text,
              ),
        ],
        `${dayMonth(mark.date)}: seen, ${seenText(mark.seen)}${mark.doubted ? " (doubted)" : ""}`,
      ),
    ),
  ]);
}
