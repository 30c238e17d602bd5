import type { JSX } from "preact";
import { phaseName } from "../model/phase.ts";
import { depthRange, depthUnit, type UnitSystem } from "../model/units.ts";
import { wrapped } from "./boxes.ts";
import { LandHatching, type Ring } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { LEADING } from "./lettering.ts";
import { linePath, type Spot } from "./map-frame.ts";
import { type LetteredMark, MapMark, markText } from "./map-marks.tsx";
import { Area, SharedHatching, type Zone } from "./map-zones.tsx";
import { tenth } from "./numbers.ts";

interface KeyRow {
  readonly words: string;
  /** What stands before the words, about this middle. */
  readonly sign: (at: Spot) => JSX.Element;
}

const square = ({ x, y }: Spot, half: number): Ring => [
  { x: x - half, y: y - half },
  { x: x + half, y: y - half },
  { x: x + half, y: y + half },
  { x: x - half, y: y + half },
  { x: x - half, y: y - half },
];

/** What a map shows that its key explains. */
export interface MapSigns {
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
  const Swatch = ({ at }: { at: Spot }) => (
    <path d={linePath(square(at, size * 0.5))} fill="none" stroke={ink.line} stroke-width={0.7} />
  );
  return [
    ...zones.map((zone) => ({
      words: `${phaseName(zone.phase)}: fish at ${depthRange(zone.from_m, zone.to_m, units)}`,
      sign: (at: Spot) => (
        <>
          <Area zone={zone} rings={[square(at, size * 0.5)]} ink={ink} />
          <Swatch at={at} />
        </>
      ),
    })),
    ...shared.map(([zone, over]) => ({
      words: `Both ${phaseName(zone.phase).toLowerCase()} and ${phaseName(over.phase).toLowerCase()}`,
      sign: (at: Spot) => {
        const rings = [square(at, size * 0.5)];
        return (
          <>
            <Area zone={over} rings={rings} ink={ink} />
            <SharedHatching zone={zone} rings={rings} over={{ zone: over, rings }} ink={ink} />
            <Swatch at={at} />
          </>
        );
      },
    })),
    ...marks.map(({ letter, mark, name }) => ({
      words: `${letter} ${markText(mark, name)}`,
      sign: (at: Spot) => <MapMark mark={mark} at={at} ink={ink} />,
    })),
    ...(island
      ? [
          {
            words: "Island",
            sign: (at: Spot) => (
              <>
                <LandHatching rings={[square(at, size * 0.45)]} ink={ink} />
                <path
                  d={linePath(square(at, size * 0.45))}
                  fill="none"
                  stroke={ink.words}
                  stroke-width={1.5}
                />
              </>
            ),
          },
        ]
      : []),
    ...(depths ? [{ words: `Depths in ${depthUnit(units)}`, sign: () => <></> }] : []),
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
    wrapped(words, room - size * (SIGN_ROOM + 0.2), size);
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
export const Key = ({
  placed,
  top,
  ink,
}: {
  placed: readonly PlacedRow[];
  top: number;
  ink: Ink;
}): JSX.Element => {
  const size = ink.textSize;
  return (
    <g fill={ink.words}>
      {placed.map(({ lines, sign, x, below }) => (
        <>
          {sign({ x: x + size * 0.8, y: top + size * (LEADING * below + 0.65) })}
          {lines.map((line, n) => (
            <text x={tenth(x + size * SIGN_ROOM)} y={tenth(top + size * (LEADING * (below + n) + 0.95))}>
              {line}
            </text>
          ))}
        </>
      ))}
    </g>
  );
};
