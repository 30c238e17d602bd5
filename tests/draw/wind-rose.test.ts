import { describe, expect, test } from "vitest";
import type { Drawing } from "../../build/draw/drawing.ts";
import { paperInk, screenInk } from "../../build/draw/ink.ts";
import { windRose } from "../../build/draw/map/wind-rose.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { rectangle } from "../water/shapes.ts";
import { shaped, unshaped } from "./drawn-lakes.ts";
import { letteringBoxes, letteringFaults } from "./lettering-boxes.ts";

const OPTIONS = { ink: paperInk, units: "metric", width: 170 } as const;

function roseOf(lake: GuideLake, options: Parameters<typeof windRose>[1] = OPTIONS): Drawing {
  const rose = windRose(lake, options);
  if (rose === null) throw new Error(`${lake.name} has no shoreline`);
  return rose;
}

/** The far corners of the stretches, in the order of the winds, about the middle of the drawing. */
const tips = (rose: Drawing): { x: number; y: number }[] =>
  [...renderSvg(rose).matchAll(/d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)Z"/g)].map(
    (match) => {
      const [, x = 0, y = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = match.map(Number);
      return { x: (x1 + x2) / 2 - x, y: (y1 + y2) / 2 - y };
    },
  );

describe("wind rose", () => {
  // A narrow rectangle turned 22.5 degrees from east to south: its length lies along ESE and WNW.
  const rose = roseOf(shaped(rectangle(1000, 60, 22.5)));

  test("has sixteen stretches, clockwise from north up", () => {
    const all = tips(rose);
    expect(all).toHaveLength(16);
    all.forEach(({ x, y }, i) => {
      const bearing_deg = ((Math.atan2(x, -y) * 180) / Math.PI + 360) % 360;
      const off = Math.abs(bearing_deg - i * 22.5);
      // Short stretches are a few units long, written to the tenth.
      expect(Math.min(off, 360 - off)).toBeLessThan(2);
    });
  });

  test("draws the longest along the lake and gives its length at both ends", () => {
    const lengths = tips(rose).map(({ x, y }) => Math.hypot(x, y));
    expect(lengths.indexOf(Math.max(...lengths)) % 8).toBe(5);
    const numbers = letteringBoxes(rose).filter(({ text }) => / (m|km)$/.test(text));
    expect(numbers.map(({ text }) => text)).toEqual(["1 km", "1 km"]);
    expect(numbers[0]?.left).toBeGreaterThan(85);
    expect(numbers[1]?.right).toBeLessThan(85);
  });

  test("is none without a shoreline", () => {
    expect(windRose(unshaped, OPTIONS)).toBeNull();
  });
});

// A property of turning; a hundredth of the radius for rounding and for lines falling elsewhere in the corners.
test("turning the whole lake by a quarter turns the rose by a quarter", () => {
  for (const turn_deg of [0, 22.5, 35, 70]) {
    const before = tips(roseOf(shaped(rectangle(1000, 300, turn_deg))));
    const after = tips(roseOf(shaped(rectangle(1000, 300, turn_deg + 90))));
    const longest = Math.max(...before.map(({ x, y }) => Math.hypot(x, y)));
    for (const [i, { x, y }] of after.entries()) {
      const turned = before[(i + 12) % 16] ?? { x: 0, y: 0 };
      const reach = (spot: typeof turned): number => Math.hypot(spot.x, spot.y) / longest;
      const own = Math.max(...after.map((spot) => Math.hypot(spot.x, spot.y)));
      expect(Math.abs(Math.hypot(x, y) / own - reach(turned))).toBeLessThan(0.02);
    }
  }
});

test("roses of the demonstration lakes have no lettering that runs into other lettering or out", async () => {
  const { lakes } = await demoGuide();
  const faults = lakes.flatMap((lake) =>
    (["metric", "imperial"] as const).flatMap((units) =>
      [OPTIONS, { ink: screenInk, width: 328 }].flatMap((one) =>
        letteringFaults(roseOf(lake, { ...one, units })).map((fault) => `${lake.slug}: ${fault}`),
      ),
    ),
  );
  expect(faults).toEqual([]);
});
