import type { GuideLake } from "../../guide/guide-schema.ts";
import { stateOfPhase } from "../../model/phase.ts";
import { type DrawingContent, path, text } from "../drawing.ts";
import {
  type Box,
  boxAround,
  type DrawnMap,
  isWithin,
  linePath,
  type MapFrame,
  MIDDLE_TO_BASE,
  overlaps,
  type Point,
  tenth,
  textBox,
} from "../geometry.ts";
import { drawRingHatching, type Ring } from "../hatching.ts";
import type { Ink } from "../ink.ts";

export type Zone = GuideLake["place"]["zones"][number];

/** Where to fish in one phase, and the zones drawn over it that share ground with it. */
interface DrawnZone {
  readonly zone: Zone;
  readonly rings: readonly Ring[];
  readonly under: readonly Pick<DrawnZone, "zone" | "rings">[];
}

const shareDepths = (one: Zone, other: Zone): boolean =>
  Math.max(one.from_m, other.from_m) < Math.min(one.to_m, other.to_m);

/** The zones in the drawing, the first lowest. */
export function drawnZones(zones: readonly Zone[], { toSpot }: MapFrame): DrawnZone[] {
  const drawn = zones.map((zone) => ({
    zone,
    rings: zone.polygons.flatMap((polygon) => polygon.map((ring) => ring.map(toSpot))),
  }));
  return drawn.map((one, i) => ({
    ...one,
    under: drawn.slice(i + 1).filter(({ zone }) => shareDepths(one.zone, zone)),
  }));
}

export const ringsPath = (rings: readonly Ring[]): string => rings.map(linePath).join("");

/** A zone's ground and hatching. */
export const drawArea = ({
  zone,
  rings,
  ink,
}: {
  zone: Zone;
  rings: readonly Ring[];
  ink: Ink;
}): DrawingContent => {
  const state = stateOfPhase(zone.phase);
  return [
    path({
      d: ringsPath(rings),
      fill: ink.states[state].ground,
      "fill-rule": "evenodd",
      stroke: ink.line,
      "stroke-width": 0.5,
    }),
    drawRingHatching({ state, rings, ink }),
  ];
};

/** A zone's hatching where another is drawn over it, in the ink that shows there. */
export function drawSharedHatching({
  zone,
  rings,
  over,
  ink,
}: Pick<DrawnZone, "zone" | "rings"> & { over: DrawnZone["under"][number]; ink: Ink }): DrawingContent {
  const state = stateOfPhase(zone.phase);
  const hatch = ink.states[stateOfPhase(over.zone.phase)].words;
  const states = { ...ink.states, [state]: { ...ink.states[state], hatch } };
  return drawRingHatching({ state, rings, within: over.rings, ink: { ...ink, states } });
}

type MarkKind = DrawnMap["marks"][number]["mark"];

/** Absolute commands of SVG path data with their coordinates. */
type Outline = readonly (readonly [command: "M" | "L" | "H" | "V" | "C" | "Z", ...coordinates: number[]])[];

/** Drawn about the middle, half a unit being its half width; what is inked is filled, the rest is line alone. */
const SHAPES: Readonly<Record<MarkKind, { readonly outline: Outline; readonly inked: boolean }>> = {
  /** A ramp. */
  launch: { outline: [["M", -1, 1], ["H", 1], ["V", -1], ["Z"]], inked: true },
  /** A funnel, and a spout. */
  inflow: { outline: [["M", -1, -0.8], ["H", 1], ["L", 0, 1], ["Z"]], inked: false },
  outflow: { outline: [["M", -1, 0.8], ["H", 1], ["L", 0, -1], ["Z"]], inked: false },
  /** A hump under water. */
  shoal: { outline: [["M", -1, 0.7], ["C", -0.6, -1.1, 0.6, -1.1, 1, 0.7], ["Z"]], inked: false },
  /** Stalks. */
  weed: {
    outline: [
      ["M", -0.8, 1],
      ["V", -0.5],
      ["M", 0, 1],
      ["V", -1],
      ["M", 0.8, 1],
      ["V", -0.5],
    ],
    inked: false,
  },
  hazard: {
    outline: [
      ["M", -1, -1],
      ["L", 1, 1],
      ["M", -1, 1],
      ["L", 1, -1],
    ],
    inked: false,
  },
  /** A wall. */
  dam: { outline: [["M", -1, -0.5], ["H", 1], ["V", 0.5], ["H", -1], ["Z"]], inked: true },
};

/** Path data of an outline drawn `r` times as large about a point. */
const outlinePath = (outline: Outline, { x, y }: Point, r: number): string =>
  outline
    .map(([command, ...coordinates]) => {
      const isX = (i: number): boolean => command === "H" || (command !== "V" && i % 2 === 0);
      return command + coordinates.map((n, i) => tenth(n * r + (isX(i) ? x : y))).join(" ");
    })
    .join("");

/** Hides what runs beneath a mark. */
const PATCH: Outline = [["M", -1.3, -1.3], ["H", 1.3], ["V", 1.3], ["H", -1.3], ["Z"]];

/** The shape of one kind of mark on a patch of paper. */
export function drawMapMark({ mark, at, ink }: { mark: MarkKind; at: Point; ink: Ink }): DrawingContent {
  const { outline, inked } = SHAPES[mark];
  const r = markRadius(ink);
  return [
    path({ d: outlinePath(PATCH, at, r), fill: ink.paper, stroke: "none" }),
    path({
      d: outlinePath(outline, at, r),
      fill: inked ? ink.words : "none",
      stroke: ink.words,
      "stroke-width": 1.2,
    }),
  ];
}

const markRadius = (ink: Ink): number => ink.textSize * 0.32;

/** A mark and the letter it goes by on the map and in its key. */
export interface LetteredMark {
  readonly mark: MarkKind;
  readonly name: string | null;
  readonly letter: string;
}

interface PlacedMark extends LetteredMark {
  readonly at: Point;
  readonly box: Box;
  /** Where its letter stands. */
  readonly letterAt: Point;
  readonly letterBox: Box;
}

/** Letters go round A to Z; a lake with more marks than that goes on with two. */
const letterOf = (i: number): string => {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : letterOf(Math.floor(i / 26) - 1) + last;
};

export const letteredMarks = ({ marks }: DrawnMap): LetteredMark[] =>
  marks.map(({ mark, name }, i) => ({ mark, name, letter: letterOf(i) }));

/** "Dam ramp (launch)", "North shoal", "inflow". */
export const markText = (mark: MarkKind, name: string | null): string =>
  name === null ? mark : name.toLowerCase().includes(mark) ? name : `${name} (${mark})`;

/** Ways round a mark in which its letter is tried, near ones first. */
const DISTANCES = [1, 1.3, 1.8, 2.5, 3.5];
const ROUND = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);

/** Each mark, and beside it a letter that runs into nothing. */
export function placeMapMarks(map: DrawnMap, frame: MapFrame, room: Box, ink: Ink): PlacedMark[] {
  const size = ink.textSize;
  const marks = map.marks.map(({ mark, name, lon, lat }, i) => {
    const at = frame.toSpot([lon, lat]);
    return {
      mark,
      name,
      at,
      letter: letterOf(i),
      box: boxAround(at, markRadius(ink) * 2.6, markRadius(ink) * 2.6),
    };
  });
  const taken = marks.map(({ box }) => box);
  return marks.flatMap((one) => {
    const spots = DISTANCES.flatMap((distance) =>
      ROUND.map((turn) => ({
        x: one.at.x + Math.cos(turn) * size * distance,
        y: one.at.y + Math.sin(turn) * size * distance,
      })),
    );
    for (const letterAt of spots) {
      const letterBox = textBox(one.letter, letterAt, size);
      if (!isWithin(letterBox, room) || taken.some((box) => overlaps(box, letterBox))) continue;
      taken.push(letterBox);
      return [{ ...one, letterAt, letterBox }];
    }
    return [];
  });
}

/** Words on a patch of paper that hides what runs beneath. */
export function drawPatchedWord({
  word,
  at,
  box,
  ink,
}: {
  word: string;
  at: Point;
  box: Box;
  ink: Ink;
}): DrawingContent {
  return [
    path({
      d: `M${tenth(box.left)} ${tenth(box.top)}H${tenth(box.right)}V${tenth(box.bottom)}H${tenth(box.left)}Z`,
      fill: ink.paper,
    }),
    text(
      {
        x: tenth(at.x),
        y: tenth(at.y + ink.textSize * MIDDLE_TO_BASE),
        "text-anchor": "middle",
        fill: ink.words,
      },
      word,
    ),
  ];
}
