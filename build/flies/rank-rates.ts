import type { Phase } from "../model/phase.ts";
import { pooled, shrunkenRate, type Tally } from "./catch-rates.ts";
import type { Outing } from "./catch-rates-outings.ts";

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
export interface PatternCatches {
  readonly here: Tally;
  readonly elsewhere: Tally;
  /** Its fish a rod-hour against the club's other patterns at the same places and times, shrunk towards 1; above 0. */
  readonly ratio: number;
}

export type PatternCatchesAt = (pattern: string, lake: string, phase: Phase) => PatternCatches;

type Place = string;
const placeOf = (lake: string, phase: Phase | null): Place => `${phase ?? "unknown"} ${lake}`;

const without = (all: Tally, part: Tally): Tally => ({
  fish: all.fish - part.fish,
  rodHours: Math.max(0, all.rodHours - part.rodHours),
});

const NOTHING: Tally = { fish: 0, rodHours: 0 };

const addTo = (tallies: Map<Place, Tally>, place: Place, tally: Tally): unknown =>
  tallies.set(place, pooled([tallies.get(place) ?? NOTHING, tally]));

/**
 * How each pattern did against the others: a gamma-Poisson model. A pattern's fish are held against what the club's other patterns
 * would have caught in the same hours at the same lake and phase, so that a fly is not praised for a good lake. Its ratio in the
 * whole club starts from 1; the ratio at one lake and phase starts from the one elsewhere.
 * More fish in the same hours always raise it, more hours with the same fish always lower it.
 */
export function gatherCatches(outings: readonly Outing[]): PatternCatchesAt {
  const club = pooled(outings);
  const places = new Map<Place, Tally>();
  for (const outing of outings) addTo(places, placeOf(outing.lake, outing.phase), outing);
  const patterns = new Map<string, { all: Tally; places: Map<Place, Tally> }>();
  for (const outing of outings) {
    const own = patterns.get(outing.pattern) ?? { all: NOTHING, places: new Map<Place, Tally>() };
    addTo(own.places, placeOf(outing.lake, outing.phase), outing);
    patterns.set(outing.pattern, { ...own, all: pooled([own.all, outing]) });
  }
  return (pattern, lake, phase) => {
    const own = patterns.get(pattern);
    if (own === undefined) return { here: NOTHING, elsewhere: NOTHING, ratio: 1 };
    const clubRate = shrunkenRate(USUAL_RATE, without(club, own.all));
    const expectedAt = (place: Place, mine: Tally): number =>
      mine.rodHours *
      shrunkenRate(
        { mean: clubRate, rodHours: PLACE_PRIOR_HOURS },
        without(places.get(place) ?? NOTHING, mine),
      );
    const place = placeOf(lake, phase);
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
