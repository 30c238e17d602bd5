import type { CalendarDate } from "../model/calendar.ts";
import { meanOf } from "./numbers.ts";
import type { SeasonForecast } from "./season.ts";

/** A lake that comes into question, and from when its road is open; null where it always is. */
export interface LakeInReach {
  readonly slug: string;
  readonly opens: CalendarDate | null;
}

/** A lake and the mean over the days of its chance of being good; a day before its road opens counts as no chance. */
interface Single {
  readonly slug: string;
  readonly good: number;
}

export interface LakePair {
  /** Of the two lakes the one more likely good by itself. */
  readonly pick: Single;
  /** Null where only one lake comes into question. */
  readonly fallback: Single | null;
  /** Mean over the days of the chance that at least one of the two is good that day. */
  readonly either: number;
}

export interface PairChoice {
  /** Null where no lake can be reached on any of the days. */
  readonly best: LakePair | null;
  /** The second best of all pairs; it may share a lake with the best. */
  readonly next: LakePair | null;
  /** The lake most likely good by itself. */
  readonly alone: Single | null;
  /** How many pairs were compared. */
  readonly pairs: number;
}

/** Pairs are made of no more lakes than this, those most likely good by themselves: 190 pairs. */
export const POOL = 20;

/** Chances nearer than this are one and the same; then the pair of the better lakes goes first. */
const SAME = 1e-9;
const rank = (either: number): number => Math.round(either / SAME);

/** True where a lake's road is open on a day. */
export const isOpenOn = ({ opens }: LakeInReach, date: CalendarDate): boolean =>
  opens === null || opens <= date;

/**
 * The lake to go to and the lake to fall back on: the pair with the best chance, averaged over the days, that at least
 * one of the two is good, the two sharing their region's season. All pairs of the {@link POOL} lakes most likely good
 * are compared, so the lake that is best alone need not be one of the two.
 */
export function choosePair(
  forecast: Pick<SeasonForecast, "good" | "anyGood">,
  lakes: readonly LakeInReach[],
  days: readonly CalendarDate[],
): PairChoice {
  const pool = lakes
    .filter((lake) => days.some((date) => isOpenOn(lake, date)))
    .map((lake) => ({
      lake,
      good: meanOf(days.map((date) => (isOpenOn(lake, date) ? forecast.good(lake.slug, date) : 0))),
    }))
    .sort((a, b) => b.good - a.good)
    .slice(0, POOL);
  const single = ({ lake, good }: (typeof pool)[number]): Single => ({ slug: lake.slug, good });
  const eitherOf = (two: readonly LakeInReach[]): number =>
    meanOf(
      days.map((date) => {
        const open = two.filter((lake) => isOpenOn(lake, date)).map(({ slug }) => slug);
        return open.length === 0 ? 0 : forecast.anyGood(open, date);
      }),
    );
  const pairs = pool
    .flatMap((a, i) =>
      pool
        .slice(i + 1)
        .map((b): LakePair => ({ pick: single(a), fallback: single(b), either: eitherOf([a.lake, b.lake]) })),
    )
    .sort((a, b) => rank(b.either) - rank(a.either));
  const first = pool[0] === undefined ? null : single(pool[0]);
  const only = first === null ? null : { pick: first, fallback: null, either: first.good };
  return { best: pairs[0] ?? only, next: pairs[1] ?? null, alone: first, pairs: pairs.length };
}
