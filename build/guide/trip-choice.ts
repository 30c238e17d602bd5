import { type CalendarDate, dayRange, daysFromTo } from "../model/calendar.ts";
import { DAY_STATES, type DayState, STATE_WORDS } from "../model/phase.ts";
import { chanceText } from "../model/units.ts";
import { choosePair, isOpenOn, type LakeInReach, type PairChoice } from "../season/choose-pair.ts";
import type { SeasonForecast } from "../season/season.ts";
import type { GuideLake, GuideTrip } from "./guide-schema.ts";
import { fishableText } from "./trip-words.ts";
import { fishableLakes } from "./when.ts";

/** What the chances of a trip follow from, besides the forecast. */
interface TripInputs {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  /** The lakes that are near enough, in the order they are considered. */
  readonly lakes: readonly LakeInReach[];
  /** True where the trip names its lakes: then all of them are shown. */
  readonly isNamed: boolean;
}

/** A trip's lakes and their chances. */
interface TripChances {
  readonly choice: PairChoice;
  /** The pair to choose; one lake where there is no other, none where none can be reached. */
  readonly pair: readonly string[];
  /** The lakes most likely fishable: good, or in their later weeks. */
  readonly fishable: readonly { readonly slug: string; readonly chance: number }[];
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

function chancesOf({ from, to, lakes, isNamed }: TripInputs, forecast: SeasonForecast): TripChances {
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
    fishable: fishableLakes(days, forecast, lakes),
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
export const tripChances = (forecast: SeasonForecast, needs: TripInputs): TripChances =>
  forecast.memoize("chances of a trip", needs, (of) => chancesOf(of, forecast));

interface Days {
  readonly from: GuideLake["daily"][number]["date"];
  readonly to: GuideLake["daily"][number]["date"];
}

/** A state is worth rigging for and warning of when it has at least this chance on some day of a trip. */
const MAY_WELL_BE = 0.2;

/** Below this chance a fallback is named, and said to be none. */
const LIKELY = 0.1;

/** The days of a lake's forecast that a trip covers. */
const tripDaily = ({ daily }: GuideLake, { from, to }: Days): GuideLake["daily"] =>
  daily.filter(({ date }) => date >= from && date <= to);

/** The states that a lake may well be in on a trip's days. */
export function likelyStates(lake: GuideLake, days: Days): DayState[] {
  const rows = tripDaily(lake, days);
  return DAY_STATES.filter((state) => rows.some((row) => row[state] >= MAY_WELL_BE));
}

/** "Quern is most likely in turnover: 55 %, mean over the days." */
function stateText(lake: GuideLake, days: Days): string | undefined {
  const rows = tripDaily(lake, days);
  const chances = DAY_STATES.map((state) => ({
    state,
    chance: rows.reduce((sum, row) => sum + row[state], 0) / rows.length,
  }));
  const [first] = chances.sort((a, b) => b.chance - a.chance);
  if (first === undefined || rows.length === 0) return undefined;
  return `${lake.name} on ${dayRange(days.from, days.to)}: most likely ${STATE_WORDS[first.state].name.toLowerCase()}, ${chanceText(first.chance)}.`;
}

/** Why a pair was chosen, a sentence each; empty where there was nothing to choose. */
export function pairWhy(
  { best, alone, pairs }: PairChoice,
  days: Days,
  lakes: ReadonlyMap<string, GuideLake>,
  fishable: GuideTrip["fishable"],
): string[] {
  if (best === null || alone === null) return [];
  const { pick, fallback, either } = best;
  const nameOf = (slug: string): string => lakes.get(slug)?.name ?? slug;
  const states = [pick.slug, ...(fallback === null ? [] : [fallback.slug])].flatMap((slug) => {
    const lake = lakes.get(slug);
    return (lake === undefined ? undefined : stateText(lake, days)) ?? [];
  });
  if (fallback === null) return [...states, "It is the only lake that can be reached."];
  const chances = `one of the two is good with ${chanceText(either)}, ${nameOf(pick.slug)} alone with ${chanceText(pick.good)}`;
  return [
    ...states,
    pairs === 1
      ? `They are the only two that can be reached: ${chances}.`
      : `Of ${pairs} pairs this one most likely holds a good lake: ${chances}.`,
    ...(fallback.good < LIKELY
      ? [
          `${nameOf(fallback.slug)} is only the next of the others: none is likely to be good.${fishable.length === 0 ? "" : ` ${fishableText(fishable)}`}`,
        ]
      : []),
    ...(alone.slug === pick.slug
      ? []
      : [
          `${nameOf(alone.slug)} alone is likelier, ${chanceText(alone.good)}, but no pair with it does better: lakes that share a spring fail together.`,
        ]),
  ];
}
