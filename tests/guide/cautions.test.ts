import { beforeAll, describe, expect, test } from "vitest";
import { layoutLaunchCard } from "../../build/cards/launch-card.ts";
import { seasonCalendar, tripCalendar } from "../../build/feeds/icalendar.ts";
import { composeGuide } from "../../build/guide/compose.ts";
import { guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { iceLeftText } from "../../build/guide/ice-left.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import type { StandingContent } from "../../build/model/content.ts";
import { DAY_STATES, type DayState } from "../../build/model/phase.ts";
import { AS_OF, ember, layoutOf, ruler } from "../cards/card-fixture.ts";
import { written } from "../cards/legibility.ts";
import { day, guideOf } from "../lake-fixture.ts";

/** What must be said in each state of a lake, beside what always holds. DEVELOPERS.md shows the same table. */
const NEEDED: Readonly<Record<DayState, readonly string[]>> = {
  iced: ["rotten-ice", "cold-shock"],
  iceOff: ["rotten-ice", "cold-shock", "lightning", "wind"],
  turnover: ["cold-shock", "lightning", "wind"],
  postTurnover: ["cold-shock", "lightning", "wind"],
  laterWeeks: ["lightning", "wind", "warm-water"],
};
const ALWAYS = ["life-jacket", "tell-someone"];

function need<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("the demo club makes no guide");
  return value;
}

let content: StandingContent;
/** The demo club, its trips in the days when its lakes open. */
let demo: Guide;
beforeAll(async () => {
  content = await loadContent();
  const { club } = await loadClub("demo-data", {});
  const trips = club?.trips.map((trip) => ({ ...trip, from: day("2026-05-17"), to: day("2026-05-18") }));
  const { guide } = composeGuide({ ...need(club), trips: need(trips) }, content, { version: "0" });
  demo = need(guide);
});

const shortOf = (id: string): string => content.cautions.find((one) => one.id === id)?.short ?? `no ${id}`;
/** Lettering of a card with its lines joined. */
const plain = (text: string): string => text.replaceAll("\u00a0", " ").replace(/\s+/g, " ");

test.each(DAY_STATES)("%s: every caution it needs is in the list", (state) => {
  const said = content.cautions
    .filter(({ when }) => when.includes(state) || when.includes("always"))
    .map(({ id }) => id);
  expect(said).toEqual(expect.arrayContaining([...ALWAYS, ...NEEDED[state]]));
});

test.each(DAY_STATES)("%s: the back of a lake's card has ice, cold water, lightning and wind", (state) => {
  const lake: GuideLake = { ...ember, now: { state, chance: 0.8 }, next: null };
  const { cautions } = content;
  const back = plain(
    written(layoutOf(lake, { cautions: cautions.map((one) => ({ ...one, when: [...one.when] })) }).back),
  );
  for (const id of ["life-jacket", ...NEEDED[state].filter((one) => one !== "warm-water")])
    expect(back).toContain(shortOf(id));
});

describe("ice that may be left", () => {
  const lakeWith = (iced: number, state: DayState = "iceOff", seen?: "ice part" | "ice off"): GuideLake => ({
    ...ember,
    now: { state, chance: 1 - iced },
    marks: seen === undefined ? [] : [{ date: day("2026-05-14"), seen, doubted: false }],
    daily: ember.daily.map((row) => ({
      date: row.date,
      iced,
      iceOff: 1 - iced,
      turnover: 0,
      postTurnover: 0,
      laterWeeks: 0,
    })),
  });
  const WORDS = "21 %: ice still on; stay off what is left.";

  test("is warned of above 5 %, or where ice was last seen in part; not beside “iced”", () => {
    expect(iceLeftText(lakeWith(0.21), AS_OF)).toBe(WORDS);
    expect(iceLeftText(lakeWith(0.06), AS_OF)).toContain("6 %");
    expect(iceLeftText(lakeWith(0.05), AS_OF)).toBeNull();
    expect(iceLeftText(lakeWith(0.01, "iceOff", "ice part"), AS_OF)).toContain("stay off what is left");
    expect(iceLeftText(lakeWith(0.01, "iceOff", "ice off"), AS_OF)).toBeNull();
    expect(iceLeftText(lakeWith(0.6, "iced"), AS_OF)).toBeNull();
  });

  test("stands on the card's front and in the calendar", () => {
    const lake = lakeWith(0.21);
    expect(plain(written(layoutOf(lake).front))).toContain(WORDS);
    const calendar = seasonCalendar(guideOf([lake], AS_OF), lake);
    expect(calendar.replace(/\r\n /g, "").replaceAll("\\", "")).toContain(WORDS);
  });

  test("the launch card says so beside ice-off on any day", () => {
    const cells = [
      {
        surface_C: 5,
        heat: null,
        states: [{ state: "iceOff" as const, chance: 0.9 }],
        mixedSigns: false,
      },
    ];
    const launch = { counted: true, depth_m: 4.5, rows: [{ clarity: null, below: null, cells }] };
    const lake = { ...ember, launch };
    const { front } = layoutLaunchCard(guideFrame(guideOf([lake], AS_OF)), lake, ruler);
    expect(plain(written(front.face))).toContain("Stay off ice that is left.");
  });

  test("trips warn of each lake they show that may hold ice on one of their days, and of what goes with it", () => {
    for (const trip of demo.trips) {
      const shown = new Set(trip.days.flatMap(({ lakes }) => lakes.map(({ slug }) => slug)));
      const icy = demo.lakes.filter(
        ({ slug, daily }) =>
          shown.has(slug) &&
          daily.some(({ date, iced }) => date >= trip.from && date <= trip.to && iced > 0.05),
      );
      for (const { name } of icy) expect(trip.ice.join(" ")).toContain(name);
      if (icy.length > 0) expect(trip.cautions).toContain("rotten-ice");
      const states = DAY_STATES.filter((state) =>
        demo.lakes.some(
          ({ slug, daily }) =>
            shown.has(slug) &&
            daily.some((row) => row.date >= trip.from && row.date <= trip.to && row[state] >= 0.2),
        ),
      );
      for (const id of states.flatMap((state) => NEEDED[state])) expect(trip.cautions).toContain(id);
      if (trip.ice.length > 0 && icy.some(({ slug }) => slug === trip.pick?.slug))
        expect(tripCalendar(demo, trip)).toContain("stay off");
    }
    expect(demo.trips.some(({ ice }) => ice.length > 0)).toBe(true);
  });
});
