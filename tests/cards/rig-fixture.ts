import type { Guide, GuideTrip } from "../../build/guide/guide-schema.ts";
import type { LeaderStock } from "../../build/model/club.ts";
import { leaderOf } from "../../build/rigs/leaders/leader.ts";
import { leaderBoards } from "../../build/rigs/leaders/leader-boards.ts";
import { rigTables } from "../../build/rigs/tables/rig-tables.ts";
import { guideOf } from "../lake-fixture.ts";
import { box, FT, leader } from "../rigs/box-fixture.ts";
import { TRIP_PLAN } from "../trip-fixture.ts";
import { AS_OF, ember, kettle } from "./card-fixture.ts";

/** Some of them tied, one not. */
export const LEADERS: readonly LeaderStock[] = [
  leader("Shallow", [9, 3], [0.5, 4], [1.5, 5], 2),
  leader("Long", [12, 3], [6, 4], [3, 5], 3),
  leader("Stout", [12, 2], [5.5, 3], [3.5, 4]),
];

/** The tables of these leaders' box. */
const TABLES = rigTables({ ...box, leaders: LEADERS }, "imperial");

/** A guide's rigs with other leaders listed. */
export const rigsWith = (leaders: readonly LeaderStock[]): Guide["rigs"] => ({
  rod_m: box.rod_m,
  offBottom: { from_m: 0.15, to_m: 0.2 },
  ...TABLES,
  leaders: leaders.map((one) => leaderOf(one, box.margin_m, "imperial")),
});

/** A trip to one band of water, with all that a trip must have. */
export function tripOf(slug: string, name: string, unlisted: boolean, water: string): GuideTrip {
  const lake = { slug: "ember", name: "Ember Lake" };
  const band = { name: water, band: { from_m: 4 * FT, to_m: 18 * FT } };
  const boards = leaderBoards([band], { ...box, leaders: [...LEADERS] }, { days: 2, rods: 2 }, "imperial");
  return {
    slug,
    name,
    from: AS_OF,
    to: AS_OF,
    rods: 2,
    unlisted,
    notes: null,
    gear: { lakes: [], boards, lines: [], flies: [] },
    box: { rows: [], tying: [], materials: [], losses: { expected: 0, planned: 0, words: "" } },
    days: [],
    ...TRIP_PLAN,
    pick: { ...lake, fallback: null, good: 0.5, either: 0.5 },
  };
}

export const OPEN = tripOf("open-days", "Open days", false, "Ember Lake, best weeks");
export const QUIET = tripOf("quiet-walk", "Quiet walk", true, "Hidden Tarn, ice-off");

/** Two lakes, three leaders, a trip for all and one that is not listed. */
export const rigGuide = (change: Partial<Guide> = {}): Guide =>
  guideOf([ember, kettle], AS_OF, { rigs: rigsWith(LEADERS), trips: [OPEN, QUIET], ...change });
