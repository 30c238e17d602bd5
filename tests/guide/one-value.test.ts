import { beforeAll, describe, expect, test } from "vitest";
import { arrangeBoard } from "../../build/guide/board.ts";
import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { addDays, type CalendarDate, daysFromTo } from "../../build/model/calendar.ts";
import { DAY_STATES, type DayState } from "../../build/model/phase.ts";
import { demoGuide } from "../site/demo-guide.ts";

// Board, page, card, trip, calendar and "when" say when a lake is what: each is held to the chances of the same days.

let guide: Guide;
beforeAll(async () => {
  guide = await demoGuide();
});

type Row = GuideLake["daily"][number];
const GOOD: readonly DayState[] = ["iceOff", "postTurnover"];
const FISHABLE: readonly DayState[] = [...GOOD, "laterWeeks"];
const chance = (row: Row, states: readonly DayState[]): number =>
  states.reduce((sum, state) => sum + row[state], 0);
const rowOn = ({ daily }: GuideLake, date: CalendarDate): Row => {
  const row = daily.find((one) => one.date === date);
  if (row === undefined) throw new RangeError(`no ${date}`);
  return row;
};
const lakeOf = (slug: string): GuideLake => {
  const lake = guide.lakes.find((one) => one.slug === slug);
  if (lake === undefined) throw new RangeError(`no ${slug}`);
  return lake;
};
/** Mean over days of a chance; a day before the road opens counts as none. */
const meanOver = (
  slug: string,
  from: CalendarDate,
  to: CalendarDate,
  states: readonly DayState[],
): number => {
  const days = daysFromTo(from, to);
  const lake = lakeOf(slug);
  const isOpen = (date: CalendarDate): boolean => (lake.access?.opens ?? date) <= date;
  return (
    days.reduce((sum, date) => sum + (isOpen(date) ? chance(rowOn(lake, date), states) : 0), 0) / days.length
  );
};
/** First day on which one of these states, or a later one, is at least as likely as not. */
const evenDay = ({ daily }: GuideLake, first: DayState): CalendarDate | undefined =>
  daily.find((row) => Math.round(1e4 * chance(row, DAY_STATES.slice(DAY_STATES.indexOf(first)))) >= 5000)
    ?.date;

/** Chances are given to four decimals. */
const SAME = 4;

describe("one question has one answer", () => {
  test("the middle day of each change is the day its chance passes one half", () => {
    for (const lake of guide.lakes) {
      const { slug, iceOff, phases, laterWeeks } = lake;
      expect([slug, evenDay(lake, "iceOff")]).toEqual([slug, iceOff.p50]);
      for (const { phase, from } of phases) {
        const state = (
          { "ice-off": "iceOff", turnover: "turnover", "post-turnover": "postTurnover" } as const
        )[phase as "ice-off"];
        expect([slug, phase, evenDay(lake, state)]).toEqual([slug, phase, from.p50]);
      }
      const end = evenDay(lake, "laterWeeks");
      if (end !== undefined) expect([slug, end]).toEqual([slug, laterWeeks?.p50]);
    }
  });

  test("what a lake is now is its likeliest state of the as-of day", () => {
    for (const lake of guide.lakes) {
      const row = rowOn(lake, guide.asOf);
      expect([lake.slug, row[lake.now.state]]).toEqual([lake.slug, lake.now.chance]);
      for (const state of DAY_STATES) expect(row[state]).toBeLessThanOrEqual(lake.now.chance);
    }
  });

  test("on every day of the season the board's weekend is the mean of its days", () => {
    for (const today of daysFromTo(guide.window.from, addDays(guide.window.to, -8))) {
      const { groups, weekend } = arrangeBoard(guide.lakes, today);
      const [from, to] = [weekend[0], weekend.at(-1)];
      if (from === undefined || to === undefined) throw new RangeError(`no weekend after ${today}`);
      for (const { slug, weekend: good, fishable } of groups.flatMap(({ lakes }) => lakes)) {
        expect(good, `${slug} ${today}`).toBeCloseTo(meanOver(slug, from, to, GOOD), SAME);
        expect(fishable, `${slug} ${today}`).toBeCloseTo(meanOver(slug, from, to, FISHABLE), SAME);
      }
    }
  });

  test("so are the lakes of “when” and of the trips", () => {
    for (const { from, to, best, next, fishable } of guide.when.occasions) {
      for (const outing of [best, next])
        if (outing !== null) expect(outing.good).toBeCloseTo(meanOver(outing.slug, from, to, GOOD), SAME);
      for (const one of fishable)
        expect(one.chance).toBeCloseTo(meanOver(one.slug, from, to, FISHABLE), SAME);
    }
    for (const { slug, good } of guide.when.lakes)
      guide.when.weeks.forEach(({ from, to }, week) => {
        const said = good[week];
        if (said !== null && said !== undefined)
          expect(said).toBeCloseTo(meanOver(slug, from, to, GOOD), SAME);
      });
    for (const { date, lakes } of guide.trips.flatMap(({ days }) => days))
      for (const { slug, good, open } of lakes)
        if (open) expect(good).toBeCloseTo(chance(rowOn(lakeOf(slug), date), GOOD), SAME);
  });

  test("no weekend or holiday is called hopeless while lakes can be fished", () => {
    for (const { from, to, isLikely, fishable } of guide.when.occasions) {
      const can = guide.lakes.filter(({ slug }) => meanOver(slug, from, to, FISHABLE) >= 0.5);
      if (!isLikely && can.length > 0) expect(fishable.length, `${from}`).toBeGreaterThan(0);
    }
  });
});
