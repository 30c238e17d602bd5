import { phaseName } from "../../model/phase.ts";
import { depthRange, depthUnit, distanceText, toBase, type UnitSystem } from "../../model/units.ts";
import { type DrawingContent, group, path, text } from "../drawing.ts";
import { estimateTextWidth, LEADING, linePath, type Point, tenth, wrapText } from "../geometry.ts";
import { drawLandHatching, type Ring } from "../hatching.ts";
import type { Ink } from "../ink.ts";
import {
  drawArea,
  drawMapMark,
  drawSharedHatching,
  type LetteredMark,
  markText,
  type Zone,
} from "./zones-and-marks.ts";

/** Round lengths a scale bar may have, m. */
const LENGTHS_M: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000],
  imperial: [
    ...[10, 20, 50, 100, 200, 400].map((length_yd) => toBase(length_yd, "yd", "length")),
    ...[0.5, 1, 2, 5, 10].map((length_mi) => toBase(length_mi, "mi", "distance") * 1000),
  ],
};

/** How tall the row of scale bar and north arrow is, by the size of its lettering. */
export const SCALE_ROW = 2.2;

interface ScaleProps {
  readonly perMetre: number;
  readonly units: UnitSystem;
  readonly ink: Ink;
  readonly width: number;
  /** Middle of the row. */
  readonly y: number;
}

/** The longest round length in a third of the width, and at the right an arrow that points north. */
export function drawScaleAndNorth({ perMetre, units, ink, width, y }: ScaleProps): DrawingContent {
  const size = ink.textSize;
  const lengths = LENGTHS_M[units];
  const length_m = lengths.findLast((length) => length * perMetre <= width / 3) ?? lengths[0] ?? 0;
  const length = length_m * perMetre;
  const left = size * 0.3;
  const half = size * 0.2;
  const arrow = width - size * 0.7;
  const tall = size * 0.8;
  return group({ stroke: ink.line, "stroke-width": 1, fill: "none" }, [
    path({
      d: `M${tenth(left)} ${tenth(y - half)}h${length.toFixed(2)}v${tenth(2 * half)}h${(-length).toFixed(2)}Z`,
    }),
    path({
      d: `M${tenth(left)} ${tenth(y - half)}h${tenth(length / 2)}v${tenth(2 * half)}h${tenth(-length / 2)}Z`,
      fill: ink.line,
    }),
    path({
      d: `M${tenth(arrow)} ${tenth(y + tall)}V${tenth(y - tall)}l${tenth(-size * 0.3)} ${tenth(size * 0.6)}h${tenth(size * 0.6)}l${tenth(-size * 0.3)} ${tenth(-size * 0.6)}`,
      fill: ink.line,
    }),
    text(
      { x: tenth(left + length + size * 0.5), y: tenth(y + size * 0.3), fill: ink.words, stroke: "none" },
      distanceText(length_m, units),
    ),
    text(
      {
        x: tenth(arrow - size * 0.6 - estimateTextWidth("N", size)),
        y: tenth(y + size * 0.3),
        fill: ink.words,
        stroke: "none",
      },
      "N",
    ),
  ]);
}

interface KeyRow {
  readonly words: string;
  /** What stands before the words, about this middle. */
  readonly sign: (at: Point) => DrawingContent;
}

const square = ({ x, y }: Point, half: number): Ring => [
  { x: x - half, y: y - half },
  { x: x + half, y: y - half },
  { x: x + half, y: y + half },
  { x: x - half, y: y + half },
  { x: x - half, y: y - half },
];

/** What a map shows that its key explains. */
interface MapSigns {
  readonly zones: readonly Zone[];
  /** Two zones that share ground, the lower one first. */
  readonly shared: readonly (readonly [Zone, Zone])[];
  readonly marks: readonly LetteredMark[];
  readonly island: boolean;
  readonly depths: boolean;
}

/** What the signs of the map mean, a row each. */
export function keyRows(
  { zones, shared, marks, island, depths }: MapSigns,
  { ink, units }: { readonly ink: Ink; readonly units: UnitSystem },
): KeyRow[] {
  const size = ink.textSize;
  const drawSwatch = ({ at }: { at: Point }) =>
    path({ d: linePath(square(at, size * 0.5)), fill: "none", stroke: ink.line, "stroke-width": 0.7 });
  return [
    ...zones.map((zone) => ({
      words: `${phaseName(zone.phase)}: fish at ${depthRange(zone.from_m, zone.to_m, units)}`,
      sign: (at: Point) => [drawArea({ zone, rings: [square(at, size * 0.5)], ink }), drawSwatch({ at })],
    })),
    ...shared.map(([zone, over]) => ({
      words: `Both ${phaseName(zone.phase).toLowerCase()} and ${phaseName(over.phase).toLowerCase()}`,
      sign: (at: Point) => {
        const rings = [square(at, size * 0.5)];
        return [
          drawArea({ zone: over, rings, ink }),
          drawSharedHatching({ zone, rings, over: { zone: over, rings }, ink }),
          drawSwatch({ at }),
        ];
      },
    })),
    ...marks.map(({ letter, mark, name }) => ({
      words: `${letter} ${markText(mark, name)}`,
      sign: (at: Point) => drawMapMark({ mark, at, ink }),
    })),
    ...(island
      ? [
          {
            words: "Island",
            sign: (at: Point) => [
              drawLandHatching({ rings: [square(at, size * 0.45)], ink }),
              path({
                d: linePath(square(at, size * 0.45)),
                fill: "none",
                stroke: ink.words,
                "stroke-width": 1.5,
              }),
            ],
          },
        ]
      : []),
    ...(depths ? [{ words: `Depths in ${depthUnit(units)}`, sign: () => [] }] : []),
  ];
}

interface PlacedRow extends Pick<KeyRow, "sign"> {
  readonly lines: readonly string[];
  readonly x: number;
  /** Lines of the key above it. */
  readonly below: number;
}

/** Left free for the sign, by the size of lettering. */
const SIGN_ROOM = 1.8;

/** The key's rows, two side by side where both fit half the width. */
export function layoutKey(rows: readonly KeyRow[], width: number, size: number) {
  const linesIn = ({ words }: KeyRow, room: number): string[] =>
    wrapText(words, room - size * (SIGN_ROOM + 0.2), size);
  const placed: PlacedRow[] = [];
  let below = 0;
  for (let i = 0; i < rows.length; i++) {
    const [row, next] = [rows[i], rows[i + 1]];
    if (row === undefined) break;
    const pair = next === undefined ? [row] : [row, next];
    const halves = pair.map((one) => linesIn(one, width / 2));
    if (pair.length === 2 && halves.every((lines) => lines.length === 1)) {
      pair.forEach(({ sign }, n) => {
        placed.push({ sign, lines: halves[n] ?? [], x: (n * width) / 2, below });
      });
      below += 1;
      i += 1;
    } else {
      const lines = linesIn(row, width);
      placed.push({ sign: row.sign, lines, x: 0, below });
      below += lines.length;
    }
  }
  return { placed, height: size * LEADING * below };
}

/** The key from `top` down. */
export const drawKey = ({
  placed,
  top,
  ink,
}: {
  placed: readonly PlacedRow[];
  top: number;
  ink: Ink;
}): DrawingContent => {
  const size = ink.textSize;
  return group({ fill: ink.words }, [
    placed.map(({ lines, sign, x, below }) => [
      sign({ x: x + size * 0.8, y: top + size * (LEADING * below + 0.65) }),
      lines.map((line, n) =>
        text({ x: tenth(x + size * SIGN_ROOM), y: tenth(top + size * (LEADING * (below + n) + 0.95)) }, line),
      ),
    ]),
  ]);
};
