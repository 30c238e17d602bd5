import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { depthRange, depthText, rounded, type UnitSystem } from "../../model/units.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path } from "../drawing.ts";
import { tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";
import {
  type LinePoint,
  type LineSegment,
  type Scene,
  type Stroke,
  type Tackle,
  tackleOf,
} from "./cast-line.ts";
import type { DrawnLeader } from "./hung-rig.ts";
import { drawLabels, type Label, type LabelColumn, labelsHeight, placeLabels } from "./labels.ts";
import type { RigOptions } from "./rig-drawing.ts";
import {
  depthY,
  drawDepthStaff,
  drawFly,
  drawGround,
  drawWaterSurface,
  groundDepth,
  type SideView,
  staffRight,
} from "./side-view.ts";

type Rig = GuideLake["plan"][number]["rigs"][number];
type Line = Guide["rigs"]["lines"][number];

/** A fly cast and drawn in, or trolled. */
export interface RetrieveRig {
  readonly rig: Rig;
  readonly band: { readonly from_m: number; readonly to_m: number };
  readonly line: Line | undefined;
  readonly leader: DrawnLeader | undefined;
}

/** The rig with the line and leader it names. */
export const retrieveRigOf = (
  rig: Rig,
  band: RetrieveRig["band"],
  { lines, leaders }: Pick<Guide["rigs"], "lines" | "leaders">,
): RetrieveRig => ({
  rig,
  band,
  line: lines.find(({ name }) => name === rig.line),
  leader: leaders.find(({ name }) => name === rig.leader),
});

const pathOf = (through: readonly LinePoint[]): string =>
  through.length === 3
    ? `M${through.map(([x, y], i) => `${i === 1 ? "Q" : ""}${tenth(x)} ${tenth(y)}`).join(" ")}`
    : `M${through.map(([x, y]) => `${tenth(x)} ${tenth(y)}`).join("L")}`;

function drawLine({ stretch: { stroke, through }, ink }: { stretch: LineSegment; ink: Ink }): DrawingContent {
  const d = pathOf(through);
  if (stroke === "leader") return path({ d, fill: "none", stroke: ink.words, "stroke-width": 0.9 });
  if (stroke === "clear")
    return group({ fill: "none" }, [
      path({ d, stroke: ink.words, "stroke-width": 3.2 }),
      path({ d, stroke: ink.paper, "stroke-width": 1.7 }),
    ]);
  return path({
    d,
    fill: "none",
    stroke: ink.words,
    "stroke-width": 2.4,
    ...(stroke === "sinking" ? { "stroke-dasharray": "5 2.5" } : {}),
  });
}

const strokeOf = ({ rig, line }: RetrieveRig): Stroke => {
  const kind = line?.kind ?? (rig.way === "floating line" ? "floating" : "sinking");
  return kind === "floating" ? "floating" : kind === "clear intermediate" ? "clear" : "sinking";
};

/** How deep the fly is drawn: where it fishes over the deep end. */
const flyOf = ({ rig, band }: RetrieveRig): number => rig.fly?.to_m ?? band.to_m;

/** "Sink tip, 15 ft". */
const lineName = ({ name, tip_m }: Line, units: UnitSystem): string =>
  tip_m === null ? name : `${name}, ${depthText(tip_m, units)}`;

/** What the drawing shows, in sentences. */
function retrieveTitle(drawn: RetrieveRig, units: UnitSystem): string {
  const { rig, band, line, leader } = drawn;
  const parts = [
    `From the side, to scale by depth: ${[
      ...(line === undefined ? [] : [`line ${line.name}`]),
      leader === undefined
        ? "a short piece of tippet"
        : `leader ${leader.name}, ${depthText(leader.total_m, units)}`,
    ].join(", ")}.`,
    ...(rig.countdown === null
      ? []
      : [
          `Count ${rounded(rig.countdown.from_s)} s over the shallow end${rig.countdown.to_s === null ? "; it does not reach the deep end" : `, ${rounded(rig.countdown.to_s)} s over the deep end`}.`,
        ]),
    `Water ${depthRange(band.from_m, band.to_m, units)} deep, fly at about ${depthText(flyOf(drawn), units)}.`,
  ];
  return parts.join(" ");
}

function labelsOf(drawn: RetrieveRig, tackle: Tackle, view: SideView, shallow: number): Label[] {
  const { rig, band, line, leader } = drawn;
  const { units, ink } = view;
  const fly_m = flyOf(drawn);
  const { lineAt, leaderAt, fly } = tackle;
  const beside = ([x, y]: LinePoint) => ({ x: x + ink.textSize * 0.15, y });
  const count = rig.countdown;
  const words: Label[] = [
    ...(line === undefined ? [] : [{ at: beside(lineAt), text: lineName(line, units) }]),
    {
      at: beside(leaderAt),
      text:
        leader === undefined
          ? "short piece of tippet"
          : `leader ${leader.name}, ${depthText(leader.total_m, units)}`,
    },
    {
      at: beside(fly),
      text:
        count === null || count.to_s === null || rig.way === "buoyant on sinking line"
          ? `fly at ${depthText(fly_m, units)}`
          : `count ${rounded(count.to_s)} s: ${depthText(fly_m, units)}`,
      bold: true,
    },
    ...(count === null || count.to_s === null || rig.way !== "buoyant on sinking line"
      ? []
      : [
          {
            at: tackle.bottomAt === undefined ? beside(fly) : beside(tackle.bottomAt),
            text: `count ${rounded(count.to_s)} s to the bottom`,
            bold: true,
          },
        ]),
    {
      at: { x: shallow, y: depthY(view, band.to_m) },
      text: `bottom, ${depthRange(band.from_m, band.to_m, units)}`,
    },
  ];
  return words.sort((a, b) => a.at.y - b.at.y);
}

/** The boat the line goes out from; a trolled line's boat moves away from it. */
function drawBoat({ x, y, moving, ink }: { x: number; y: number; moving: boolean; ink: Ink }) {
  const s = ink.textSize;
  return group({ fill: "none", stroke: ink.words }, [
    path({
      d: `M${tenth(x - s)} ${tenth(y - s * 0.45)}h${tenth(s * 2)}l${tenth(-s * 0.35)} ${tenth(s * 0.65)}h${tenth(-s * 1.2)}Z`,
      fill: ink.paper,
      "stroke-width": 1.1,
    }),
    path({
      d: `M${tenth(x + s * 0.5)} ${tenth(y - s * 0.5)}L${tenth(x + s * 1.9)} ${tenth(y - s * 1.3)}`,
      "stroke-width": 1.1,
    }),
    moving
      ? path({
          d: `M${tenth(x + s * 0.3)} ${tenth(y - s * 1.3)}h${tenth(-s * 1.6)}m${tenth(s * 0.4)} ${tenth(-s * 0.3)}l${tenth(-s * 0.4)} ${tenth(s * 0.3)}l${tenth(s * 0.4)} ${tenth(s * 0.3)}`,
          "stroke-width": 1.2,
        })
      : null,
  ]);
}

/** A cast drawn in, or a trolled line, over a drop-off: to scale by depth, not sideways. */
export function retrieveDrawing(
  drawn: RetrieveRig,
  { ink, units, width, height: least }: RigOptions,
): Drawing {
  const { rig, band } = drawn;
  const size = ink.textSize;
  const left = staffRight(ink);
  const column: LabelColumn = { left: width - size * 8.2, right: width, top: size * 0.9 };
  const right = column.left - size * 0.9;
  const top = size * 1.9;
  const below = groundDepth(ink);
  const plain: SideView = { ink, units, width, top, perMetre: 1, depth_m: band.to_m };
  const scene = (view: SideView): Scene => ({
    view,
    boat: left + size * 1.4,
    entry: left + size * 3.3,
    right,
    fly_m: flyOf(drawn),
  });
  const tackleIn = (view: SideView) => tackleOf(rig.way, strokeOf(drawn), scene(view));
  const words = column.top + labelsHeight(labelsOf(drawn, tackleIn(plain), plain, right), column, ink);
  const height = Math.ceil(Math.max(least, words + size * 0.3));
  const view: SideView = { ...plain, perMetre: (height - top - below - size * 0.4) / band.to_m };
  const tackle = tackleIn(view);
  const placed = placeLabels(labelsOf(drawn, tackle, view, right), column, height, ink);
  const { boat } = scene(view);
  const slopeEnd = left + (right - left) * 0.36;
  return createDrawing({ width, height, title: retrieveTitle(drawn, units), textSize: size }, [
    drawDepthStaff({ view }),
    drawWaterSurface({ view, left, right }),
    drawGround({
      places: [
        [left, depthY(view, band.from_m)],
        [left + size * 1.5, depthY(view, band.from_m)],
        [slopeEnd, depthY(view, band.to_m)],
        [right, depthY(view, band.to_m)],
      ],
      ink,
    }),
    drawLabels({ placed, column, ink }),
    tackle.stretches.map((stretch) => drawLine({ stretch, ink })),
    drawBoat({ x: boat, y: top, moving: rig.way === "trolled", ink }),
    drawFly({ x: tackle.fly[0], y: tackle.fly[1], ink }),
  ]);
}
