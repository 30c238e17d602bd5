import type { Guide } from "../../guide/guide-schema.ts";
import { depthText, smallLengthText, type UnitSystem } from "../../model/units.ts";
import { createDrawing, type Drawing, group, path, text } from "../drawing.ts";
import { tenth } from "../geometry.ts";
import { drawLabels, type Label, type LabelColumn, labelsHeight, placeLabels } from "./labels.ts";
import type { RigOptions } from "./rig-drawing.ts";
import {
  depthY,
  drawDepthStaff,
  drawFly,
  drawGround,
  drawIndicatorBall,
  drawShot,
  drawWaterSurface,
  groundDepth,
  indicatorRadius,
  type SideView,
  staffRight,
} from "./side-view.ts";

export type Lean = NonNullable<Guide["rigs"]["lean"]>;

/** What the drawing shows, in sentences. */
const leanTitle = (lean: Lean, units: UnitSystem): string =>
  `How a rig leans in ${lean.condition}, to scale: ${lean.leader} set ${depthText(lean.set_m, units)} with ${lean.shot}, the indicator loose on slack line. The arrows are the water: it moves with the wind on top, slows with depth and runs back below. The fly hangs ${smallLengthText(lean.lift_m, units)} higher than straight below and ${smallLengthText(Math.abs(lean.aside_m), units)} to the side; the broken line is the same rig in still water.`;

type Places = readonly {
  readonly x: number;
  readonly y: number;
  readonly at: Lean["points"][number]["at"];
}[];

/** The curve's points in the drawing; the same scale both ways. */
function placesOf({ points, set_m, lift_m }: Lean, view: SideView, x: number): Places {
  const last = points.at(-1);
  const fly_m = set_m - lift_m;
  return points.map(({ x_m, z_m, at }) => ({
    x: x + ((last?.x_m ?? 0) - x_m) * view.perMetre,
    y: depthY(view, fly_m - z_m),
    at,
  }));
}

function labelsOf(lean: Lean, places: Places, view: SideView): Label[] {
  const { ink, units } = view;
  const size = ink.textSize;
  const find = (at: Places[number]["at"]) => places.find((place) => place.at === at) ?? { x: 0, y: 0 };
  const [shot, fly, indicator] = [find("shot"), find("fly"), find("indicator")];
  return [
    { at: { x: indicator.x + indicatorRadius(ink), y: indicator.y }, text: `indicator ${lean.indicator}` },
    { at: { x: shot.x + size * 0.4, y: shot.y }, text: lean.shot, bold: true },
    {
      at: { x: fly.x + size * 0.3, y: fly.y },
      text: `fly ${smallLengthText(lean.lift_m, units)} higher`,
      bold: true,
    },
    {
      at: { x: fly.x + size * 0.8, y: depthY(view, lean.depth_m) },
      text: `bottom, ${depthText(lean.depth_m, units)}`,
    },
  ];
}

/** Straight down in still water, and how much higher the fly hangs in the drift. */
function drawStillLine({
  view,
  x,
  set_m,
  fly_y,
}: {
  view: SideView;
  x: number;
  set_m: number;
  fly_y: number;
}) {
  const { ink, top } = view;
  const size = ink.textSize;
  const still_y = depthY(view, set_m);
  return group({ fill: "none", stroke: ink.line, "stroke-width": 0.8 }, [
    path({ d: `M${tenth(x)} ${tenth(top)}V${tenth(still_y)}`, "stroke-dasharray": "4 3" }),
    path({ d: `M${tenth(x - size * 0.4)} ${tenth(still_y)}h${tenth(size * 0.8)}` }),
    path({ d: `M${tenth(x - size * 0.4)} ${tenth(fly_y)}h${tenth(size * 0.8)}` }),
    text(
      { x: tenth(x + size * 0.5), y: tenth((top + still_y) / 2), fill: ink.words, stroke: "none" },
      "still",
    ),
  ]);
}

/** How long the arrow of the foam is, in lettering. */
const FOAM_ARROW = 2;

/** The water's speed from the surface down, an arrow for each depth: downwind to the right. */
function drawCurrent({ lean, view, x }: { lean: Lean; view: SideView; x: number }) {
  const size = view.ink.textSize;
  const perSpeed = (FOAM_ARROW * size) / lean.foam_mps;
  return group({ fill: "none", stroke: view.ink.words, "stroke-width": 0.9 }, [
    path({
      d: `M${tenth(x)} ${tenth(view.top)}V${tenth(depthY(view, lean.depth_m))}`,
      "stroke-width": 0.4,
    }),
    lean.current.map(({ depth_m, speed_mps }) => {
      const long = speed_mps * perSpeed;
      const head = Math.sign(long) * Math.min(Math.abs(long), size * 0.3);
      return path({
        d: `M${tenth(x)} ${tenth(depthY(view, depth_m))}h${tenth(long)}m${tenth(-head)} ${tenth(-size * 0.18)}l${tenth(head)} ${tenth(size * 0.18)}l${tenth(-head)} ${tenth(size * 0.18)}`,
      });
    }),
    text({ x: tenth(x), y: tenth(view.top - size * 0.9), fill: view.ink.words, stroke: "none" }, "water"),
  ]);
}

/** A rig leaning in a drift beside how it hangs in still water, to one scale down and across. */
export function leanDrawing(lean: Lean, { ink, units, width, height: least }: RigOptions): Drawing {
  const size = ink.textSize;
  const top = size * 2.6;
  const below = groundDepth(ink);
  const water = staffRight(ink) + size * 1.4;
  const x = water + size * 6.2;
  const column = (right: number): LabelColumn => ({
    left: right + size * 1.6,
    right: width,
    top: size * 1.6,
  });
  const height = Math.ceil(Math.max(least, size * 14));
  const perMetre = (height - top - below - size * 0.7) / lean.depth_m;
  const view: SideView = { ink, units, width, top, perMetre, depth_m: lean.depth_m };
  const places = placesOf(lean, view, x);
  const fly = places[0] ?? { x, y: top };
  const bottom = depthY(view, lean.depth_m);
  const right = column(Math.max(...places.map((place) => place.x)));
  const labels = labelsOf(lean, places, view);
  const drawn = Math.ceil(
    Math.max(bottom + below + size * 0.7, right.top + labelsHeight(labels, right, ink)),
  );
  const placed = placeLabels(labels, right, drawn, ink);
  return createDrawing({ width: width, height: drawn, title: leanTitle(lean, units), textSize: size }, [
    drawDepthStaff({ view }),
    drawWaterSurface({ view, left: staffRight(ink), right: right.left - size * 0.9 }),
    drawGround({
      places: [
        [staffRight(ink), bottom],
        [right.left - size * 0.9, bottom],
      ],
      ink,
    }),
    drawCurrent({ lean, view, x: water }),
    drawStillLine({ view, x, set_m: lean.set_m, fly_y: fly.y }),
    drawLabels({ placed, column: right, ink }),
    path({
      class: "leaning",
      d: `M${places.map((place) => `${tenth(place.x)} ${tenth(place.y)}`).join("L")}`,
      fill: "none",
      stroke: ink.words,
      "stroke-width": 1.4,
    }),
    drawIndicatorBall({ x, y: top, ink }),
    places.map((place) => (place.at === "shot" ? drawShot({ x: place.x, y: place.y, ink }) : null)),
    drawFly({ x: fly.x, y: fly.y, ink }),
  ]);
}
