import { boxPlan } from "../flies/box-plan.ts";
import { daysFromTo } from "../model/calendar.ts";
import {
  type Boat,
  isTooFar,
  lakesOfTrip,
  type Pattern,
  partySize,
  type RigBox,
  type Trip,
} from "../model/club.ts";
import type { StandingContent } from "../model/content.ts";
import type { DayState } from "../model/phase.ts";
import { hoursText, type UnitSystem } from "../model/units.ts";
import type { PlumbTable } from "../rigs/rig-schemas.ts";
import type { SeasonForecast } from "../season/season.ts";
import { lightOn } from "../water/light.ts";
import { type GuideLake, type GuideTrip, tripFacts } from "./guide-schema.ts";
import { iceOnDaysText } from "./ice-left.ts";
import { packingList } from "./packing.ts";
import { likelyStates, pairWhy, tripChances } from "./trip-choice.ts";
import { packingInputs, tripGear } from "./trip-gear.ts";
import { lakeAccess, outingOf, roadClosedReason } from "./when.ts";
import type { LeftOut } from "./when-schema.ts";

interface Seating {
  readonly boats: readonly (Boat & { readonly aboard: string[] })[];
  /** For whom no boat has a seat; empty on a trip without boats. */
  readonly ashore: string[];
}

/** How many of so many people each boat carries, as evenly as the seats allow. */
export function seatsTaken(people: number, boats: readonly Pick<Boat, "seats">[]): number[] {
  const taken = boats.map(() => 0);
  for (let i = 0; i < people; i++) {
    const free = boats
      .map(({ seats }, k) => ({ k, taken: taken[k] ?? 0, seats }))
      .filter((boat) => boat.taken < boat.seats)
      .sort((a, b) => a.taken - b.taken)[0];
    if (free !== undefined) taken[free.k] = free.taken + 1;
  }
  return taken;
}

/** Seats people boat by boat in the order they are named. */
export function seatPeople({ people, boats }: Pick<Trip, "people" | "boats">): Seating {
  const taken = seatsTaken(people.length, boats);
  let next = 0;
  const seated = boats.map((boat, i) => {
    const aboard = people.slice(next, next + (taken[i] ?? 0));
    next += aboard.length;
    return { ...boat, aboard };
  });
  return { boats: seated, ashore: boats.length === 0 ? [] : people.slice(next) };
}

/** What trips are worked out from, the same for all. */
interface TripContext {
  readonly forecast: SeasonForecast;
  readonly lakes: ReadonlyMap<string, GuideLake>;
  readonly box: RigBox;
  readonly plumb: PlumbTable;
  readonly units: UnitSystem;
  readonly patterns: readonly Pattern[];
  readonly timezone: string;
  readonly content: Pick<StandingContent, "cautions" | "packing">;
}

/** Lakes that are too far, or whose road opens too late for some of the days. */
function leftOut(trip: Trip, lakes: readonly GuideLake[]): LeftOut[] {
  const days = daysFromTo(trip.from, trip.to);
  return lakes.flatMap((lake) => {
    const { slug, name, access } = lake;
    const longest = trip.longestTravel_h;
    if (longest !== undefined && isTooFar(access?.travel_h, trip)) {
      const far = access?.travel_h ?? null;
      const limit = `the trip goes no farther than ${hoursText(longest)}`;
      return {
        slug,
        name,
        why: far === null ? `nobody wrote how far it is; ${limit}` : `${hoursText(far)} away; ${limit}`,
      };
    }
    const why = roadClosedReason(lakeAccess(lake), days);
    return why === undefined ? [] : { slug, name, why };
  });
}

/** A trip worked out: the chances of its lakes day by day, the pair to choose, and everything to take along. */
export function composeTrip(trip: Trip, context: TripContext): GuideTrip {
  const { forecast, lakes, box, plumb, units, patterns, timezone, content } = context;
  const considered = lakesOfTrip(trip, [...lakes.values()]);
  const near = considered.filter(({ access }) => !isTooFar(access?.travel_h, trip));
  const isNamed = trip.lakes.length > 0;
  const { from, to } = trip;
  const { choice, pair, fishable, shown, days } = tripChances(forecast, {
    from,
    to,
    lakes: near.map(lakeAccess),
    isNamed,
  });
  const pick = outingOf(choice.best, lakes);
  const dates = days.map(({ date }) => date);
  // Gear and flies are counted for the first and the second choice alone.
  const lakesToRig = (pair.length > 0 ? pair : shown).flatMap((slug) => lakes.get(slug) ?? []);
  const states = new Set<DayState>(
    pair.flatMap((slug) => {
      const lake = lakes.get(slug);
      return lake === undefined ? [] : likelyStates(lake, trip);
    }),
  );
  const iceOf = (lake: GuideLake): string | null => iceOnDaysText(lake, from, to);
  const named = [...new Set([...shown, ...fishable.map(({ slug }) => slug)])].flatMap(
    (slug) => lakes.get(slug) ?? [],
  );
  const toWarnOf = new Set<DayState | "always">([
    "always",
    ...named.flatMap((lake) => likelyStates(lake, trip)),
    ...(named.some((lake) => iceOf(lake) !== null) ? (["iced"] as const) : []),
  ]);
  const gear = tripGear(trip, lakesToRig, box, units);
  const nameOf = (slug: string): string => lakes.get(slug)?.name ?? slug;
  const canBeFished = fishable.map(({ slug, chance }) => ({ slug, name: nameOf(slug), chance }));
  const position = pick === null ? undefined : lakes.get(pick.slug)?.position;
  const { boats, ashore } = seatPeople(trip);
  const { people, notes, ...planned } = tripFacts.of(trip);
  return {
    slug: trip.slug,
    ...planned,
    notes,
    people,
    boats: boats.map((boat) => ({ ...boat })),
    ashore,
    days: days.map((day) => ({
      date: day.date,
      lakes: day.lakes.map(({ slug, good, open }) => ({ slug, name: nameOf(slug), good, open })),
      anyGood: day.anyGood,
      either: day.either,
    })),
    gear,
    box: boxPlan({ ...trip, days: dates, lakes: lakesToRig }, patterns),
    pick,
    why: pairWhy(choice, trip, lakes, canBeFished),
    next: outingOf(choice.next, lakes),
    fishable: canBeFished,
    out: leftOut(trip, considered),
    light: position === undefined ? [] : dates.map((date) => lightOn(date, position, timezone)),
    packing: packingList(
      content.packing,
      packingInputs(trip, {
        gear,
        states,
        box,
        plumb,
        units,
        aboard: seatsTaken(partySize(trip), trip.boats),
      }),
      new Map(content.cautions.map(({ id, short }) => [id, short])),
    ),
    cautions: content.cautions
      .filter(({ when }) => when.some((state) => toWarnOf.has(state)))
      .map(({ id }) => id),
    ice: named.flatMap((lake) => {
      const ice = iceOf(lake);
      return ice === null ? [] : [`${lake.name}, ${ice}`];
    }),
  };
}
