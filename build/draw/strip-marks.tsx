import type { JSX } from "preact";
import type { GuideLake } from "../guide/guide-schema.ts";
import { dayMonth } from "../model/calendar.ts";
import type { Ink } from "./ink.ts";
import { LEADING } from "./lettering.ts";
import { MarkShape, seenText } from "./mark-shape.tsx";
import { clamp, tenth } from "./numbers.ts";
import { lettering } from "./strip-frame.ts";

export interface PlacedMark {
  readonly mark: GuideLake["marks"][number];
  readonly x: number;
  /** Its word and where it stands; the latest mark of its kind speaks for the earlier ones. */
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
    const length = lettering(text, ink);
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
export function Marks({
  placed,
  ink,
  y,
}: {
  placed: readonly PlacedMark[];
  ink: Ink;
  y: number;
}): JSX.Element {
  return (
    <g>
      {placed.map(({ mark, x, word }) => (
        <g>
          <title>{`${dayMonth(mark.date)}: seen, ${seenText(mark.seen)}${mark.doubted ? " (doubted)" : ""}`}</title>
          <MarkShape
            seen={mark.seen}
            doubted={mark.doubted}
            x={x}
            y={tenth(y)}
            r={markRadius(ink)}
            ink={ink}
          />
          {word === undefined ? null : (
            <text
              x={tenth(word.x)}
              y={tenth(y + ink.textSize * (0.34 + LEADING * word.row))}
              text-anchor={word.anchor}
              fill={ink.words}
            >
              {word.text}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
