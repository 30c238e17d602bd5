import { arrangeBoard } from "../build/guide/board.ts";
import {
  type Guide,
  type GuideLake,
  guideSchema,
  lakeFacts,
  SCHEMA_VERSION,
} from "../build/guide/guide-schema.ts";
import { reportSeasons } from "../build/guide/report-seasons.ts";
import { addDays, type CalendarDate, daysFromTo, parseCalendarDate } from "../build/model/calendar.ts";
import { DAY_STATES, type DayState } from "../build/model/phase.ts";
import type { Spread } from "../build/model/shared-schemas.ts";
import { rigTables } from "../build/rigs/tables/rig-tables.ts";
import type { Daily, RegionForecast } from "../build/season/forecast.ts";
import { bareLaunch } from "../build/season/launch.ts";
import { composeWater } from "../build/water/water.ts";
import { box, lake as clubLake } from "./rigs/box-fixture.ts";

/** A day that is certainly in the calendar. */
export function day(text: string): CalendarDate {
  const date = parseCalendarDate(text);
  if (date === undefined) throw new Error(`not a day: ${text}`);
  return date;
}

/** The tables of a box, made once. */
const TABLES = rigTables(box, "imperial");

const WINDOW = { from: day("2026-03-15"), to: day("2026-07-15") };

/** The state of a lake that opened on `iceOff`, turned over from day 11 to 22 and had its later weeks after day 35. */
function stateOn(date: CalendarDate, iceOff: CalendarDate): DayState {
  if (date < iceOff) return "iced";
  if (date < addDays(iceOff, 11)) return "iceOff";
  if (date < addDays(iceOff, 23)) return "turnover";
  return date <= addDays(iceOff, 35) ? "postTurnover" : "laterWeeks";
}

/** Ice-off equally likely on each of the 13 days about `middle`. */
function dailyAbout(middle: CalendarDate): Daily[] {
  const iceOffs = daysFromTo(addDays(middle, -6), addDays(middle, 6));
  return daysFromTo(WINDOW.from, WINDOW.to).map((date) => {
    const states = iceOffs.map((iceOff) => stateOn(date, iceOff));
    const chance = (state: DayState): number => states.filter((s) => s === state).length / iceOffs.length;
    return {
      date,
      iced: chance("iced"),
      iceOff: chance("iceOff"),
      turnover: chance("turnover"),
      postTurnover: chance("postTurnover"),
      laterWeeks: chance("laterWeeks"),
    };
  });
}

const spreadAbout = (middle: CalendarDate, later: number): Spread => ({
  p10: addDays(middle, later - 5),
  p50: addDays(middle, later),
  p90: addDays(middle, later + 5),
});

/** A lake with ice-off about `middle` and nothing else known of it. */
export function bareLake(slug: string, name: string, middle: CalendarDate, asOf: CalendarDate): GuideLake {
  const daily = dailyAbout(middle);
  const today = daily.find(({ date }) => date === asOf);
  if (today === undefined) throw new Error(`${asOf} lies outside the window`);
  const state = DAY_STATES.reduce((best, name) => (today[name] > today[best] ? name : best));
  const best = {
    phase: "post-turnover" as const,
    from: spreadAbout(middle, 23),
    to: spreadAbout(middle, 35),
  };
  return {
    slug,
    ...lakeFacts.of({ name, position: { lat: 41.312, lon: -106.291 }, hazards: [], places: [] }),
    turnsOver: true,
    freezes: null,
    fedBy: null,
    layers: null,
    iceOff: { ...spreadAbout(middle, 0), status: "forecast", openByNow: 1 - today.iced },
    phases: [
      { phase: "ice-off", from: spreadAbout(middle, 0), to: spreadAbout(middle, 10) },
      { phase: "turnover", from: spreadAbout(middle, 11), to: spreadAbout(middle, 22) },
      best,
    ],
    laterWeeks: spreadAbout(middle, 36),
    heat: [],
    readings: [],
    launch: bareLaunch({ area_ha: 16.2 }),
    daily,
    now: { state, chance: today[state] },
    next: best,
    bestDays: { from: addDays(middle, 26), to: addDays(middle, 32), chance: 0.84 },
    marks: [],
    evidence: {
      seasons: 9,
      firstSeason: 2015,
      lastSeason: 2025,
      usualIceOff: middle,
      spring: null,
      movedBy: [],
      wouldSharpen: null,
    },
    status: { now: "Ice-off (54 %).", next: "Best weeks from 5 Jun.", why: [] },
    place: composeWater(clubLake, undefined, {
      units: "imperial",
      timezone: "America/Denver",
      days: [asOf],
      bands: [],
      reports: [],
    }).water,
    boards: { boards: [], uncovered: [] },
    places: [],
    search: [],
    plan: [],
    diet: [],
    catches: { season: null, all: null, phases: [] },
    reports: [],
    pastForecasts: [],
    reported: { seasons: [], caught: [], unrecorded: [] },
  };
}

/** The same with everything a club can write about a lake. */
export function fullLake(slug: string, name: string, middle: CalendarDate, asOf: CalendarDate): GuideLake {
  return {
    ...bareLake(slug, name, middle, asOf),
    elevation_m: 2580,
    region: "Cinder Basin",
    area_ha: 16.2,
    maxDepth_m: 8.5,
    meanDepth_m: 3.4,
    water: "marl",
    summary: "Shallow marl lake with a long weedy shoal and one sharp drop-off.",
    access: {
      text: "Gravel to the north ramp; last mile soft until mid-May.",
      opens: day("2026-05-01"),
      travel_h: 1.25,
    },
    hazards: ["Marl flats swallow a wader past the second reed bed.", "West wind builds fast after noon."],
    rules: { text: "Two trout over 14 in; artificial flies only.", checked: day("2026-03-02") },
    marks: [
      { date: day("2026-04-25"), seen: "ice on", doubted: false },
      { date: day("2026-05-06"), seen: "ice part", doubted: false },
      { date: day("2026-05-12"), seen: "ice off", doubted: false },
    ],
    plan: [
      {
        phase: "ice-off",
        band: { from_m: 0.6, to_m: 1.8, source: "club" },
        rigs: [
          {
            way: "indicator still",
            setDepth: { from_m: 0.45, to_m: 1.65 },
            fly: { from_m: 0.45, to_m: 1.65 },
            leader: "Short board",
            landing: "fixed",
            line: "Floater",
            countdown: null,
            draw: null,
            check: "Fly rides just over the weed.",
            uncovered: null,
          },
        ],
        flies: [
          {
            pattern: "marl-scud",
            name: "Marl Scud",
            sizes: [12, 14],
            colours: ["pale olive"],
            way: "indicator still",
            score: 1,
            rate: null,
            why: "Takes the colour of the marl.",
          },
        ],
      },
      {
        phase: "turnover",
        band: { from_m: 0.6, to_m: 2.4, source: "usual" },
        rigs: [
          {
            way: "floating line",
            setDepth: null,
            fly: { from_m: 0.45, to_m: 2.2 },
            leader: null,
            landing: null,
            line: "Floater",
            countdown: null,
            draw: null,
            check: "Cloudy water clears at the edges first.",
            uncovered: null,
          },
        ],
        flies: [
          {
            pattern: "ash-leech",
            name: "Ash Leech",
            sizes: [8, 10],
            colours: ["black"],
            way: "floating line",
            score: 1,
            rate: null,
            why: "Seen in cloudy water.",
          },
        ],
      },
      {
        phase: "post-turnover",
        band: { from_m: 2.4, to_m: 5.5, source: "club" },
        rigs: [
          {
            way: "indicator still",
            setDepth: { from_m: 2.25, to_m: 5.3 },
            fly: { from_m: 2.25, to_m: 5.3 },
            leader: "Long board",
            landing: "slip",
            line: "Floater",
            countdown: null,
            draw: null,
            check: "Plumb, then come up a hand.",
            uncovered: null,
          },
          {
            way: "clear intermediate",
            setDepth: null,
            fly: { from_m: 0.45, to_m: 2.2 },
            leader: null,
            landing: null,
            line: "Clear slow",
            countdown: { from_s: 60, to_s: null, long: false },
            draw: null,
            check: "Weed on the hook now and then.",
            uncovered: null,
          },
        ],
        flies: [
          {
            pattern: "cinder-pupa",
            name: "Cinder Pupa",
            sizes: [14, 16],
            colours: ["black", "red"],
            way: "indicator still",
            score: 1,
            rate: null,
            why: "The staple of the best weeks.",
          },
          {
            pattern: "marl-scud",
            name: "Marl Scud",
            sizes: [12, 14],
            colours: ["pale olive"],
            way: "clear intermediate",
            score: 1,
            rate: null,
            why: "Takes the colour of the marl.",
          },
        ],
      },
    ],
  };
}

/** A guide that holds these lakes, with the cautions every card must carry. */
export function guideOf(lakes: readonly GuideLake[], asOf: CalendarDate, change: Partial<Guide> = {}): Guide {
  return guideSchema.parse({
    $schema: "schema/guide.schema.json",
    program: { name: "lake-season-guide", version: "0.0.0" },
    schemaVersion: SCHEMA_VERSION,
    club: {
      example: false,
      name: "Cinder Basin Rods",
      notice: "Everything here is invented.",
      timezone: "America/Denver",
      units: "imperial",
    },
    season: 2026,
    asOf,
    baseUrl: "https://guide.example/spring/",
    window: WINDOW,
    lakes: [...lakes],
    lakesWithoutForecast: [],
    board: arrangeBoard(change.lakes ?? lakes, asOf),
    patterns: [],
    reportSeasons: reportSeasons(change.lakes ?? lakes),
    when: { occasions: [], pool: null, weeks: [], lakes: [] },
    trips: [],
    rigs: {
      ...TABLES,
      rod_m: 2.9,
      offBottom: { from_m: 0.15, to_m: 0.2 },
      tippet: [],
      leaders: [],
      lines: [],
    },
    regions: [evenRegion],
    reporting: {
      delay: { shape: 1, theta_d: 4, reports: 0, mean_d: null, seasons: [] },
      visits: { seasons: [], reports: 0, watched: [] },
    },
    backtest: null,
    clearDays: null,
    cautions: [
      {
        id: "ice",
        when: ["iced", "iceOff"],
        short: "Spring ice is rotten ice: stay off it, whatever its thickness.",
        agency: "Montana FWP",
      },
      {
        id: "cold-water",
        when: ["always"],
        short: "Cold water takes your breath in a minute, your hands in ten.",
        agency: "US Coast Guard",
      },
      {
        id: "life-jacket",
        when: ["always"],
        short: "Wear the life jacket; it cannot be put on in the water.",
        agency: "US Coast Guard",
      },
      {
        id: "wind",
        when: ["iceOff", "turnover", "postTurnover"],
        short: "Watch the wind: be off the water before whitecaps.",
        agency: "US National Weather Service",
      },
      {
        id: "lightning",
        when: ["postTurnover", "laterWeeks"],
        short: "First thunder: rods down, off the water, into a car.",
        agency: "US National Weather Service",
      },
      {
        id: "warm",
        when: ["laterWeeks"],
        short: "Warm water: land fish fast or leave them alone.",
        agency: "your fish agency",
      },
    ],
    chapters: [],
    pages: [],
    ...change,
  });
}

/** What is told of a region whose lakes run as evenly as ever, and of which no lake needs a look. */
export const evenRegion: RegionForecast = {
  region: null,
  scatter: 1,
  uneven: 0.05,
  openingsOnly: false,
  mostInformative: null,
  indicators: null,
};
