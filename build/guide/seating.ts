import type { Boat, Trip } from "../model/club.ts";

export interface Seating {
  readonly boats: readonly (Boat & { readonly aboard: string[] })[];
  /** For whom no boat has a seat; empty on a trip without boats. */
  readonly ashore: string[];
}

/** Seats people boat by boat in the order they are named, as evenly as the seats allow. */
export function seatPeople({ people, boats }: Pick<Trip, "people" | "boats">): Seating {
  const taken = boats.map(() => 0);
  for (const _ of people) {
    const free = boats
      .map(({ seats }, i) => ({ i, taken: taken[i] ?? 0, seats }))
      .filter((boat) => boat.taken < boat.seats)
      .sort((a, b) => a.taken - b.taken)[0];
    if (free !== undefined) taken[free.i] = free.taken + 1;
  }
  let next = 0;
  const seated = boats.map((boat, i) => {
    const aboard = people.slice(next, next + (taken[i] ?? 0));
    next += aboard.length;
    return { ...boat, aboard };
  });
  return { boats: seated, ashore: boats.length === 0 ? [] : people.slice(next) };
}
