import { describe, expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import type { Guide, GuideTrip } from "../../build/guide/guide-schema.ts";
import { tripOutingText } from "../../build/guide/trip-words.ts";
import { addDays, dateOfSeasonDay } from "../../build/model/calendar.ts";
import type { Club, Lake, Trip } from "../../build/model/club.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { box } from "../rigs/box-fixture.ts";
import { clubOf, day, FOUR_LAKES, SEASON } from "../season/club.ts";

const dayOf = (n: number) => dateOfSeasonDay(n, SEASON, "north");
const AS_OF = "2026-04-20";

const trip: Trip = {
  slug: "spring",
  name: "Spring",
  from: dayOf(116),
  to: dayOf(117),
  rods: 2,
  people: [],
  boats: [],
  lakes: [],
  unlisted: false,
};

function guideFor(change: Partial<Club> = {}, lakes: readonly Lake[] = FOUR_LAKES): Guide {
  const club: Club = {
    ...clubOf(AS_OF, [], lakes),
    name: "Test Club",
    timezone: "America/Denver",
    example: false,
    units: "metric",
    patterns: [],
    trips: [trip],
    holidays: [],
    rigs: box,
    pages: [],
    indicators: [],
    ...change,
  };
  const { guide } = composeGuide(club, { chapters: [], cautions: [], packing: [] }, { version: "0" });
  if (guide === undefined) throw new Error("no guide");
  return guide;
}
const tripFor = (change: Partial<Trip>, lakes: readonly Lake[] = FOUR_LAKES): GuideTrip => {
  const [made] = guideFor({ trips: [{ ...trip, ...change }] }, lakes).trips;
  if (made === undefined) throw new Error("no trip");
  return made;
};
const withAccess = (slug: string, access: NonNullable<Lake["access"]>): Lake[] =>
  FOUR_LAKES.map((lake) => (lake.slug === slug ? { ...lake, access } : lake));
const chosen = ({ pick }: GuideTrip): (string | undefined)[] => [pick?.slug, pick?.fallback?.slug];
const forecast = forecastSeason(clubOf(AS_OF));

describe("a trip after the best weeks", () => {
  const guide = guideFor({ trips: [{ ...trip, from: dayOf(185), to: dayOf(186) }] });
  const [late] = guide.trips;
  if (late === undefined) throw new Error("no trip");

  test("says which lakes can be fished, where none is likely to be good", () => {
    expect(late.pick?.either).toBeLessThan(0.1);
    expect(late.fishable.length).toBe(3);
    const named = late.fishable.map(({ name }) => name).join("|");
    expect(tripOutingText(late)).toMatch(new RegExp(`Fishable: (${named}) `));
    for (const words of [tripOutingText(late), late.why.join(" ")])
      if (words.includes("none is likely")) expect(words).toContain("Fishable: ");
    expect(late.why.join(" ")).toContain("none is likely to be good. Fishable: ");
  });

  test("takes these chances from the lakes' own days: ice-off, best weeks and later weeks added up", () => {
    for (const { slug, chance } of late.fishable) {
      const rows = guide.lakes.find((lake) => lake.slug === slug)?.daily ?? [];
      const of = rows.filter(({ date }) => date >= late.from && date <= late.to);
      expect(of.length).toBe(2);
      const mean = of.reduce((sum, day) => sum + day.iceOff + day.postTurnover + day.laterWeeks, 0) / 2;
      expect(Math.abs(chance - mean)).toBeLessThan(2e-4); // guide.json's days are rounded to four digits
    }
  });
});

describe("a trip's lakes", () => {
  test("are those it names, and the pair is of them", () => {
    const made = tripFor({ lakes: ["cedar", "dogwood"] });
    expect(made.days[0]?.lakes.map(({ slug }) => slug).sort()).toEqual(["cedar", "dogwood"]);
    expect(chosen(made).sort()).toEqual(["cedar", "dogwood"]);
  });

  test("are all where it names none: the pair is the best of all", () => {
    const { pick } = tripFor({});
    const days = [trip.from, trip.to];
    const slugs = FOUR_LAKES.map(({ slug }) => slug);
    const eithers = slugs.flatMap((a, i) =>
      slugs
        .slice(i + 1)
        .map((b) => days.reduce((sum, date) => sum + forecast.together(a, b, date), 0) / days.length),
    );
    expect(pick?.either).toBeCloseTo(Math.max(...eithers), 9);
  });

  test("are not farther than the trip goes; a journey nobody wrote down is taken on trust only where it is named", () => {
    const lakes = FOUR_LAKES.map((lake, i) =>
      i < 3 ? { ...lake, access: { text: "Road.", travel_h: i + 1 } } : lake,
    );
    const open = tripFor({ longestTravel_h: 2 }, lakes);
    expect(chosen(open).sort()).toEqual(["alder", "birch"]);
    expect(open.out.map(({ slug, why }) => [slug, why])).toEqual([
      ["cedar", "3 h away; the trip goes no farther than 2 h"],
      ["dogwood", "nobody wrote how far it is; the trip goes no farther than 2 h"],
    ]);
    const named = tripFor({ longestTravel_h: 2, lakes: ["cedar", "dogwood"] }, lakes);
    expect(chosen(named)).toEqual(["dogwood", undefined]);
    expect(tripFor({ longestTravel_h: 0.5, lakes: ["cedar"] }, lakes)).toMatchObject({
      pick: null,
      why: [],
      light: [],
    });
  });

  test("have their roads open: not before, and a day before does not count", () => {
    const only = { lakes: ["alder"] };
    const late = tripFor(only, withAccess("alder", { text: "Road.", opens: dayOf(120) }));
    expect(late.pick).toBeNull();
    expect(late.days.map(({ lakes }) => lakes.map(({ open }) => open))).toEqual([[false], [false]]);
    expect(late.out[0]?.why).toBe("its road opens on Thu 30 Apr");
    const half = tripFor(only, withAccess("alder", { text: "Road.", opens: dayOf(117) }));
    expect(half.pick?.good).toBeCloseTo(forecast.good("alder", dayOf(117)) / 2, 9);
    expect(half.days.map(({ either }) => either === 0)).toEqual([true, false]);
  });
});

test("light is told for each day at the pick", () => {
  const { light } = tripFor({});
  expect(light.map(({ date }) => date)).toEqual([trip.from, trip.to]);
});

describe("where and when", () => {
  const holidays = [
    { name: "Long weekend", from: day("2026-05-23"), to: day("2026-05-25") },
    { name: "Under way", from: day("2026-04-18"), to: day("2026-04-21") },
    { name: "Past", from: day("2026-04-03"), to: day("2026-04-06") },
    { name: "Autumn", from: day("2026-10-03"), to: day("2026-10-04") },
  ];
  const guide = guideFor({ holidays });
  const { occasions, weeks, lakes } = guide.when;

  test("lists each weekend from the as-of date to the end of the window, and the holidays still to come", () => {
    const weekends = occasions.filter(({ name }) => name === null);
    expect(weekends[0]).toMatchObject({ from: "2026-04-25", to: "2026-04-26" });
    const end = guide.lakes[0]?.daily.at(-1)?.date ?? day("2026-01-01");
    const last = weekends.at(-1)?.to ?? day("2026-01-01");
    expect(last <= end && addDays(last, 7) > end).toBe(true);
    for (const { from } of weekends) expect(new Date(from).getUTCDay()).toBe(6);
    expect(occasions.filter(({ name }) => name !== null).map(({ name, from }) => [name, from])).toEqual([
      ["Under way", "2026-04-20"],
      ["Long weekend", "2026-05-23"],
    ]);
  });

  test("gives each its best pair, none better among all", () => {
    const slugs = FOUR_LAKES.map(({ slug }) => slug);
    for (const { from, to, best } of occasions) {
      const days = from === to ? [from] : [from, to];
      if (days.length !== 2 || best === null) continue;
      const span = new Date(to).getTime() - new Date(from).getTime();
      if (span !== 86_400_000) continue;
      for (const a of slugs)
        for (const b of slugs)
          expect((forecast.together(a, b, from) + forecast.together(a, b, to)) / 2).toBeLessThanOrEqual(
            best.either + 2e-9,
          );
    }
  });

  test("weeks follow each other without a gap, the first from the as-of date, to the window's end", () => {
    expect(weeks[0]?.from).toBe(AS_OF);
    expect(weeks.at(-1)?.to).toBe(guide.window.to);
    for (const [i, week] of weeks.entries())
      if (i > 0)
        expect(new Date(week.from).getTime() - new Date(weeks[i - 1]?.to ?? "").getTime()).toBe(86_400_000);
  });

  test("a lake's week is the mean of its days", () => {
    const [alder] = lakes.filter(({ slug }) => slug === "alder");
    const week = weeks[1];
    if (week === undefined || alder === undefined) throw new Error("too short a window");
    const days = Array.from({ length: 7 }, (_, i) => dayOf(117 + i));
    expect([week.from, week.to]).toEqual([days[0], days[6]]);
    const mean = days.reduce((sum, date) => sum + forecast.good("alder", date), 0) / 7;
    expect(alder.good[1]).toBeCloseTo(mean, 3);
  });

  test("a lake that would be the fallback but for its road is named with the day it opens", () => {
    const first = occasions[1]?.best?.slug ?? "";
    const closed = guideFor({}, withAccess(first, { text: "Road.", opens: day("2026-06-20") }));
    const { occasions: without, lakes: rows } = closed.when;
    const same = without.find(({ from, name }) => from === occasions[1]?.from && name === null);
    expect(same?.best?.slug).not.toBe(first);
    expect(same?.out).toEqual([{ slug: first, name: first, why: "its road opens on Sat 20 Jun" }]);
    expect(rows.find(({ slug }) => slug === first)?.good[0]).toBeNull();
  });

  test("says nothing of trips", () => {
    const quiet = guideFor({ trips: [{ ...trip, name: "Quiet walk", unlisted: true }] });
    expect(JSON.stringify(quiet.when)).not.toContain("Quiet");
  });
});
