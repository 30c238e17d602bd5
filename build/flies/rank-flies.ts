import type { Food, Method, Pattern, WaterColour } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { power } from "../model/power.ts";
import { catchText, rounded } from "../model/units.ts";
import { type Outing, pooled, shrunkenRate, type Tally } from "./catch-rates.ts";
import {
  type DietDistribution,
  dietDistribution,
  EVEN_SHARE,
  expectedShare,
  type FoodWeights,
  type PhaseDiet,
} from "./diet.ts";

/** A pattern that suits a lake in a phase, and what the club's own entry says for it there. */
interface SuitedFly {
  readonly pattern: Pattern;
  readonly way: Method;
  /** The lake's water when the pattern is tied for it; null when it is tied for any. */
  readonly tiedFor: WaterColour | null;
  /** Flies of it in the box. */
  readonly stock: number;
}

const stockOf = (pattern: Pattern): number => pattern.stock.reduce((sum, { count }) => sum + count, 0);

const suits = (pattern: Pattern, water: WaterColour | undefined): boolean =>
  water === undefined || pattern.waters.length === 0 || pattern.waters.includes(water);

/**
 * The patterns that suit one phase of one lake, in the club's own order: by the ranks it wrote; without them as its entries say, those tied
 * for the water's colour first (scuds take the colour of their lake), then those fished the way the phase is fished first, then
 * those in the box; then by file name. Common practice, no source.
 * @param ways how the phase is fished, first choice first
 */
export function chooseFlies(
  patterns: readonly Pattern[],
  phase: Phase,
  ways: readonly Method[],
  water: WaterColour | undefined,
): SuitedFly[] {
  return patterns
    .filter((pattern) => pattern.phases.includes(phase) && suits(pattern, water))
    .flatMap((pattern) => {
      const way = ways.find((candidate) => pattern.ways.includes(candidate));
      if (way === undefined) return [];
      const tiedFor = water !== undefined && pattern.waters.includes(water) ? water : null;
      return [
        {
          fly: { pattern, way, tiedFor, stock: stockOf(pattern) },
          rank: pattern.rank ?? Number.MAX_SAFE_INTEGER,
          wayRank: ways.indexOf(way),
        },
      ];
    })
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        Number(b.fly.tiedFor !== null) - Number(a.fly.tiedFor !== null) ||
        a.wayRank - b.wayRank ||
        Number(b.fly.stock > 0) - Number(a.fly.stock > 0),
    )
    .map(({ fly }) => fly);
}

/** Fish a rod-hour before the club has told of any. Only a start: its weight is ten rod-hours. Our judgement, no source. */
const USUAL_RATE = { mean: 0.5, rodHours: 10 };
/** What the club's rate weighs against the rate of one lake in one phase, rod-hours. Our judgement, no source. */
const PLACE_PRIOR_HOURS = 10;
/**
 * Weight of "as good as any other" for a pattern in the whole club, and of the whole club for one lake and phase, both in fish that were
 * to be expected. The first is the greater, so that a day elsewhere never moves a list more than the same day here. Our
 * judgement, no source.
 */
const EQUAL_FISH = 6;
const CLUB_FISH = 3;

/** What one pattern caught: in one phase of one lake, and everywhere and whenever else. */
interface PatternCatches {
  readonly here: Tally;
  readonly elsewhere: Tally;
  /** Its fish a rod-hour against the club's other patterns at the same places and times, shrunk towards 1; above 0. */
  readonly ratio: number;
}

type PatternCatchesAt = (pattern: string, lake: string, phase: Phase) => PatternCatches;

type LakePhaseKey = string;
const lakePhaseKey = (lake: string, phase: Phase | null): LakePhaseKey => `${phase ?? "unknown"} ${lake}`;

const without = (all: Tally, part: Tally): Tally => ({
  fish: all.fish - part.fish,
  rodHours: Math.max(0, all.rodHours - part.rodHours),
});

const NOTHING: Tally = { fish: 0, rodHours: 0 };

const addTo = (tallies: Map<LakePhaseKey, Tally>, place: LakePhaseKey, tally: Tally): unknown =>
  tallies.set(place, pooled([tallies.get(place) ?? NOTHING, tally]));

/**
 * How each pattern did against the others: a gamma-Poisson model. A pattern's fish are held against what the club's other patterns
 * would have caught in the same hours at the same lake and phase, so that a fly is not praised for a good lake. Its ratio in the
 * whole club starts from 1; the ratio at one lake and phase starts from the one elsewhere.
 * More fish in the same hours always raise it, more hours with the same fish always lower it.
 */
export function gatherCatches(outings: readonly Outing[]): PatternCatchesAt {
  const club = pooled(outings);
  const places = new Map<LakePhaseKey, Tally>();
  for (const outing of outings) addTo(places, lakePhaseKey(outing.lake, outing.phase), outing);
  const patterns = new Map<string, { all: Tally; places: Map<LakePhaseKey, Tally> }>();
  for (const outing of outings) {
    const own = patterns.get(outing.pattern) ?? { all: NOTHING, places: new Map<LakePhaseKey, Tally>() };
    addTo(own.places, lakePhaseKey(outing.lake, outing.phase), outing);
    patterns.set(outing.pattern, { ...own, all: pooled([own.all, outing]) });
  }
  return (pattern, lake, phase) => {
    const own = patterns.get(pattern);
    if (own === undefined) return { here: NOTHING, elsewhere: NOTHING, ratio: 1 };
    const clubRate = shrunkenRate(USUAL_RATE, without(club, own.all));
    const expectedAt = (place: LakePhaseKey, mine: Tally): number =>
      mine.rodHours *
      shrunkenRate(
        { mean: clubRate, rodHours: PLACE_PRIOR_HOURS },
        without(places.get(place) ?? NOTHING, mine),
      );
    const place = lakePhaseKey(lake, phase);
    const here = own.places.get(place) ?? NOTHING;
    const expectedHere = expectedAt(place, here);
    const expectedElsewhere = [...own.places].reduce(
      (sum, [other, mine]) => (other === place ? sum : sum + expectedAt(other, mine)),
      0,
    );
    const elsewhere = without(own.all, here);
    const clubRatio = (EQUAL_FISH + elsewhere.fish) / (EQUAL_FISH + expectedElsewhere);
    return { here, elsewhere, ratio: (CLUB_FISH * clubRatio + here.fish) / (CLUB_FISH + expectedHere) };
  };
}

/** What members' reports say about flies. */
export interface FlyEvidence {
  dietAt(lake: string, phase: Phase): PhaseDiet;
  readonly catchesAt: PatternCatchesAt;
}

/** A fly in its place on a list, with what put it there. */
interface RankedFly extends SuitedFly {
  /** Expected catch, relative to the club's first choice with nothing reported. */
  readonly score: number;
  readonly catches: PatternCatches;
}

/** Each place down the club's own order starts a tenth lower than the one above it. Our judgement, no source. */
const NEXT_PLACE = 0.9;
/** Share of takes for what the fish are eating; the others do not ask. Our judgement, no source. */
const TAKES_FOR_FOOD = 0.5;
/** Scores this close are equal: the order of adding must not decide. */
const DIGITS = 9;

/**
 * Takes on a fly for a food, relative to what they would be if fish ate every food alike: 0.5 for a food they never eat, 1 for one of
 * average share, 6 for one they eat alone. A fly that imitates nothing keeps 1.
 */
export const dietFactor = (law: DietDistribution, food: Food): number =>
  food === "nothing in particular"
    ? 1
    : 1 - TAKES_FOR_FOOD + (TAKES_FOR_FOOD * expectedShare(law, food)) / EVEN_SHARE;

/**
 * The flies of one lake and phase, best first: place in the club's own order x what the fish eat x how the pattern catches. With no
 * reports the last two are 1 for every fly, and the order stays the club's own.
 * @param flies in the club's own order
 */
export function rankFlies(
  flies: readonly SuitedFly[],
  lake: string,
  phase: Phase,
  { dietAt, catchesAt }: FlyEvidence,
): RankedFly[] {
  const law = dietDistribution(dietAt(lake, phase));
  return flies
    .map((fly, place) => {
      const catches = catchesAt(fly.pattern.slug, lake, phase);
      const score = power(NEXT_PLACE, place) * dietFactor(law, fly.pattern.imitates) * catches.ratio;
      return { ...fly, catches, score: Number(score.toFixed(DIGITS)) };
    })
    .sort((a, b) => b.score - a.score);
}

const WATER_WORDS: Readonly<Record<WaterColour, string>> = {
  marl: "pale marl water",
  clear: "clear water",
  green: "green water",
  tea: "tea-coloured water",
};

const lakesText = (lakes: number): string => (lakes === 1 ? "1 other lake" : `${lakes} other lakes`);

function foodText({ pattern: { imitates } }: RankedFly, { fish, weights, elsewhere }: PhaseDiet): string {
  if (imitates === "nothing in particular") return "imitates nothing in particular";
  const eaten = ({ byFood, all }: FoodWeights, whose: string): string => {
    const share = (byFood.get(imitates) ?? 0) / all;
    return share === 0
      ? `for ${imitates}: none in ${whose}`
      : `for ${imitates}: ${rounded(100 * share)} % of what ${whose} had eaten`;
  };
  if (fish > 0) return eaten(weights, `${fish} fish here`);
  if (elsewhere.fish > 0)
    return eaten(elsewhere.weights, `${elsewhere.fish} fish at ${lakesText(elsewhere.lakes)}`);
  return `for ${imitates}`;
}

function caughtText({ catches: { here, elsewhere } }: RankedFly): string[] {
  if (here.rodHours > 0) return [catchText(here)];
  return elsewhere.rodHours > 0 ? [`${catchText(elsewhere)} at other places or times`] : [];
}

/** One line: why a fly stands in its place. Shares are of food weighed by fish, as told; not yet shrunk. */
export const whyFly = (fly: RankedFly, diet: PhaseDiet): string =>
  [
    foodText(fly, diet),
    ...caughtText(fly),
    fly.tiedFor === null ? "any water" : `tied for ${WATER_WORDS[fly.tiedFor]}`,
    fly.stock > 0 ? `${fly.stock} in the box` : "none in the box",
  ].join("; ");
