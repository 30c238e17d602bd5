import geographiclib from "geographiclib-geodesic";
import { describe, expect, test } from "vitest";
import type { Drawing } from "../../build/draw/drawing.ts";
import { paperInk, screenInk } from "../../build/draw/ink.ts";
import { lakeMap } from "../../build/draw/map/lake-map.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { PHASES } from "../../build/model/phase.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { circle, rectangle } from "../water/shapes.ts";
import { shaped, unshaped } from "./drawn-lakes.ts";
import { lettering, letteringFaults } from "./lettering-boxes.ts";

const { Geodesic } = geographiclib;

function mapOf(
  lake: Parameters<typeof lakeMap>[0],
  options: Partial<Parameters<typeof lakeMap>[1]> = {},
): Drawing {
  const map = lakeMap(lake, { ink: paperInk, units: "metric", width: 170, ...options });
  if (map === null) throw new Error(`${lake.name} has no shoreline`);
  return map.drawing;
}

const draw = (...map: Parameters<typeof mapOf>): string => renderSvg(mapOf(...map));

/** Middles of the patches of paper that marks of a map stand on; those of its key come later. */
const markMiddles = (svg: string): { x: number; y: number }[] =>
  [
    ...svg.matchAll(
      /d="M(-?[\d.]+) (-?[\d.]+)H(-?[\d.]+)V(-?[\d.]+)H-?[\d.]+Z" fill="#ffffff" stroke="none"/g,
    ),
  ].map((match) => {
    const [, left = 0, top = 0, right = 0, bottom = 0] = match.map(Number);
    return { x: (left + right) / 2, y: (top + bottom) / 2 };
  });

/** Whether a point lies in a path of closed polygons: by crossings, so islands are out. */
function isInside(path: string, x: number, y: number): boolean {
  let inside = false;
  for (const [, ring = ""] of path.matchAll(/M([^Z]*)Z/g)) {
    const points = ring.split("L").map((pair) => pair.split(" ").map(Number));
    points.forEach(([x1 = 0, y1 = 0], i) => {
      const [x0 = 0, y0 = 0] = points.at(i - 1) ?? [];
      if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
    });
  }
  return inside;
}

describe("a map", () => {
  const lake = shaped(rectangle(1600, 900), {
    marks: [
      { mark: "launch", x: -700, y: -300 },
      { mark: "shoal", x: 700, y: -300 },
      { mark: "hazard", x: -700, y: 300 },
    ],
  });
  const svg = draw(lake);
  const [southWest, southEast, northWest] = markMiddles(svg);
  const [sw, se, nw] = lake.place.map?.marks ?? [];

  test("has north up and east to the right", () => {
    expect(northWest?.y).toBeLessThan(southWest?.y ?? 0);
    expect(northWest?.x).toBeCloseTo(southWest?.x ?? 0, 0);
    expect(southEast?.x).toBeGreaterThan(southWest?.x ?? 0);
    expect(southEast?.y).toBeCloseTo(southWest?.y ?? 0, 0);
  });

  // Geodesic lengths by GeographicLib (Karney 2013), straight from the library.
  test.each([
    ["across", sw, se, southWest, southEast],
    ["along", sw, nw, southWest, northWest],
  ])("has a scale bar that is true %s the lake", (_, a, b, from, to) => {
    const bar = Number(/h([\d.]+)v[\d.]+h-[\d.]+Z"/.exec(svg)?.[1]);
    const said_m = Number(/>(\d+) m<\/text>/.exec(svg)?.[1]);
    const apart_m = Geodesic.WGS84.Inverse(a?.lat ?? 0, a?.lon ?? 0, b?.lat ?? 0, b?.lon ?? 0).s12 ?? 0;
    const apart = Math.hypot((to?.x ?? 0) - (from?.x ?? 0), (to?.y ?? 0) - (from?.y ?? 0));
    // A tenth of a unit is what the drawing is written to.
    expect(Math.abs((apart_m / said_m) * bar - apart)).toBeLessThan(0.2);
  });

  test("holds marks that lie off the shore", () => {
    const off = draw(shaped(rectangle(400, 300), { marks: [{ mark: "dam", x: 260, y: 210 }] }));
    const [dam] = markMiddles(off);
    expect(dam?.x).toBeGreaterThan(0);
    expect(dam?.x).toBeLessThan(170);
    expect(dam?.y).toBeGreaterThan(0);
  });

  test("is none without a shoreline", () => {
    expect(lakeMap(unshaped, { ink: paperInk, units: "metric", width: 170 })).toBeNull();
  });
});

/** Left and right end of a path. */
function span(path: string): [number, number] {
  const xs = [...path.matchAll(/[ML]([\d.]+)/g)].map(([, x]) => Number(x));
  return [Math.min(...xs), Math.max(...xs)];
}

test("where to fish ends at the shore and leaves out islands", () => {
  const lake = shaped(circle(200), { islands: [circle(30, 60)], contours: [[4, circle(120)]] });
  const svg = draw(lake, { phases: ["ice-off"] });
  const shore = /d="([^"]*)" fill="none" stroke="#000000" stroke-width="1.5"/.exec(svg)?.[1] ?? "";
  const hatching = /d="([^"]*)" fill="none" stroke="#000000" stroke-width="0.8"/.exec(svg)?.[1] ?? "";
  const ends = [...hatching.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g)].map((match) =>
    match.map(Number),
  );
  expect(ends.length).toBeGreaterThan(10);
  const [left, right] = span(shore);
  const middle = { x: (left + right) / 2, y: 8.8 + (right - left) / 2 };
  const radii_m = ends
    .filter(([, x0 = 0, y0 = 0, x1 = 0, y1 = 0]) => Math.hypot(x1 - x0, y1 - y0) > 2)
    .flatMap(([, x0 = 0, y0 = 0, x1 = 0, y1 = 0]) =>
      [0.1, 0.5, 0.9].map((share) => {
        const [x, y] = [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
        expect(isInside(shore, x, y)).toBe(true);
        return (Math.hypot(x - middle.x, y - middle.y) * 400) / (right - left);
      }),
    );
  // From the shore at 200 m the bottom falls evenly to 4 m at 120 m: 0.5 m deep at 190 m, 2 m deep at 160 m; it rises
  // again to the island at 30 m, passing 2 m at 75 m.
  expect(radii_m.length).toBeGreaterThan(30);
  expect(radii_m.filter((r) => r > 90 && r < 150)).toEqual([]);
  expect(radii_m.some((r) => r > 160 && r < 190)).toBe(true);
});

describe("maps of the demonstration lakes", async () => {
  const { lakes } = await demoGuide();
  const settings = [
    { ink: paperInk, width: 170 },
    { ink: screenInk, width: 344 },
  ].flatMap((one) => (["metric", "imperial"] as const).map((units) => ({ ...one, units })));

  test("have no lettering that runs into other lettering or out of the drawing", () => {
    const faults = lakes.flatMap((lake) =>
      settings.flatMap((setting) =>
        PHASES.flatMap((phase) =>
          letteringFaults(mapOf(lake, { ...setting, phases: [phase] })).map(
            (fault) => `${lake.slug}: ${fault}`,
          ),
        ),
      ),
    );
    expect(faults).toEqual([]);
  });

  test("name every mark in their key and have no ids", () => {
    for (const lake of lakes) {
      const svg = draw(lake);
      const text = lettering(mapOf(lake)).join(" ");
      for (const { mark, name } of lake.place.map?.marks ?? []) expect(text).toContain(name ?? mark);
      expect(svg).not.toMatch(/\sid=|<pattern|\sstyle=/);
    }
  });
});
