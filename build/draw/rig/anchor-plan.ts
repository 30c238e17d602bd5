import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "../drawing.ts";
import { estimateTextWidth, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

/** An arrow down the drawing, the way the wind blows, from its tail on. */
export function drawWindArrow({ x, y, ink }: { x: number; y: number; ink: Ink }) {
  const size = ink.textSize;
  return group({}, [
    path({
      d: `M${tenth(x)} ${tenth(y)}v${tenth(size * 2)}m${tenth(-size * 0.4)} ${tenth(-size * 0.6)}l${tenth(size * 0.4)} ${tenth(size * 0.6)}l${tenth(size * 0.4)} ${tenth(-size * 0.6)}`,
      fill: "none",
      stroke: ink.words,
      "stroke-width": 1.6,
    }),
    text({ x: tenth(x + size * 0.7), y: tenth(y + size * 1.3), fill: ink.words }, "wind"),
  ]);
}

interface AnchorOptions {
  readonly ink: Ink;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
}

type Point = readonly [x: number, y: number];

/** What the drawing shows, in one sentence. */
const ANCHOR_TITLE =
  "Boats at anchor seen from above: on one anchor the bow lies to the wind and rods over the stern point downwind; on two the boat lies across a light wind and rods over the lee side point downwind.";

/** By the size of lettering; the boats are not to scale. */
const BOAT = { length: 3.2, beam: 1.2, warp: 1.5, rod: 2 } as const;
/** Rods stand to both sides of straight downwind by so much. */
const SPREAD_DEG = [-25, 25] as const;
const HEIGHT = 8.3;
/** Where the two boats stand, as shares of the width. */
const AT = { one: 0.4, two: 0.76 } as const;

const at = ([x, y]: Point): string => `${tenth(x)} ${tenth(y)}`;

/** Hull, anchor lines (each from one end of the boat, upwind) and rods from one place, downwind. */
function drawBoat({
  bow,
  stern,
  warps,
  rods,
  ink,
}: {
  bow: Point;
  stern: Point;
  warps: readonly (readonly [from: Point, to: Point])[];
  rods: Point;
  ink: Ink;
}): DrawingContent {
  const size = ink.textSize;
  const [dx, dy] = [stern[0] - bow[0], stern[1] - bow[1]];
  const beam = (size * BOAT.beam) / 2 / Math.hypot(dx, dy);
  const side = ([x, y]: Point, share: number): Point => [x - dy * beam * share, y + dx * beam * share];
  const along = (share: number): Point => [bow[0] + dx * share, bow[1] + dy * share];
  return group({ fill: "none", stroke: ink.words }, [
    path({
      d: warps.map(([from, to]) => `M${at(from)}L${at(to)}`).join(""),
      "stroke-width": 0.8,
      "stroke-dasharray": "2 2",
    }),
    path({
      d: SPREAD_DEG.map((angle) => {
        const turn = (angle * Math.PI) / 180;
        const reach = size * BOAT.rod;
        return `M${at(rods)}l${at([reach * Math.sin(turn), reach * Math.cos(turn)])}`;
      }).join(""),
      "stroke-width": 1.6,
    }),
    path({
      d: `M${at(bow)}Q${at(side(along(0.3), 1.1))} ${at(side(stern, 0.8))}L${at(side(stern, -0.8))}Q${at(side(along(0.3), -1.1))} ${at(bow)}Z`,
      fill: ink.paper,
      "stroke-width": 1.2,
    }),
  ]);
}

/** How a boat lies on one anchor and on two, the wind from above. */
export function anchorPlan({ ink, width }: AnchorOptions): Drawing {
  const size = ink.textSize;
  const [one, two] = [width * AT.one, width * AT.two];
  const half = (size * BOAT.length) / 2;
  const middle = size * (BOAT.warp + 0.2) + half;
  const drawWord = (word: string, x: number) =>
    text(
      { x: tenth(x - estimateTextWidth(word, size) / 2), y: tenth(size * (HEIGHT - 0.3)), fill: ink.words },
      word,
    );
  const [bow, stern]: [Point, Point] = [
    [one, middle - half],
    [one, middle + half],
  ];
  const [left, right]: [Point, Point] = [
    [two - half, middle],
    [two + half, middle],
  ];
  const warp = size * BOAT.warp;
  return createDrawing({ width, height: tenth(size * HEIGHT), title: ANCHOR_TITLE, textSize: size }, [
    drawWindArrow({ x: size * 0.6, y: size * 0.2, ink }),
    drawBoat({ bow, stern, warps: [[bow, [one, size * 0.2]]], rods: stern, ink }),
    drawBoat({
      bow: left,
      stern: right,
      warps: [
        [left, [two - half - warp * 0.5, middle - warp]],
        [right, [two + half + warp * 0.5, middle - warp]],
      ],
      rods: [two, middle],
      ink,
    }),
    drawWord("one", one),
    drawWord("two", two),
  ]);
}
