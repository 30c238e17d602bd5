import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stackedEdges, withoutStraightPoints } from "../../build/draw/strip/season-strip.ts";
import { DAY_STATES } from "../../build/model/phase.ts";
import { day } from "../lake-fixture.ts";

const HEIGHT = 140;

/** Five chances that sum to 1, in whole parts so that none is lost to rounding. */
const daily = fc
  .array(fc.tuple(...DAY_STATES.map(() => fc.integer({ min: 0, max: 1000 }))), {
    minLength: 1,
    maxLength: 40,
  })
  .map((rows) =>
    rows.map((row) => {
      const all = row.reduce((sum, part) => sum + part, 0) || 1;
      const [iced = 0, iceOff = 0, turnover = 0, postTurnover = 0] = row.map((part) => part / all);
      const laterWeeks = 1 - iced - iceOff - turnover - postTurnover;
      return { date: day("2026-05-01"), iced, iceOff, turnover, postTurnover, laterWeeks };
    }),
  );

describe("stacked areas", () => {
  test("each band is as high as its state is likely, and together they fill the height", () => {
    fc.assert(
      fc.property(daily, (days) => {
        const edges = stackedEdges(days, HEIGHT);
        for (const [i, chances] of days.entries()) {
          const bands = DAY_STATES.map((_, s) => (edges[s]?.[i] ?? 0) - (edges[s - 1]?.[i] ?? 0));
          for (const [s, state] of DAY_STATES.entries())
            expect(bands[s]).toBeCloseTo(HEIGHT * chances[state], 6);
          expect(bands.reduce((sum, band) => sum + band, 0)).toBeCloseTo(HEIGHT, 6);
        }
      }),
    );
  });

  test("points on a straight line are left out, corners are kept", () => {
    const points = [0, 0, 0, 5, 10, 10].map((y, x) => ({ x, y }));
    expect(withoutStraightPoints(points)).toEqual([
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 4, y: 10 },
      { x: 5, y: 10 },
    ]);
  });
});
