import { type CalendarDate, weekdayDayMonth } from "../model/calendar.ts";
import { isOpenOn, type LakeInReach, type LakePair } from "../season/choose-pair.ts";
import type { GuideLake } from "./guide-schema.ts";
import type { Outing } from "./when-schema.ts";

/** A lake as far as it matters for choosing. */
export const inReach = ({ slug, access }: GuideLake): LakeInReach => ({ slug, opens: access?.opens ?? null });

/** A pair of lakes with their names. */
export function outingOf(
  pair: LakePair | null,
  lakes: ReadonlyMap<string, Pick<GuideLake, "name">>,
): Outing | null {
  if (pair === null) return null;
  const named = (single: LakePair["pick"]) => ({
    ...single,
    name: lakes.get(single.slug)?.name ?? single.slug,
  });
  return {
    ...named(pair.pick),
    fallback: pair.fallback === null ? null : named(pair.fallback),
    either: pair.either,
  };
}

/** Why a lake does not count on some or all of the days; undefined when its road is open. */
export function closedWhy(lake: LakeInReach, days: readonly CalendarDate[]): string | undefined {
  const { opens } = lake;
  if (opens === null || days.every((date) => isOpenOn(lake, date))) return undefined;
  const day = weekdayDayMonth(opens);
  return days.some((date) => isOpenOn(lake, date))
    ? `its road opens on ${day}; the days before do not count`
    : `its road opens on ${day}`;
}
