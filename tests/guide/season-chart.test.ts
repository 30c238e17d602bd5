import { describe, expect, test } from "vitest";
import { bestDaysInReach } from "../../build/guide/best-days.ts";
import { goodUntil, onDays, outdoorDays, seasonChart, shortNames } from "../../build/guide/season-chart.ts";
import { daysFromTo } from "../../build/model/calendar.ts";
import { chanceWord } from "../../build/model/units.ts";
import { day } from "../lake-fixture.ts";
import { siteGuide } from "../site/site-fixture.ts";

const guide = siteGuide();
const [first] = guide.lakes;
if (first === undefined) throw new Error("no lake");
const ZERO = { iced: 0, iceOff: 0, turnover: 0, postTurnover: 0, laterWeeks: 0 };

/** Good with the same chance from one day to another, turning over before and after. */
const goodFrom = (from: string, to: string, opens: string | null, chance = 0.9) => ({
  ...first,
  access: { text: "Gated.", opens: opens === null ? null : day(opens), travel_h: null },
  daily: daysFromTo(day("2026-05-01"), day("2026-07-31")).map((date) =>
    date >= from && date <= to
      ? { ...ZERO, date, postTurnover: chance, turnover: 1 - chance }
      : { ...ZERO, date, turnover: 1 },
  ),
});

describe("what the chart says of a lake on some days", () => {
  test("is the mean chance of a good day, a day before the road opens counting as none", () => {
    const lake = goodFrom("2026-05-16", "2026-05-30", "2026-05-17");
    expect(onDays(lake, day("2026-05-16"), day("2026-05-17"))?.good).toBeCloseTo(0.45, 9);
    expect(onDays(lake, day("2026-05-23"), day("2026-05-24"))?.good).toBeCloseTo(0.9, 9);
  });

  test("is nothing while the road is shut: no chance stands there", () => {
    const lake = goodFrom("2026-05-01", "2026-07-31", "2026-06-12");
    expect(onDays(lake, day("2026-05-16"), day("2026-05-17"))).toBeNull();
    expect(goodUntil(lake, day("2026-05-16"))).toBeNull();
  });

  test("good lasts until the day before the first that is less than even", () => {
    expect(goodUntil(goodFrom("2026-05-16", "2026-05-30", null), day("2026-05-16"))).toBe("2026-05-30");
  });
});

test("no best days before the road opens, in hundreds of made-up springs", () => {
  let moved = 0;
  for (let start = 1; start <= 28; start++)
    for (let length = 1; length <= 8; length++)
      for (const opens of ["2026-05-08", "2026-05-20", "2026-06-12"]) {
        const from = `2026-05-${String(start).padStart(2, "0")}`;
        const to = daysFromTo(day(from), day("2026-07-31"))[length] ?? from;
        const { daily } = goodFrom(from, to, opens);
        const bestDays = { from: day(from), to: day(to), chance: 0.9 };
        const reached = bestDaysInReach({ bestDays, daily }, day(opens));
        if (reached === null) expect(to < opens).toBe(true);
        else expect(reached.from >= opens || reached.from >= from).toBe(true);
        if (reached !== null) expect(reached.from >= opens).toBe(true);
        if (reached?.from !== bestDays.from) moved++;
      }
  expect(moved).toBeGreaterThan(100);
});

describe("the chart of all lakes", () => {
  const chart = seasonChart(guide.lakes, guide.when.occasions, guide);

  test("has every lake once, ordered by the middle of its best weeks", () => {
    expect(chart.rows.map(({ lake }) => lake.slug).sort()).toEqual(
      guide.lakes.map(({ slug }) => slug).sort(),
    );
    const middles = chart.rows.flatMap(({ lake: { phases } }) => {
      const best = phases.find(({ phase }) => phase === "post-turnover");
      return best === undefined ? [] : [(Date.parse(best.from.p50) + Date.parse(best.to.p50)) / 2];
    });
    expect(middles.length).toBeGreaterThan(2);
    expect(middles).toEqual(middles.toSorted((a, b) => a - b));
  });

  test("a holiday takes the place of the weekend it holds", () => {
    const weekend = { name: null, from: day("2026-05-23"), to: day("2026-05-24") };
    const holiday = { name: "Long one", from: day("2026-05-23"), to: day("2026-05-25") };
    const other = { name: null, from: day("2026-05-30"), to: day("2026-05-31") };
    expect(outdoorDays([weekend, holiday, other])).toEqual([holiday, other]);
  });

  test("names lose their last word only where they stay apart", () => {
    const names = (list: string[]) => [...shortNames(list.map((name) => ({ slug: name, name }))).values()];
    expect(names(["Ash Lake", "Elm Pond", "Oak Lake", "Oak Pond", "Lake"])).toEqual([
      "Ash",
      "Elm",
      "Oak Lake",
      "Oak Pond",
      "Lake",
    ]);
  });
});

// Mastrandrea et al. (2010), IPCC guidance note on uncertainties, table 1: 99, 66 and 33 %.
test.each([
  [0.995, "nearly certain"],
  [0.98, "likely"],
  [0.66, "likely"],
  [0.65, "even"],
  [0.33, "even"],
  [0.32, "unlikely"],
])("a chance of %d is called %s", (chance, word) => {
  expect(chanceWord(chance)).toBe(word);
});
