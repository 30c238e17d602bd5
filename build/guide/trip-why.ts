import { dayRange } from "../model/calendar.ts";
import { DAY_STATES, type DayState, STATE_WORDS } from "../model/phase.ts";
import { chanceText } from "../model/units.ts";
import type { PairChoice } from "../season/choose-pair.ts";
import type { GuideLake } from "./guide-schema.ts";

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
      ? [`${nameOf(fallback.slug)} is only the next of the others: none is likely to be good.`]
      : []),
    ...(alone.slug === pick.slug
      ? []
      : [
          `${nameOf(alone.slug)} alone is likelier, ${chanceText(alone.good)}, but no pair with it does better: lakes that share a spring fail together.`,
        ]),
  ];
}
