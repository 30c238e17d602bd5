import { addDays, type CalendarDate, weekendFrom } from "../model/calendar.ts";
import { GOOD_STATES } from "../model/phase.ts";
import type { Board, GuideLake } from "./guide-schema.ts";

type GroupId = Board["groups"][number]["id"];

interface Row {
  readonly lake: GuideLake;
  readonly weekend: number | null;
}

/** A lake is worth the drive on a weekend when it is more likely good than not. */
const WORTH_THE_DRIVE = 0.5;
const SOON_DAYS = 14;

/** Mean chance, over the days, that the lake is good; null when the guide does not cover them. */
function goodOver(lake: GuideLake, days: readonly CalendarDate[]): number | null {
  const rows = lake.daily.filter(({ date }) => days.includes(date));
  if (rows.length === 0) return null;
  const good = rows.map((row) => GOOD_STATES.reduce((sum, state) => sum + row[state], 0));
  return Math.min(1, good.reduce((sum, chance) => sum + chance, 0) / rows.length);
}

function groupOf({ lake, weekend }: Row, soonUntil: CalendarDate): GroupId {
  if (weekend !== null && weekend >= WORTH_THE_DRIVE) return "weekend";
  if (lake.next === null) return "past";
  return lake.next.from.p50 <= soonUntil ? "soon" : "later";
}

const nextDay = ({ lake }: Row): string => lake.next?.from.p50 ?? lake.iceOff.p50;

/** Lakes to go to this weekend first, the likeliest on top; then those that come right soonest; then those past. */
export function arrangeBoard(lakes: readonly GuideLake[], asOf: CalendarDate): Board {
  const weekend = weekendFrom(asOf);
  const soonUntil = addDays(asOf, SOON_DAYS);
  const rows = lakes.map((lake) => ({ lake, weekend: goodOver(lake, weekend) }));
  const groups = (["weekend", "soon", "later", "past"] as const).map((id) => ({
    id,
    lakes: rows
      .filter((row) => groupOf(row, soonUntil) === id)
      .sort(
        (a, b) =>
          (id === "weekend" ? (b.weekend ?? 0) - (a.weekend ?? 0) : 0) ||
          (nextDay(a) < nextDay(b) ? -1 : nextDay(a) > nextDay(b) ? 1 : 0) ||
          (b.weekend ?? 0) - (a.weekend ?? 0),
      )
      .map((row) => ({ slug: row.lake.slug, weekend: row.weekend })),
  }));
  return { weekend, groups: groups.filter((group) => group.lakes.length > 0) };
}
