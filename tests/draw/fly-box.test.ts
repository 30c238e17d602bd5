import { describe, expect, test } from "vitest";
import { flyBox, rowsThatFit } from "../../build/draw/fly-box.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { GuideTrip } from "../../build/guide/guide-schema.ts";

type Row = GuideTrip["box"]["rows"][number];

const row = (number: number, carry: number, tie: number): Row => ({
  row: number,
  pattern: "scud",
  name: "Scud",
  size: 14,
  colour: "olive",
  carry,
  have: carry - tie,
  tie,
  why: "",
});
const OPTIONS = { ink: paperInk, width: 275 };

/** Where the marks of each row stand: left and right edges and the middle of their height. */
const marksOf = (svg: string) =>
  svg
    .split('<g class="row"')
    .slice(1)
    .map((text) =>
      [...(text.split("</g>")[0] ?? "").matchAll(/d="M([\d.]+) ([\d.]+)q([\d.]+) ([\d.]+)/g)].map(
        ([, x, y, bend, down]) => ({
          left: Number(x) - Number(bend) / 2,
          right: Number(x) + Number(bend) / 2,
          middle: Number(y) + Number(down),
        }),
      ),
    );

describe("a drawn box", () => {
  test.each([1, 6, 24, 60])(
    "the flies of a row of %i stand apart, within the box and within their row",
    (carry) => {
      const rows = [row(1, carry, 0), row(2, Math.ceil(carry / 2), 1)];
      const svg = renderSvg(flyBox(rows, OPTIONS));
      const marks = marksOf(svg);
      expect(marks.map((flies) => flies.length)).toEqual(rows.map((one) => one.carry));
      const [left = 0, right = 0] = /M([\d.]+) [\d.]+H([\d.]+)V/.exec(svg)?.slice(1).map(Number) ?? [];
      for (const flies of marks)
        for (const [i, fly] of flies.entries()) {
          expect(fly.left).toBeGreaterThan(left);
          expect(fly.right).toBeLessThan(right);
          expect(fly.left).toBeGreaterThan(flies[i - 1]?.right ?? Number.NEGATIVE_INFINITY);
        }
      expect((marks[1]?.[0]?.middle ?? 0) - (marks[0]?.[0]?.middle ?? 0)).toBeGreaterThan(paperInk.textSize);
    },
  );

  test("as many rows as are said to fit take no more than that height, and one more would", () => {
    const rows = Array.from({ length: 40 }, (_, i) => row(i + 1, 3, 0));
    const fit = rowsThatFit(rows, OPTIONS, 300);
    const height = (count: number): number => flyBox(rows, { ...OPTIONS, part: [0, count] }).height;
    expect(height(fit)).toBeLessThanOrEqual(300);
    expect(height(fit + 1)).toBeGreaterThan(300);
  });

  test("its words give every row", () => {
    expect(flyBox([row(1, 3, 0), row(2, 1, 1)], OPTIONS).title).toBe(
      "The box, row by row from the top: 1, 3 Scud 14 olive; 2, 1 Scud 14 olive.",
    );
  });

  test("no colour tells anything: only black and white are used on paper", () => {
    const svg = renderSvg(flyBox([row(1, 3, 1)], OPTIONS));
    const colours = new Set([...svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)].map(([, colour]) => colour));
    expect([...colours].sort()).toEqual(["#000000", "#ffffff", "none"]);
  });
});
