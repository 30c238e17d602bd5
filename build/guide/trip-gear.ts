import { daysBetween } from "../model/calendar.ts";
import type { RigBox, Trip } from "../model/club.ts";
import { phaseName, stateOfPhase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { type BandToFish, leaderBoards } from "../rigs/boards.ts";
import { isUnderIndicator } from "../rigs/ways.ts";
import type { GuideLake, TripGear } from "./guide-schema.ts";

/** A phase's rigs are carried when the lake has at least this chance of being in it on some day of the trip. */
const WORTH_CARRYING = 0.2;

const distinct = <T>(values: readonly T[]): T[] => [...new Set(values)];

/** The phases a lake may well be in on a trip's days. */
const likelyPlans = ({ daily, plan }: GuideLake, { from, to }: Trip): GuideLake["plan"] => {
  const days = daily.filter(({ date }) => date >= from && date <= to);
  return plan.filter(({ phase }) => days.some((day) => day[stateOfPhase(phase)] >= WORTH_CARRYING));
};

/** What to build and carry for every phase that a trip's lakes may well be in on its days. */
export function tripGear(
  trip: Trip,
  tripLakes: readonly GuideLake[],
  box: RigBox,
  units: UnitSystem,
): TripGear {
  const lakes = tripLakes
    .map((lake) => ({ slug: lake.slug, name: lake.name, phases: likelyPlans(lake, trip) }))
    .filter(({ phases }) => phases.length > 0);
  const bands = lakes.flatMap(({ name, phases }) =>
    phases
      .filter(({ rigs }) => rigs.some(({ way }) => isUnderIndicator(way)))
      .map(({ phase, band }): BandToFish => ({ name: `${name}, ${phaseName(phase).toLowerCase()}`, band })),
  );
  const plans = lakes.flatMap(({ phases }) => phases);
  const flies = new Map(
    plans.flatMap((plan) => plan.flies.map(({ pattern, name }) => [pattern, name] as const)),
  );
  return {
    lakes,
    boards: leaderBoards(bands, box, { days: daysBetween(trip.from, trip.to) + 1, rods: trip.rods }, units),
    lines: distinct(plans.flatMap(({ rigs }) => rigs.flatMap(({ line }) => line ?? []))),
    flies: [...flies].map(([pattern, name]) => ({ pattern, name })),
  };
}
