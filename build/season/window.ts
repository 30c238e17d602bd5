import type { Spring } from "./after-ice/spring.ts";
import { dayBy } from "./after-ice/states.ts";

/** Days of season, both ends included. */
export interface DayWindow {
  readonly from: number;
  readonly to: number;
}

/** Room before the first lake may open and after the last best weeks end. */
const ROOM_DAYS = 7;
/** The longest table a page can show. */
const LONGEST_DAYS = 200;
/** What counts as a real chance: first one in fifty; where that makes the window too long, one in ten. */
const REAL_CHANCES = [0.02, 0.1];

const lengthOf = ({ from, to }: DayWindow): number => to - from + 1;

/** The days common to all lakes' tables; it holds `today` unless that would make it longer than 200 days. */
export function windowOf(springs: readonly Spring[], today: number): DayWindow {
  if (springs.length === 0) return { from: today, to: today };
  const windows = REAL_CHANCES.map((chance) => ({
    from:
      springs.reduce((day, spring) => Math.min(day, dayBy(spring, "iceOff", chance)), Infinity) - ROOM_DAYS,
    to:
      springs.reduce((day, spring) => Math.max(day, dayBy(spring, "later", 1 - chance)), -Infinity) -
      1 +
      ROOM_DAYS,
  }));
  const widest = windows.find((window) => lengthOf(window) <= LONGEST_DAYS) ??
    windows.at(-1) ?? { from: today, to: today };
  const withToday = { from: Math.min(widest.from, today), to: Math.max(widest.to, today) };
  if (lengthOf(withToday) <= LONGEST_DAYS) return withToday;
  return { from: widest.from, to: Math.min(widest.to, widest.from + LONGEST_DAYS - 1) };
}
