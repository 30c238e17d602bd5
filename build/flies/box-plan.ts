import type { CalendarDate } from "../model/calendar.ts";
import { PHASES, type Phase, phaseName } from "../model/phase.ts";
import { rounded } from "../model/units.ts";
import {
  apportion,
  type BoxLake,
  type ListUse,
  type Losses,
  listUses,
  lossesOf,
  type PatternUse,
  patternUses,
} from "./box-plan-demand.ts";
import { type BoxPattern, divide, hasVarieties, materialsList, tyingList } from "./box-plan-tying.ts";
import type { BoxPlan, BoxRow } from "./flies-schema.ts";

/** A trip as far as its flies go. */
export interface BoxTrip {
  readonly days: readonly CalendarDate[];
  readonly rods: number;
  /** The first choice first, then the fallback, then the others. */
  readonly lakes: readonly BoxLake[];
  readonly flyLoss_rodDay?: number | undefined;
}

/** One row of the box before it has its number. */
type Row = Omit<BoxRow, "row">;

const whyText = ({ list, place }: PatternUse): string => {
  const where = `${list.lake}, ${phaseName(list.phase).toLowerCase()}`;
  return `${place === 0 ? "First choice" : `No. ${place + 1}`} at ${where}`;
};

/** The phase fished most first; phases fished alike in the order of the spring. */
function phasesByUse(lists: readonly ListUse[]): Phase[] {
  const use = (phase: Phase): number =>
    lists.filter((list) => list.phase === phase).reduce((sum, { use_rodDays }) => sum + use_rodDays, 0);
  return [...PHASES].sort((a, b) => use(b) - use(a));
}

/** In the order they are wanted: by the phase that calls for them most, then by use. */
function inBoxOrder(uses: readonly PatternUse[], lists: readonly ListUse[]): PatternUse[] {
  const phases = phasesByUse(lists);
  return [...uses].sort(
    (a, b) => phases.indexOf(a.list.phase) - phases.indexOf(b.list.phase) || b.use_rodDays - a.use_rodDays,
  );
}

const many = (count: number, one: string, more = `${one}s`): string =>
  `${rounded(count, 1)} ${count === 1 ? one : more}`;

function lossesWords(losses: Losses, rods: number, days: number, planned: number): string {
  if (planned === 0) return "No lake of the trip has a list of flies for its days: nothing is reckoned.";
  const { expected, covered, perRodDay } = losses;
  return [
    `${many(rods, "rod")} for ${many(days, "day")}, ${many(perRodDay, "fly", "flies")} lost a rod a day: ${rounded(expected)} on average.`,
    `Losses vary by chance (Poisson): ${covered} last nine trips in ten. With ${planned - covered} spares that makes ${planned}.`,
    "A fly in the club’s box counts here even if another trip wants it too: each trip stands alone.",
  ].join(" ");
}

/**
 * The flies to carry on a trip, by pattern, size and colour; what of them is to be tied, and from what.
 *
 * In all it carries what losses stay within on nine trips in ten (Poisson about rods × days × flies lost a rod a day),
 * and spares on top. The losses are shared among patterns by how much each is fished: the chance that a lake is the one
 * fished (`fishedShares`), times the chance of each of its phases on the day, times the pattern's place in that list.
 * With the order of the lakes held, more days or more rods never make the total smaller. Days on which no lake can be
 * in a phase that has a list count for nothing. Each trip stands alone: stock is not shared out between trips.
 */
export function boxPlan(trip: BoxTrip, patterns: readonly BoxPattern[]): BoxPlan {
  const bySlug = new Map(patterns.filter(hasVarieties).map((pattern) => [pattern.slug, pattern]));
  const lakes = trip.lakes.map((lake) => ({
    ...lake,
    plan: lake.plan.map((plan) => ({ ...plan, flies: plan.flies.filter((fly) => bySlug.has(fly.pattern)) })),
  }));
  const { lists, fishedDays } = listUses(trip.days, trip.rods, lakes);
  const losses = lossesOf(trip.rods, fishedDays, trip.flyLoss_rodDay);
  const uses = inBoxOrder(patternUses(lists, trip.rods), lists);
  const lost = apportion(
    uses.length === 0 ? 0 : losses.covered,
    uses.map(({ use_rodDays }) => use_rodDays),
  );
  const rows = uses
    .flatMap((use, i): Row[] => {
      const pattern = bySlug.get(use.pattern);
      if (pattern === undefined) return [];
      return divide(pattern, (lost[i] ?? 0) + use.spares).map(({ size, colour, have, carry }) => ({
        pattern: pattern.slug,
        name: pattern.name,
        size,
        colour,
        carry,
        have,
        tie: Math.max(0, carry - have),
        why: whyText(use),
      }));
    })
    .map((row, i): BoxRow => ({ row: i + 1, ...row }));
  const planned = rows.reduce((sum, { carry }) => sum + carry, 0);
  const tying = tyingList(rows, bySlug);
  return {
    rows,
    tying,
    materials: materialsList(tying),
    losses: {
      expected: losses.expected,
      planned,
      words: lossesWords(losses, trip.rods, fishedDays, planned),
    },
  };
}
