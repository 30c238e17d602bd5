import { type CalendarDate, daysFromTo } from "../model/calendar.ts";
import { choosePair, isOpenOn, type LakeInReach, type PairChoice } from "../season/choose-pair.ts";
import type { SeasonForecast } from "../season/season.ts";

/** What the chances of a trip follow from, besides the forecast. */
interface TripNeeds {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  /** The lakes that are near enough, in the order they are considered. */
  readonly lakes: readonly LakeInReach[];
  /** True where the trip names its lakes: then all of them are shown. */
  readonly isNamed: boolean;
}

/** A trip's lakes and their chances. */
export interface TripChances {
  readonly choice: PairChoice;
  /** The pair to choose; one lake where there is no other, none where none can be reached. */
  readonly pair: readonly string[];
  /** The lakes a table shows. */
  readonly shown: readonly string[];
  readonly days: readonly {
    readonly date: CalendarDate;
    readonly lakes: readonly { readonly slug: string; readonly good: number; readonly open: boolean }[];
    /** Chance that at least one of the lakes shown is good. */
    readonly anyGood: number;
    /** The same of the pair. */
    readonly either: number;
  }[];
}

/** How many lakes a trip's table shows where the trip names none. */
const SHOWN = 5;

function chancesOf({ from, to, lakes, isNamed }: TripNeeds, forecast: SeasonForecast): TripChances {
  const days = daysFromTo(from, to);
  const choice = choosePair(forecast, lakes, days);
  const { best } = choice;
  const pair = best === null ? [] : [best.pick.slug, ...(best.fallback === null ? [] : [best.fallback.slug])];
  const mean = (slug: string): number => days.reduce((sum, date) => sum + forecast.good(slug, date), 0);
  const slugs = lakes.map(({ slug }) => slug);
  const others = (): string[] =>
    slugs
      .filter((slug) => !pair.includes(slug))
      .map((slug) => ({ slug, good: mean(slug) }))
      .sort((a, b) => b.good - a.good)
      .map(({ slug }) => slug);
  const shown = isNamed ? slugs : [...pair, ...others()].slice(0, SHOWN);
  const anyOf = (some: readonly string[], date: CalendarDate): number => {
    const open = lakes.filter((lake) => some.includes(lake.slug) && isOpenOn(lake, date));
    return open.length === 0
      ? 0
      : forecast.anyGood(
          open.map(({ slug }) => slug),
          date,
        );
  };
  return {
    choice,
    pair,
    shown,
    days: days.map((date) => ({
      date,
      lakes: lakes
        .filter(({ slug }) => shown.includes(slug))
        .map((lake) => ({
          slug: lake.slug,
          good: forecast.good(lake.slug, date),
          open: isOpenOn(lake, date),
        })),
      anyGood: anyOf(shown, date),
      either: anyOf(pair, date),
    })),
  };
}

/** The pair of lakes to choose for a trip, and the chances day by day. */
export const tripChances = (forecast: SeasonForecast, needs: TripNeeds): TripChances =>
  forecast.remember("chances of a trip", needs, (of) => chancesOf(of, forecast));
