import { depthText, type UnitSystem } from "../../model/units.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "../drawing.ts";
import { LEADING, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";
import { type HungRig, hungSections, offBottomText, rigTitle, sectionText, shotDepth_m } from "./hung-rig.ts";
import { drawLabels, type Label, type LabelColumn, labelsHeight, placeLabels } from "./labels.ts";
import {
  depthY,
  drawDepthStaff,
  drawFly,
  drawGround,
  drawIndicatorBall,
  drawKnot,
  drawRing,
  drawShot,
  drawStop,
  drawWaterSurface,
  groundDepth,
  indicatorRadius,
  type SideView,
  shotAbove,
  staffRight,
} from "./side-view.ts";

/** How wide a leader is drawn, in the drawing's units a millimetre: much wider than it is, but in proportion. */
const PER_MILLIMETRE = 5;
/** A tapered leader's butt, mm: 0.021 in. Common practice, from memory. */
const BUTT_MM = 0.53;

/** Drawn width of line of a diameter. */
const drawnWidth = (diameter_mm: number): number => diameter_mm * PER_MILLIMETRE;

/** Drawn width of a tapered leader a share of the way from its end to its butt. */
const taperWidth = (end_mm: number, share: number): number =>
  drawnWidth(end_mm + (Math.max(BUTT_MM, end_mm) - end_mm) * share);

export interface RigOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** In the drawing's units: CSS pixels on screen, points on paper; from 19 times the lettering. */
  readonly width: number;
  /** At least so tall; taller where the words need it, as the drawing's own height then says. */
  readonly height: number;
}

/** How far below the drawing's upper edge the surface lies, as a share of the lettering. */
const SURFACE = 2.7;

/** Where the parts of the drawing stand sideways. */
function columnsOf({ ink, width }: RigOptions) {
  const size = ink.textSize;
  const line = staffRight(ink) + size * 4.3;
  const labels: LabelColumn = { left: line + size * 2, right: width, top: size * (SURFACE - 1.5) };
  return { set: staffRight(ink) + size * 2, line, labels };
}

/** Where the shot is drawn: just above the ring where it would lie on it. */
function shotY(rig: HungRig, view: SideView): number {
  const tippet = hungSections(rig).find(({ section }) => section.part === "tippet");
  const y = depthY(view, shotDepth_m(rig));
  const ring = depthY(view, tippet?.top_m ?? 0);
  return y < ring + shotAbove(view.ink) ? ring - shotAbove(view.ink) : y;
}

function labelsOf(rig: HungRig, view: SideView, line: number): Label[] {
  const { ink, units } = view;
  const size = ink.textSize;
  const sections = hungSections(rig);
  const { landing, shot, indicator, offBottom, depth_m, set_m } = rig;
  const at = (depth: number, aside = size * 0.45) => ({ x: line + aside, y: depthY(view, depth) });
  const ball = indicatorRadius(ink);
  const joints = sections.slice(1).flatMap(({ section, top_m }, i): Label[] => {
    if (section.part !== "tippet") return [{ at: at(top_m), text: "knot" }];
    return [{ at: at(top_m), text: i === 0 && sections.length === 2 ? "ring" : "ring or swivel" }];
  });
  const shotLabel: Label = {
    at: { x: line + size * 0.45, y: shotY(rig, view) },
    text: shot === null ? "shot, if any" : `shot: ${shot}`,
    bold: shot !== null,
  };
  const hung = sections.map(
    ({ section, top_m, bottom_m }): Label => ({
      at: at((top_m + bottom_m) / 2, size * 0.9),
      text:
        section.part === "taper"
          ? `${sectionText(section, units)}, ${depthText(bottom_m - top_m, units)} hangs, no knots`
          : sectionText(section, units),
      bold: true,
    }),
  );
  return [
    { at: { x: line + size * 0.4, y: view.top - ball - size * 0.35 }, text: "stop" },
    {
      at: { x: line + ball, y: view.top },
      text: `indicator${indicator === null ? "" : ` ${indicator}`}${landing === null ? "" : landing === "slip" ? ", slips" : ", fixed"}`,
    },
    ...[...joints, ...hung, shotLabel].sort((a, b) => a.at.y - b.at.y),
    { at: at(set_m, size * 1), text: `fly, ${offBottomText(offBottom, units)} off bottom` },
    { at: at(depth_m, size * 1), text: `bottom, ${depthText(depth_m, units)}` },
  ];
}

/** The leader below the indicator, each section as wide as its line is thick beside the others. */
function drawHungLeader({ rig, view, x }: { rig: HungRig; view: SideView; x: number }): DrawingContent {
  const { ink } = view;
  return group({ fill: ink.words }, [
    hungSections(rig).map(({ section, top_m, bottom_m }) => {
      const lower = drawnWidth(section.diameter_mm) / 2;
      const upper =
        section.part === "taper"
          ? taperWidth(section.diameter_mm, (bottom_m - top_m) / section.length_m) / 2
          : lower;
      const [top, bottom] = [depthY(view, top_m), depthY(view, bottom_m)];
      const edge = (dx: number, y: number) => `${(x + dx).toFixed(2)} ${tenth(y)}`;
      return path({
        class: section.part,
        d: `M${edge(-upper, top)}L${edge(upper, top)}L${edge(lower, bottom)}L${edge(-lower, bottom)}Z`,
      });
    }),
  ]);
}

/** An upright measure with its two ends. */
const drawMeasure = ({
  x,
  from,
  to,
  ink,
}: {
  x: number;
  from: number;
  to: number;
  ink: Ink;
}): DrawingContent =>
  path({
    d: [
      `M${tenth(x)} ${tenth(from)}V${tenth(to)}`,
      ...[from, to].map(
        (y) => `M${tenth(x - ink.textSize * 0.22)} ${tenth(y)}h${tenth(ink.textSize * 0.44)}`,
      ),
    ].join(""),
    fill: "none",
    stroke: ink.line,
    "stroke-width": 0.6,
  });

/** The set depth, measured from surface to fly and written on its measure. */
function drawSetDepth({ rig, view, x }: { rig: HungRig; view: SideView; x: number }): DrawingContent {
  const { ink, units, top } = view;
  const size = ink.textSize;
  const fly = depthY(view, rig.set_m);
  const middle = (top + fly) / 2;
  const half = size * LEADING;
  return group({ "text-anchor": "middle" }, [
    drawMeasure({ x, from: top, to: middle - half, ink }),
    drawMeasure({ x, from: middle + half, to: fly, ink }),
    group({ fill: ink.words }, [
      text({ x: tenth(x), y: tenth(middle - size * 0.25) }, "set"),
      text(
        { x: tenth(x), y: tenth(middle + size * (LEADING - 0.25)), "font-weight": "bold" },
        depthText(rig.set_m, units),
      ),
    ]),
  ]);
}

/** The butt above the stop, lying on the surface toward the fly line; not to scale sideways. */
function drawButt({ rig, view, x }: { rig: HungRig; view: SideView; x: number }): DrawingContent {
  const { ink, units, top } = view;
  const size = ink.textSize;
  const stop = top - indicatorRadius(ink) - size * 0.35;
  const left = staffRight(ink) + size * 0.4;
  return group({}, [
    path({
      d: `M${tenth(x)} ${tenth(top - indicatorRadius(ink))}V${tenth(stop - size * 0.2)}C${tenth(x)} ${tenth(stop - size)} ${tenth(x - size)} ${tenth(top - size * 0.3)} ${tenth(x - size * 2.4)} ${tenth(top - size * 0.3)}H${tenth(left)}`,
      fill: "none",
      stroke: ink.words,
      "stroke-width": 2,
    }),
    drawStop({ x, y: stop, ink }),
    text(
      { x: 0, y: tenth(top - size * 1.75), fill: ink.words },
      `${depthText(Math.max(0, rig.leader.total_m - rig.set_m), units)} to fly line`,
    ),
  ]);
}

/**
 * An indicator rig hanging under its indicator in still water, to scale by depth. It has no ids, so any number of
 * drawings can stand on one page.
 */
export function rigDrawing(rig: HungRig, options: RigOptions): Drawing {
  const { ink, units, width } = options;
  const size = ink.textSize;
  const columns = columnsOf(options);
  const top = size * SURFACE;
  const plain: SideView = { ink, units, width, top, perMetre: 1, depth_m: rig.depth_m };
  const below = groundDepth(ink);
  const words =
    columns.labels.top + labelsHeight(labelsOf(rig, plain, columns.line), columns.labels, ink) + size * 0.3;
  const height = Math.ceil(Math.max(options.height, words));
  const view: SideView = { ...plain, perMetre: (height - top - below - size * 0.7) / rig.depth_m };
  const placed = placeLabels(labelsOf(rig, view, columns.line), columns.labels, height, ink);
  const bottom = depthY(view, rig.depth_m);
  const sections = hungSections(rig);
  const x = columns.line;
  return createDrawing({ width, height, title: rigTitle(rig, units), textSize: size }, [
    drawDepthStaff({ view }),
    drawWaterSurface({ view, left: staffRight(ink), right: columns.labels.left - size * 0.9 }),
    drawGround({
      places: [
        [staffRight(ink), bottom],
        [columns.labels.left - size * 0.9, bottom],
      ],
      ink,
    }),
    drawSetDepth({ rig, view, x: columns.set }),
    drawLabels({ placed, column: columns.labels, ink }),
    sections.map(({ top_m, bottom_m }) =>
      drawMeasure({ x: x + size * 0.9, from: depthY(view, top_m), to: depthY(view, bottom_m), ink }),
    ),
    drawButt({ rig, view, x }),
    drawHungLeader({ rig, view, x }),
    drawIndicatorBall({ x, y: top, ink }),
    sections
      .slice(1)
      .map(({ section, top_m }) =>
        section.part === "tippet"
          ? drawRing({ x, y: depthY(view, top_m), ink })
          : drawKnot({ x, y: depthY(view, top_m), ink }),
      ),
    drawShot({ x, y: shotY(rig, view), ink }),
    drawFly({ x, y: depthY(view, rig.set_m), ink }),
  ]);
}
