import { daysBetween } from "../model/calendar.ts";
import { partySize, type RigBox, type Trip } from "../model/club.ts";
import { type DayState, phaseName, stateOfPhase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { type BandToFish, leaderBoards } from "../rigs/boards.ts";
import { isUnderIndicator } from "../rigs/ways.ts";
import type { GuideLake, TripGear } from "./guide-schema.ts";
import type { PackingInputs, PackingQuantity } from "./packing.ts";
import { likelyStates } from "./trip-choice.ts";

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

/** Metres of each X size in the middle and tippet of all the leaders, and one tippet tied anew by each rod each day. */
function tippetMetres(gear: TripGear, box: RigBox, rods: number, rodDays: number): PackingQuantity[] {
  const metres = new Map<string, number>();
  const add = (size: string, length_m: number): void => {
    if (length_m > 0) metres.set(size, (metres.get(size) ?? 0) + length_m);
  };
  const boards = gear.boards.boards.map(({ leader, needed }) => ({
    name: leader.name,
    needed,
    sections: leader.sections,
  }));
  const named = new Set(
    gear.lakes.flatMap(({ phases }) =>
      phases.flatMap((plan) => plan.rigs.flatMap(({ leader }) => leader ?? [])),
    ),
  );
  const others = box.leaders
    .filter(({ name }) => named.has(name) && !boards.some((board) => board.name === name))
    .map(({ name, middle, tippet }) => ({
      name,
      needed: rods,
      sections: [
        { part: "middle", length_m: middle.length_m, size: `${middle.size}X` },
        { part: "tippet", length_m: tippet.length_m, size: `${tippet.size}X` },
      ],
    }));
  for (const { needed, sections } of [...boards, ...others])
    for (const { part, length_m, size } of sections) {
      if (part !== "taper") add(size, length_m * needed);
      if (part === "tippet") add(size, length_m * rodDays);
    }
  return [...metres]
    .sort(([a], [b]) => Number.parseFloat(a) - Number.parseFloat(b))
    .map(([name, units]) => ({ name, units }));
}

const inTheBox = (carried: number): string => `The club’s box holds ${carried}.`;

/** Shot and indicators that the lakes' shot tables ask for, in the box's order. */
function shotAndIndicators(lakes: readonly GuideLake[], box: RigBox, rods: number, rodDays: number) {
  const cells = lakes.flatMap(({ shot }) => shot.rows.flatMap((row) => row.cells));
  const most = new Map<string, number>();
  for (const { name, count } of cells.flatMap((cell) => cell.shot))
    most.set(name, Math.max(most.get(name) ?? 0, count));
  const sizes = new Set(cells.flatMap(({ indicator }) => indicator ?? []));
  return {
    shot: box.shot
      .filter(({ name }) => most.has(name))
      .map(({ name, carried }) => ({
        name,
        units: (most.get(name) ?? 0) * rodDays,
        note: inTheBox(carried),
      })),
    indicator: box.indicators
      .filter(({ name }) => sizes.has(name))
      .map(({ name, carried }) => ({ name, units: rods, note: inTheBox(carried) })),
  };
}

/** What a trip's packing list is counted from. */
export function packingInputs(
  trip: Trip,
  gear: TripGear,
  lakes: readonly GuideLake[],
  states: ReadonlySet<DayState>,
  box: RigBox,
): PackingInputs {
  const { rods } = trip;
  const days = daysBetween(trip.from, trip.to) + 1;
  const people = partySize(trip);
  const { boards } = gear.boards;
  return {
    once: {
      trip: 1,
      rod: rods,
      person: people,
      boat: trip.boats.length,
      rodDay: rods * days,
      personDay: people * days,
      leader: boards.reduce((sum, { needed }) => sum + needed, 0),
    },
    each: {
      board: boards.map(({ leader, needed, tie }) => ({
        name: leader.name,
        units: needed,
        note: tie === 0 ? "All tied." : `${needed - tie} on boards, tie ${tie}.`,
      })),
      tippetMetre: tippetMetres(gear, box, rods, rods * days),
      line: gear.lines.map((name) => ({ name, units: rods })),
      ...shotAndIndicators(lakes, box, rods, rods * days),
    },
    states,
    underIndicator: gear.lakes.some(({ phases }) =>
      phases.some((plan) => plan.rigs.some(({ way }) => isUnderIndicator(way))),
    ),
  };
}
