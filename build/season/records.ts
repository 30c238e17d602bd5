import { median } from "simple-statistics";
import { type CalendarDate, type Hemisphere, hemisphereOf, seasonDay } from "../model/calendar.ts";
import type { IceOffDates, Lake } from "../model/club.ts";
import type { SourceSpot } from "../model/diagnostic.ts";

/** Something written, and where; absent where no message will point to it. */
export type Placed<T> = T & { readonly where?: SourceSpot };

/** When a lake opened in one season, day of season: `from` and `to` are equal when the day is known, otherwise infinite or the edges of an interval. */
export interface IceOffDays {
  readonly from: number;
  readonly to: number;
}

export const isExact = ({ from, to }: IceOffDays): boolean => from === to;

/** All of a lake that its past is read from. */
export interface PastLake extends Pick<Lake, "position" | "elevation_m" | "region"> {
  readonly iceOff: readonly IceOffDates[];
}

/** A lake's past without the places it was written at: they move with any edit of the lines above. */
export const pastOf = ({ position, elevation_m, region, iceOff }: PastLake): PastLake => ({
  position,
  ...(elevation_m === undefined ? {} : { elevation_m }),
  ...(region === undefined ? {} : { region }),
  iceOff: iceOff.map((record): IceOffDates => {
    const { where: _where, ...dates } = record as Placed<IceOffDates>;
    return dates;
  }),
});

/** Half a day: an ice-off "on" day 110 lies between 109.5 and 110.5 on the day scale. */
const HALF_DAY = 0.5;

/** The hemisphere of the lakes' mean latitude. */
export const hemisphereOfLakes = (lakes: readonly PastLake[]): Hemisphere =>
  hemisphereOf(lakes.reduce((sum, { position }) => sum + position.lat, 0) / Math.max(1, lakes.length));

/** A record as it was known on a day: what is dated later is left out; `undefined` when nothing is left. */
function knownBy(record: IceOffDates, asOf: CalendarDate): IceOffDates | undefined {
  if ("on" in record) return record.on <= asOf ? record : undefined;
  const { season, after, by } = record;
  const kept = {
    ...(after !== undefined && after <= asOf ? { after } : {}),
    ...(by !== undefined && by <= asOf ? { by } : {}),
  };
  return Object.keys(kept).length === 0 ? undefined : { season, ...kept };
}

function daysOf(record: IceOffDates, hemisphere: Hemisphere): IceOffDays {
  const day = (date: CalendarDate): number => seasonDay(date, record.season, hemisphere);
  if ("on" in record) return { from: day(record.on), to: day(record.on) };
  const from = record.after === undefined ? Number.NEGATIVE_INFINITY : day(record.after) + HALF_DAY;
  const to = record.by === undefined ? Number.POSITIVE_INFINITY : day(record.by) + HALF_DAY;
  const oneDay = to - from === 1;
  return oneDay ? { from: to - HALF_DAY, to: to - HALF_DAY } : { from, to };
}

/** Several rows of one season: the median of the known days, or else what all intervals allow, or else what any allows. */
function merged(rows: readonly IceOffDays[]): IceOffDays {
  const exact = rows.filter(isExact).map(({ from }) => from);
  if (exact.length > 0) {
    const middle = median(exact);
    return { from: middle, to: middle };
  }
  const [froms, tos] = [rows.map(({ from }) => from), rows.map(({ to }) => to)];
  const common = { from: Math.max(...froms), to: Math.min(...tos) };
  return common.from < common.to ? common : { from: Math.min(...froms), to: Math.max(...tos) };
}

/** A lake's ice-off in every season on record, as it was known on a day. */
export function iceOffBySeason(
  lake: PastLake,
  hemisphere: Hemisphere,
  asOf?: CalendarDate,
): ReadonlyMap<number, IceOffDays> {
  const bySeason = new Map<number, IceOffDays[]>();
  for (const record of lake.iceOff) {
    const known = asOf === undefined ? record : knownBy(record, asOf);
    if (known === undefined) continue;
    bySeason.set(known.season, [...(bySeason.get(known.season) ?? []), daysOf(known, hemisphere)]);
  }
  return new Map([...bySeason].map(([season, rows]) => [season, merged(rows)]));
}
