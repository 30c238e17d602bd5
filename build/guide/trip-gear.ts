import { daysBetween } from "../model/calendar.ts";
import { partySize, type RigBox, type Trip } from "../model/club.ts";
import { type DayState, phaseName, stateOfPhase } from "../model/phase.ts";
import { depthText, type UnitSystem } from "../model/units.ts";
import { type BandToFish, leaderBoards } from "../rigs/leaders/leader-boards.ts";
import { isUnderIndicator } from "../rigs/methods.ts";
import type { PlumbTable } from "../rigs/rig-schemas.ts";
import { anchorRope_m } from "../rigs/tables/at-anchor.ts";
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
    .map(([name, units]) => ({
      name,
      units,
      how: `${Math.ceil(units)} m: the leaders’ own, and a tippet tied anew by each rod each day`,
    }));
}

const inTheBox = (carried: number): string => `The club’s box holds ${carried}.`;

const times = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** The rows of the plumb table for the water that is fished: from the row above each band to the row below it. */
function rowsFished(gear: TripGear, { depths }: PlumbTable): PlumbTable["depths"] {
  const bands = gear.lakes.flatMap(({ phases }) =>
    phases.filter(({ rigs }) => rigs.some(({ way }) => isUnderIndicator(way))).map(({ band }) => band),
  );
  return depths.filter((_, i) =>
    bands.some(
      ({ from_m, to_m }) =>
        (depths[i + 1]?.depth_m ?? Number.POSITIVE_INFINITY) > from_m && (depths[i - 1]?.depth_m ?? 0) < to_m,
    ),
  );
}

/** Shot and indicators that those rows ask for, in the box's order. */
function shotAndIndicators(gear: TripGear, plumb: PlumbTable, box: RigBox, rods: number, days: number) {
  const rows = rowsFished(gear, plumb).flatMap((depth) => depth.rows);
  const most = new Map<string, number>();
  for (const { name, count } of rows.flatMap(({ cells }) => cells.flatMap(({ shot }) => shot)))
    most.set(name, Math.max(most.get(name) ?? 0, count));
  const sizes = new Set(rows.flatMap(({ indicator }) => indicator ?? []));
  return {
    shot: box.shot
      .filter(({ name }) => most.has(name))
      .map(({ name, carried }) => ({
        name,
        units: (most.get(name) ?? 0) * rods * days,
        how: `${most.get(name) ?? 0} at most on a rod, new each day: ${times(rods, "rod")}, ${times(days, "day")}`,
        note: inTheBox(carried),
      })),
    indicator: box.indicators
      .filter(({ name }) => sizes.has(name))
      .map(({ name, carried }) => ({
        name,
        units: rods,
        how: `2 for each of ${times(rods, "rod")}`,
        note: inTheBox(carried),
      })),
  };
}

/** What a trip's packing list is counted from. */
interface PackingSource {
  readonly gear: TripGear;
  readonly states: ReadonlySet<DayState>;
  readonly box: RigBox;
  readonly plumb: PlumbTable;
  readonly units: UnitSystem;
  /** People in each boat. */
  readonly aboard: readonly number[];
}

/** The longest anchor rope that the water fished asks for: its deepest end, in chop. */
function ropeText(gear: TripGear, box: RigBox, units: UnitSystem): string | null {
  const deepest_m = Math.max(
    ...gear.lakes.flatMap(({ phases }) => phases.map(({ band }) => band.to_m)),
    Number.NEGATIVE_INFINITY,
  );
  return Number.isFinite(deepest_m) ? depthText(anchorRope_m(deepest_m, "chop", box, units), units) : null;
}

/** What a trip's packing list is counted from: the first and the second choice of its lakes. */
export function packingInputs(
  trip: Trip,
  { gear, states, box, plumb, units, aboard }: PackingSource,
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
      rodDay: rods * days,
      personDay: people * days,
      leader: boards.reduce((sum, { needed }) => sum + needed, 0),
    },
    each: {
      board: boards.map(({ leader, needed, how, tie }) => ({
        name: leader.name,
        units: needed,
        how: how.replace(/^\d+: |\.$/g, ""),
        note: tie === 0 ? "All tied." : `${needed - tie} on boards, tie ${tie}.`,
      })),
      tippetMetre: tippetMetres(gear, box, rods, rods * days),
      line: gear.lines.map((name) => ({ name, units: rods, how: `1 for every 2 of ${times(rods, "rod")}` })),
      ...shotAndIndicators(gear, plumb, box, rods, days),
    },
    states,
    underIndicator: gear.lakes.some(({ phases }) =>
      phases.some((plan) => plan.rigs.some(({ way }) => isUnderIndicator(way))),
    ),
    boats: trip.boats.map(({ kind }, i) => ({ kind, aboard: aboard[i] ?? 0 })),
    rope: ropeText(gear, box, units),
  };
}
