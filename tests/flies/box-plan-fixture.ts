import type { BoxTrip } from "../../build/flies/box-plan.ts";
import type { BoxLake } from "../../build/flies/box-plan-demand.ts";
import type { BoxPattern } from "../../build/flies/box-plan-tying.ts";
import { addDays, daysFromTo } from "../../build/model/calendar.ts";
import { DAY_STATES, type DayState, type Phase } from "../../build/model/phase.ts";
import { day } from "../lake-fixture.ts";

const FIRST = day("2026-05-29");

export const pattern = (slug: string, change: Partial<BoxPattern> = {}): BoxPattern => ({
  slug,
  name: slug,
  sizes: [12, 14, 16],
  colours: ["black", "olive"],
  stock: [],
  dressing: [{ part: "hook", material: `${slug} hook` }],
  ...change,
});

/** A lake with the same chances every day from 29 May on for 20 days. */
export const lake = (
  name: string,
  chances: Partial<Record<DayState, number>>,
  lists: Partial<Record<Phase, readonly string[]>>,
): BoxLake => ({
  name,
  daily: daysFromTo(FIRST, addDays(FIRST, 19)).map((date) => ({
    date,
    ...(Object.fromEntries(DAY_STATES.map((state) => [state, chances[state] ?? 0])) as Record<
      DayState,
      number
    >),
  })),
  plan: (Object.entries(lists) as [Phase, readonly string[]][]).map(([phase, patterns]) => ({
    phase,
    flies: patterns.map((slug) => ({ pattern: slug })),
  })),
});

export const trip = (
  days: number,
  rods: number,
  lakes: readonly BoxLake[],
  flyLoss_rodDay?: number,
): BoxTrip => ({
  days: daysFromTo(FIRST, addDays(FIRST, days - 1)),
  rods,
  lakes,
  flyLoss_rodDay,
});
