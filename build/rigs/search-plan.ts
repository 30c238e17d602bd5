/** A depth with a fly and a method, and the chance that it is the one the fish want today. */
export interface SearchCell {
  readonly chance: number;
}

/** A place the club names, and what to try there. */
export interface SearchPlace<Cell extends SearchCell> {
  readonly name: string;
  readonly cells: readonly Cell[];
}

/** Hours and minutes a search costs. */
export interface SearchTimes {
  readonly rods: number;
  readonly day_min: number;
  /** To change depth or fly: one rod stops. */
  readonly change_min: number;
  /** To go to another place: all stop. */
  readonly move_min: number;
  /** A cell that would get less is left out. */
  readonly least_min: number;
}

/** Two rods over four hours. Common practice, no source. */
export const USUAL_TIMES: SearchTimes = { rods: 2, day_min: 240, change_min: 3, move_min: 12, least_min: 20 };

/** One rod on one cell, in minutes from the start of the day. */
export interface SearchRung<Cell extends SearchCell> {
  readonly place: string;
  /** From 1. */
  readonly rod: number;
  readonly cell: Cell;
  readonly from_min: number;
  readonly to_min: number;
}

interface TimedCell<Cell> {
  readonly cell: Cell;
  readonly minutes: number;
}

interface TimedPlace<Cell> {
  readonly name: string;
  readonly cells: readonly TimedCell<Cell>[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Changes of depth or fly that a place costs. */
const changesAt = (cells: readonly unknown[], rods: number): number => Math.max(0, cells.length - rods);

/**
 * Minutes for each cell: rod-minutes left after moves and changes, shared in proportion to the roots of the chances.
 * A cell that would get too little is left out, the least likely first, of equals the later.
 */
export function shareMinutes<Cell extends SearchCell>(
  places: readonly SearchPlace<Cell>[],
  times: SearchTimes,
): TimedPlace<Cell>[] {
  const { rods, day_min, change_min, move_min, least_min } = times;
  let kept = places.filter(({ cells }) => cells.length > 0);
  for (;;) {
    const cells = kept.flatMap((place) => place.cells);
    const effort_min =
      rods * (day_min - move_min * (kept.length - 1)) -
      change_min * sum(kept.map((place) => changesAt(place.cells, rods)));
    const roots = sum(cells.map(({ chance }) => Math.sqrt(chance)));
    const minutesOf = ({ chance }: Cell): number => (effort_min * Math.sqrt(chance)) / roots;
    const least = cells.reduce<Cell | undefined>(
      (found, cell) => (found === undefined || cell.chance <= found.chance ? cell : found),
      undefined,
    );
    if (least === undefined) return [];
    if (cells.length === 1 || (effort_min > 0 && minutesOf(least) >= least_min))
      return kept.map((place) => ({
        name: place.name,
        cells: place.cells.map((cell) => ({ cell, minutes: minutesOf(cell) })),
      }));
    kept = kept
      .map((place) => ({ ...place, cells: place.cells.filter((cell) => cell !== least) }))
      .filter((place) => place.cells.length > 0);
  }
}

/** How long all rods stay at a place. */
const placeLasts_min = ({ cells }: TimedPlace<unknown>, { rods, change_min }: SearchTimes): number =>
  (sum(cells.map(({ minutes }) => minutes)) + change_min * changesAt(cells, rods)) / rods;

/** The rungs at one place, from its own start: each cell in falling chance to the rod that is free first. */
function rungsAt<Cell extends SearchCell>(place: TimedPlace<Cell>, times: SearchTimes): SearchRung<Cell>[] {
  const { rods, change_min } = times;
  const end_min = placeLasts_min(place, times);
  const cells = place.cells.toSorted((a, b) => b.cell.chance - a.cell.chance);
  const rods1 = Array.from({ length: rods }, (_, i) => i + 1);
  if (cells.length < rods)
    return rods1.flatMap((rod) => {
      const timed = cells[(rod - 1) % cells.length];
      return timed === undefined
        ? []
        : [{ place: place.name, rod, cell: timed.cell, from_min: 0, to_min: end_min }];
    });
  const queues = rods1.map((rod) => ({ rod, rungs: [] as SearchRung<Cell>[], free_min: 0 }));
  for (const { cell, minutes } of cells) {
    const queue = queues.reduce((first, one) => (one.free_min < first.free_min - 1e-9 ? one : first));
    const from_min = queue.free_min + (queue.rungs.length === 0 ? 0 : change_min);
    queue.free_min = from_min + minutes;
    queue.rungs.push({ place: place.name, rod: queue.rod, cell, from_min, to_min: queue.free_min });
  }
  return queues.flatMap(({ rungs }) =>
    rungs
      .map((rung, i) => (i === rungs.length - 1 ? { ...rung, to_min: end_min } : rung))
      .filter(({ from_min, to_min }) => to_min > from_min),
  );
}

/**
 * The order in which to try places, depths and flies, and when to leave each. The places with the most chance a minute
 * come first; at each, all rods stop together. The shares are a plain rule in place of Koopman's best effort, which
 * needs the rate of takes; by simulation it finds fish about as often.
 * @param places with chances that sum to at most 1
 */
export function searchPlan<Cell extends SearchCell>(
  places: readonly SearchPlace<Cell>[],
  times: SearchTimes,
): SearchRung<Cell>[] {
  const worth = (place: TimedPlace<Cell>): number =>
    sum(place.cells.map(({ cell }) => cell.chance)) / placeLasts_min(place, times);
  const inOrder = shareMinutes(places, times).sort((a, b) => worth(b) - worth(a));
  let start_min = 0;
  return inOrder.flatMap((place) => {
    const rungs = rungsAt(place, times).map((rung) => ({
      ...rung,
      from_min: rung.from_min + start_min,
      to_min: rung.to_min + start_min,
    }));
    start_min += placeLasts_min(place, times) + times.move_min;
    return rungs.sort((a, b) => a.from_min - b.from_min || a.rod - b.rod);
  });
}
