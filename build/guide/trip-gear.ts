import { daysBetween } from "../model/calendar.ts";
import type { RigBox, Trip } from "../model/club.ts";
import { phaseName, stateOfPhase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { type BandToFish, leaderBoards } from "../rigs/boards.ts";
import { isUnderIndicator } from "../rigs/ways.ts";
import type { GuideLake, TripGear } from "./guide-schema.ts";
import { likelyStates } from "./trip-why.ts";

const distinct = <T>(values: readonly T[]): T[] => [...new Set(values)];

/** The phases a lake may well be in on a trip's days. */
const likelyPlans = (lake: GuideLake, trip: Trip): GuideLake["plan"] => {
  const states = likelyStates(lake, trip);
  return lake.plan.filter(({ phase }) => states.includes(stateOfPhase(phase)));
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
