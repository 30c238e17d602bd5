import { describe, expect, test } from "vitest";
import type { Drawing } from "../../build/draw/drawing.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { leaderAtDeepest, rigAtDeepEnd } from "../../build/draw/rig/hung-rig.ts";
import { rigDrawing } from "../../build/draw/rig/rig-drawing.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { FT } from "../rigs/box-fixture.ts";
import { lettering, letteringBoxes, letteringFaults } from "./lettering-boxes.ts";
import { hung, LEADERS, MEDIA, USUAL_LONG } from "./rig-fixture.ts";

const PAPER = { ink: paperInk, units: "imperial", width: 170, height: 260 } as const;

const words = (drawing: Drawing): string => lettering(drawing).join(" ");

/** Top and bottom of each section as drawn, by its name. */
function sectionsIn(svg: string): Map<string, readonly [top: number, bottom: number]> {
  const paths = svg.matchAll(/<path class="(\w+)" d="M\S+ (\S+?)L\S+ \S+?L\S+ (\S+?)L/g);
  return new Map([...paths].map(([, part = "", top, bottom]) => [part, [Number(top), Number(bottom)]]));
}

describe("a hanging rig is to scale by depth", () => {
  const drawing = rigDrawing(hung(USUAL_LONG, 15), PAPER);
  const drawn = sectionsIn(renderSvg(drawing));
  const surface = drawn.get("taper")?.[0] ?? Number.NaN;
  const fly = drawn.get("tippet")?.[1] ?? Number.NaN;
  // Set 15 ft on 12 + 6 + 3 ft: 3 ft of tippet and 6 ft of middle hang whole, and 6 ft of the taper.
  test.each([
    ["taper", 0, 6],
    ["middle", 6, 12],
    ["tippet", 12, 15],
  ])("%s from %d to %d ft", (part, from_ft, to_ft) => {
    const [top, bottom] = drawn.get(part) ?? [Number.NaN, Number.NaN];
    const perFoot = (fly - surface) / 15;
    expect(perFoot).toBeGreaterThan(10);
    expect(top - surface).toBeCloseTo(from_ft * perFoot, 0);
    expect(bottom - surface).toBeCloseTo(to_ft * perFoot, 0);
  });

  test("the staff's numbers stand at their depths", () => {
    const perFoot = (fly - surface) / 15;
    const numbers = letteringBoxes(drawing).filter(({ text }) => /^\d+$/.test(text));
    expect(numbers.length).toBeGreaterThan(4);
    for (const { text, top, bottom } of numbers)
      expect((top + bottom) / 2 - surface, text).toBeCloseTo(Number(text) * perFoot, -0.5);
  });
});

test("sections are as wide beside one another as their lines are thick", () => {
  const svg = renderSvg(rigDrawing(hung(USUAL_LONG, 15), PAPER));
  const width = (part: string): number => {
    const [, left, right] = new RegExp(`class="${part}" d="M(\\S+) \\S+?L(\\S+) `).exec(svg) ?? [];
    return Number(right) - Number(left);
  };
  // Rule of 11: 4X is 0.007 in, 5X is 0.006 in.
  expect(width("middle") / width("tippet")).toBeCloseTo(7 / 6, 1);
});

describe.each(["imperial", "metric"] as const)("%s", (units) => {
  test("every section's length and size is written, and the set depth", () => {
    for (const pieces of LEADERS) {
      const rig = hung(pieces, pieces[1][0] + pieces[2][0] + 2, units);
      const written = words(rigDrawing(rig, { ...PAPER, units }));
      for (const [i, [feet, size]] of pieces.entries()) {
        const length = lengthOf(feet, units);
        if (feet > 0) expect(written).toContain(`${length} ${i === 0 ? "taper to" : "of"} ${size}X`);
      }
      const set_ft = pieces[1][0] + pieces[2][0] + 2;
      const set = units === "imperial" ? `${set_ft} ft` : `${Number((set_ft * FT).toFixed(1))} m`;
      expect(written).toContain(`set ${set}`);
    }
  });

  test("no line of lettering runs into another or out of the drawing", () => {
    for (const medium of MEDIA)
      for (const pieces of LEADERS)
        for (const share of [0.05, 0.5, 0.95])
          for (const shot of [null, "No. 4", "2 × No. 1 + No. 6", "No. 1 + No. 4 + No. 6"]) {
            const set_ft = pieces[1][0] + pieces[2][0] + share * pieces[0][0];
            const rig = hung(pieces, set_ft, units, {
              shot,
              landing: share > 0.4 ? "slip" : "fixed",
              indicator: shot === null ? null : "Three-quarter",
            });
            expect(
              letteringFaults(rigDrawing(rig, { ...medium, units })),
              `${pieces} ${set_ft} ft ${shot}`,
            ).toEqual([]);
          }
  });
});

/** As it is cut: "6 in", "1.5 ft"; "15 cm", "3.66 m". */
function lengthOf(feet: number, units: "imperial" | "metric"): string {
  if (units === "imperial") return feet < 1 ? `${feet * 12} in` : `${feet} ft`;
  const metres = feet * FT;
  return metres < 1 ? `${Number((metres * 100).toFixed(1))} cm` : `${Number(metres.toFixed(2))} m`;
}

test("colours come from the ink alone, and there are no ids", () => {
  const svg = renderSvg(rigDrawing(hung(USUAL_LONG, 15, "imperial", { shot: "BB" }), PAPER));
  expect(svg).not.toContain(" id=");
  for (const [, colour] of svg.matchAll(/(?:fill|stroke)="([^"]*)"/g))
    expect(colour).toMatch(/^(none|#000000|#ffffff)$/);
});

test("a leader is hung over a round depth, no deeper than it serves", () => {
  const { leader, offBottom } = hung(USUAL_LONG, 15);
  const rig = leaderAtDeepest(leader, offBottom, "imperial");
  // 21 ft less the margin of 0.1 m serves sets to 20.67 ft; with 7 in below it that is 21.26 ft: 21 ft of water.
  expect((rig?.depth_m ?? 0) / FT).toBeCloseTo(21, 6);
  expect((rig?.set_m ?? 0) / FT).toBeCloseTo(21 - 7 / 12, 6);
  expect(leaderAtDeepest({ ...leader, serves: null }, offBottom, "imperial")).toBeUndefined();
});

test("a lake's rig is drawn at the deep end of its sets, as far as its leader serves", () => {
  const { leader, offBottom } = hung(USUAL_LONG, 15);
  const rigs = { leaders: [leader], offBottom };
  const at = (from_m: number, to_m: number, name = "Board") =>
    rigAtDeepEnd({ setDepth: { from_m, to_m }, leader: name, landing: "slip" }, rigs)?.set_m;
  expect(at(3, 5)).toBe(5);
  expect(at(3, 9)).toBe(leader.serves?.to_m);
  expect(at(0.5, 1)).toBeUndefined();
  expect(at(3, 5, "Nobody's")).toBeUndefined();
});
