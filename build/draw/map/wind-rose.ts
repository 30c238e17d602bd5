import type { GuideLake } from "../../guide/guide-schema.ts";
import { distanceText, type UnitSystem } from "../../model/units.ts";
import { circle, createDrawing, type Drawing, group, path, text } from "../drawing.ts";
import { estimateTextWidth, linePath, type Point, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

interface RoseOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  /** Leaves out the length of the longest fetch, where text beside the drawing gives it. */
  readonly bare?: boolean;
}

type Wind = NonNullable<GuideLake["place"]["wind"]>;

/** Half the angle a stretch of water is drawn across; the sixteen winds are 22.5 degrees apart. */
const HALF_DEG = 7;

/** A spot `away` from a middle, by its bearing. */
const towards = ({ x, y }: Point, bearing_deg: number, away: number): Point => ({
  x: x + Math.sin((bearing_deg * Math.PI) / 180) * away,
  y: y - Math.cos((bearing_deg * Math.PI) / 180) * away,
});

/** Names of the four main winds; how long the stretch is for the longest. */
function roseWord(
  wind: Wind,
  { from, fetch_m }: Wind["directions"][number],
  { units, bare = false }: RoseOptions,
): string {
  const name = from.length === 1 ? from : "";
  const length = !bare && wind.longest.along.includes(from) ? distanceText(fetch_m, units) : "";
  return [name, length].filter((part) => part !== "").join(" ");
}

/** In one sentence. */
const windRoseTitle = ({ name }: GuideLake, wind: Wind, units: UnitSystem): string =>
  `Open water on ${name} by the direction the wind blows from, north up: the longest is ${distanceText(wind.longest.fetch_m, units)}, with wind from ${wind.longest.along.join(" or ")}.`;

/**
 * How far the wind of each direction runs over the lake's open water, drawn out to where it comes from; `null` without
 * a shoreline.
 */
export function windRose(lake: GuideLake, options: RoseOptions): Drawing | null {
  const { ink, units, width } = options;
  const { wind } = lake.place;
  if (wind === null) return null;
  const size = ink.textSize;
  const winds = wind.directions.map((direction, i) => ({
    word: roseWord(wind, direction, options),
    bearing_deg: (i * 360) / wind.directions.length,
    share: direction.fetch_m / wind.longest.fetch_m,
    isLongest: wind.longest.along.includes(direction.from),
  }));
  const widest = Math.max(...winds.map(({ word }) => estimateTextWidth(word, size)));
  const radius = width / 2 - widest - size * 0.6;
  const height = 2 * (radius + size * 1.6);
  const middle = { x: width / 2, y: height / 2 };
  return createDrawing(
    { width, height: tenth(height), title: windRoseTitle(lake, wind, units), textSize: size },
    [
      circle({
        cx: tenth(middle.x),
        cy: tenth(middle.y),
        r: tenth(radius),
        fill: "none",
        stroke: ink.line,
        "stroke-width": 0.6,
      }),
      winds.map(({ bearing_deg, share, isLongest }) =>
        path({
          d: linePath([
            middle,
            towards(middle, bearing_deg - HALF_DEG, share * radius),
            towards(middle, bearing_deg + HALF_DEG, share * radius),
            middle,
          ]),
          fill: isLongest ? ink.line : ink.paper,
          stroke: ink.line,
          "stroke-width": 0.8,
        }),
      ),
      group({ fill: ink.words }, [
        winds
          .filter(({ word }) => word !== "")
          .map(({ word, bearing_deg }) => {
            const at = towards(middle, bearing_deg, radius + size * 0.8);
            const side = Math.sin((bearing_deg * Math.PI) / 180);
            const anchor = Math.abs(side) < 0.1 ? "middle" : side > 0 ? "start" : "end";
            const x = at.x - Math.sign(anchor === "middle" ? 0 : side) * size * 0.4;
            return text({ x: tenth(x), y: tenth(at.y + size * 0.28), "text-anchor": anchor }, word);
          }),
      ]),
    ],
  );
}
