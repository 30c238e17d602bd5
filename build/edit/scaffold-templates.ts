import { schemaFile } from "../input/json-schemas.ts";
import type { CalendarDate } from "../model/calendar.ts";
import { BOAT_KINDS, FOODS, ICE_STATES, LINE_KINDS, METHODS, WATER_COLOURS } from "../model/club.ts";
import { PHASE_WORDS } from "../model/phase.ts";

/** JSON's quoted text is YAML's too. */
const quoted = (text: string): string => JSON.stringify(text.trim());

/** Tells an editor where the schema of a file lies, seen from that file. */
const schemaLine = (kind: string, clubFolder: string): string =>
  `# yaml-language-server: $schema=${clubFolder}${schemaFile(kind)}`;
const fromClubFolder = (kind: string): string => schemaLine(kind, "");
const fromSubfolder = (kind: string): string => schemaLine(kind, "../");

const choices = (words: readonly string[]): string => words.join(", ");

export const clubYaml = (name: string, season: number): string => `${fromClubFolder("club")}
# The line above lets an editor that knows YAML schemas complete the keys and explain them.
# A line that begins with # is a note. To use a key that stands in such a line, remove the # and the space behind it.

name: ${quoted(name)}

# A sentence shown on every page and card.
notice: An example to begin with. Nothing in it is real yet.

# The year of the spring this guide is for (south of the equator: the year in which that spring begins).
season: ${season}

# The day the guide speaks from; nothing dated later is used. Without it: the day of the latest report.
asOf: ${season}-05-16

# The lakes' time zone by its IANA name.
timezone: America/Denver

# imperial (feet, °F) or metric (metres, °C). You may write either in your files.
units: imperial

# Days for which the guide says where to go, besides the weekends.
# holidays:
#   - { name: Spring holiday, from: ${season}-05-23, to: ${season}-05-25 }

# Only for reports exported from a form as reports/YEAR.csv: which column holds what. See content/manual/record-a-season.md.
# reportForm:
#   dates: month/day/year
#   columns:
#     lake: Which lake?
#     date: Date fished
#     water: { column: Water temperature, unit: degF }
`;

export const lakeYaml = (name: string, season: number): string => `${fromSubfolder("lake")}
name: ${quoted(name)}

# Put your lake's own position here: degrees, south and west negative.
position: { lat: 41.3, lon: -106.3 }

# Everything below may be left out. Write quantities with their unit: 8 ft, 2580 m, 40 acre.
# elevation: 8460 ft
# area: 40 acre
# region: Lakes of one region share a spring
# depth: { max: 29 ft, mean: 12 ft }

# Whether somebody would see it open and report it: yes or no. Left out: learnt from the reports of past springs.
# watched: yes

# A lake outside the guide that opens before yours can have a file, too, with a line that says role: indicator. Its records and
# this spring's day tell how early the season is, until the first of your own opens. It gets no page and no card.

# What the water looks like in spring: ${choices(WATER_COLOURS)}.
# water: clear

# summary: One line, what kind of lake it is.

# access:
#   text: How to get there.
#   opens: ${season}-05-20
#   travel: 2 h

# hazards:
#   - One hazard a line.

# rules:
#   text: The rules as you read them. The agency's own word rules.
#   checked: ${season}-03-01

# Where fish were found, by phase; plumb it.
# depthBands:
#   ice-off: { from: 2 ft, to: 6 ft }
#   turnover: { from: 4 ft, to: 9 ft }
#   best-weeks: { from: 9 ft, to: 16 ft }
#   later-weeks: { from: 14 ft, to: 26 ft }

# Places to try, each with the depths plumbed there, the likeliest first: with them the guide plans the search.
# places:
#   - { name: Drop-off, at: off the dam, depths: [14 ft, 10 ft] }

# One row a season: the day it was seen to open, or the last day still iced and the first day already open.
# iceOff:
#   - { season: ${season - 2}, on: ${season - 2}-05-09 }
#   - { season: ${season - 1}, after: ${season - 1}-05-11, by: ${season - 1}-05-18 }

# First and last cloudy day.
# turnover:
#   - { season: ${season - 1}, from: ${season - 1}-05-24, to: ${season - 1}-06-04 }

# The last day of the best weeks, as you judged it.
# lastGood:
#   - { season: ${season - 1}, on: ${season - 1}-07-02 }

# How often it freezes over: every-year, some-years or never. One that never does gets a launch card, no forecast.
# freezes: every-year

# A snow or glacier stream runs through it.
# fedBy: snow

# Whether warm water lies over cold in summer (stratification): yes or no. Left out: its depth decides.
# layers: yes

# For a lake that never turns over: none. Left out: 8 to 15 days after ice-off, for 8 to 15 days.
# turnoverRule:
#   onset: { from: 8 days, to: 15 days }
#   duration: { from: 8 days, to: 15 days }

# notes: |
#   As many paragraphs as you like, in Markdown.
`;

export const patternYaml = (name: string): string => `${fromSubfolder("pattern")}
name: ${quoted(name)}

# One of: ${choices(FOODS)}.
imitates: nothing in particular

# Hook sizes.
sizes: [12, 14]

# Any of: ${choices(PHASE_WORDS)}.
phases: [ice-off, best-weeks]

# Any of: ${choices(METHODS)}. The usual way first.
ways: [indicator still]

# Everything below may be left out.
# Its place in the club's own order, 1 first.
# rank: 1

# colours: [olive, tan]

# Water colours it is tied for: ${choices(WATER_COLOURS)}. Left out: any.
# waters: [marl, clear]

# stock:
#   - { size: 12, colour: olive, count: 6 }

# dressing:
#   - { part: hook, material: curved shrimp hook }
#   - { part: body, material: olive dubbing }

# The mass of one: a heavy fly needs less shot.
# mass: 0.1 g

# notes: |
#   How to fish it, in Markdown.
`;

/** Where a trip begins: its days, and a lake to stand for those it will go to; the club may have none yet. */
export interface TripBegun {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly lake: string | undefined;
}

export const tripYaml = (name: string, { from, to, lake }: TripBegun): string => `${fromSubfolder("trip")}
name: ${quoted(name)}

# First and last day.
from: ${from}
to: ${to}

# How many people fish.
rods: 4

# The lakes that come into question, by the names of their files without “.yaml”; the first choice first. Left out: all.
${lake === undefined ? "# lakes: [name-of-a-lake-file]" : `lakes: [${lake}]`}

# Everything below may be left out.
# people: [Ines, Tobin, Wren, Ossian]

# Kinds: ${choices(BOAT_KINDS)}. Left out: a pram.
# boats:
#   - { name: The pram, seats: 2 }
#   - { name: The tube, kind: float tube, seats: 1 }
#   - { name: From the bank, kind: shore, seats: 1 }

# Flies a rod is expected to lose in a day.
# flyLoss: 3

# The farthest a lake may be from where you meet, one way.
# travel: { longest: 3 h }

# notes: |
#   Plans and meeting places, in Markdown.

# A page that nothing in the guide links to.
# unlisted: true
`;

/** What stands at the top of a season's reports. */
export const reportsHeader = (season: number): string => `${fromSubfolder("reports")}
# What members saw and caught in the season of ${season}: one row a visit, also the visits without a fish.
#   lake   its file name without “.yaml”
#   date   the day it was seen
#   ice    ${choices(ICE_STATES)}
#   phase  ${choices(PHASE_WORDS)}
#   caught, samples   fish by pattern, and what was found in the throats of those you kept
#   water, deep, clarity, looks   surface temperature, a second one at depth, Secchi depth, or cloudy or clear by eye
#   oxygen, rods, hours, notes    as far as you know them
`;

export const reportsYaml = (
  season: number,
  lake: string,
  pattern: string,
): string => `${reportsHeader(season)}
- { lake: ${lake}, date: ${season}-04-28, ice: on, notes: "An example: replace it with what you saw." }
# - { lake: ${lake}, date: ${season}-05-04, ice: off, water: 43 degF, clarity: 7 ft }
# - { lake: ${lake}, date: ${season}-05-16, phase: turnover, water: 46 degF, deep: { at: 15 ft, water: 45 degF }, rods: 2, hours: 5 h }
# - lake: ${lake}
#   date: ${season}-05-09
#   rods: 2
#   hours: 5 h
#   caught: [{ pattern: ${pattern}, fish: 3, hours: 4 h }]
#   samples: [{ scud: 12, leech: 1 }, {}]
`;

export const rigsYaml = (): string => `${fromClubFolder("rigs")}
# What your club builds rigs from. What you leave out comes from the program's defaults; a list you write replaces
# the whole list of the defaults.

rod: 9 ft
# castLimit: 1.2 g

# leaders:
#   - name: Long
#     taper: { length: 12 ft, size: 3X }
#     middle: { length: 6 ft, size: 4X }
#     tippet: { length: 3 ft, size: 5X }
#     tied: 2

# Kinds: ${choices(LINE_KINDS)}.
# lines:
#   - { name: Floating, kind: floating }
#   - { name: Clear intermediate, kind: clear intermediate, sinkRate: 1.5 in/s }
#   - { name: Sink tip, kind: sink tip, sinkRate: 3 in/s, tip: 15 ft }

# Weigh ten of yours and divide by ten.
# shot:
#   - { name: BB, mass: 0.4 g, material: tin, carried: 20 }

# What is pinched on, from none up.
# steps: [none, BB, 2 x BB]

# Anchor rope over depth and bow together.
# scope: { calm: 5, ripple: 5, chop: 7 }

# indicators:
#   - { name: Three-quarter, diameter: 0.75 in, density: 60 kg/m3, carried: 4 }
`;
