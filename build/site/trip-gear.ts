import type { TripGear } from "../../templates/trip-pages.tsx";
import type { Guide, GuideTrip } from "../guide/guide-schema.ts";
import { stateOfPhase } from "../model/phase.ts";

/** A phase's rig is carried when the lake has at least this chance of being in it on some day of the trip. */
const WORTH_CARRYING = 0.2;

const distinct = <T>(values: readonly T[]): T[] => [...new Set(values)];

/** The rigs, leaders, lines and flies for every phase that a trip's lakes may well be in on its days. */
export function tripGear(trip: GuideTrip, guide: Pick<Guide, "lakes">): TripGear {
  const slugs = trip.days[0]?.lakes.map(({ slug }) => slug) ?? [];
  const lakes = slugs.flatMap((slug) => {
    const lake = guide.lakes.find((candidate) => candidate.slug === slug);
    if (lake === undefined) return [];
    const days = lake.daily.filter(({ date }) => date >= trip.from && date <= trip.to);
    const plans = lake.plan.filter(
      ({ phase, rigs }) => rigs.length > 0 && days.some((day) => day[stateOfPhase(phase)] >= WORTH_CARRYING),
    );
    return plans.length === 0 ? [] : [{ slug, name: lake.name, phases: plans }];
  });
  const plans = lakes.flatMap(({ phases }) => phases);
  const rigs = plans.flatMap((plan) => plan.rigs);
  const flies = new Map(
    plans.flatMap((plan) => plan.flies.map(({ pattern, name }) => [pattern, name] as const)),
  );
  return {
    lakes,
    leaders: distinct(rigs.flatMap(({ leader }) => leader ?? [])),
    lines: distinct(rigs.flatMap(({ line }) => line ?? [])),
    flies: [...flies].map(([pattern, name]) => ({ pattern, name })),
  };
}
