import type { z } from "zod";
import type { CalendarDate } from "../../model/calendar.ts";
import type { IceOffRecord, Lake, LastGoodRecord, Report, TurnoverRecord } from "../../model/club.ts";
import type { Diagnostic } from "../../model/diagnostic.ts";
import type { Fault } from "../../model/fault.ts";
import type { iceOffRow, lastGoodRow, turnoverRow } from "../../model/fields/lake-fields.ts";
import { errorAt, warningAt } from "../problem.ts";
import { omitUndefined, type Row } from "../schema/read-record.ts";
import type { YamlDocument } from "../yaml/yaml-document.ts";
import {
  afterAsOf,
  futureSeason,
  type Moment,
  outOfSpring,
  type SeasonContext,
  secondRow,
  wrongSeason,
} from "./season-checks.ts";

type IceOffValue = z.output<typeof iceOffRow>;

interface KeyFault {
  readonly key: string;
  readonly fault: Fault;
}

const TWO_WAYS = "write “on: DAY”, or “after: DAY” for still iced and “by: DAY” for already open";

function shapeFault({ on, after, by }: IceOffValue): KeyFault | undefined {
  const isInterval = after !== undefined || by !== undefined;
  if (on === undefined && !isInterval)
    return {
      key: "season",
      fault: { code: "no-ice-off-date", message: "the row has no date", hint: TWO_WAYS },
    };
  if (on !== undefined && isInterval)
    return {
      key: after === undefined ? "by" : "after",
      fault: { code: "on-and-interval", message: "“on” stands beside “after” or “by”", hint: TWO_WAYS },
    };
  if (after !== undefined && by !== undefined && by <= after)
    return {
      key: "by",
      fault: {
        code: "by-before-after",
        message: `by ${by} is not later than after ${after}`,
        hint: "“after” is the last day seen iced, “by” the first day seen open: swap or correct them",
      },
    };
  return undefined;
}

/** What is wrong with a row that its schema accepts, by key. */
export function iceOffFaults(value: IceOffValue, { hemisphere, moment }: SeasonContext): KeyFault[] {
  const { season, on, after, by } = value;
  const future = futureSeason(season, moment);
  if (future !== undefined) return [{ key: "season", fault: future }];
  const dates = Object.entries(omitUndefined({ on, after, by })).flatMap(([key, date]) => {
    const fault = wrongSeason(key, date, season, hemisphere) ?? outOfSpring(key, date, season, hemisphere);
    return fault === undefined ? [] : [{ key, fault }];
  });
  const shape = shapeFault(value);
  return shape === undefined ? dates : [...dates, shape];
}

function toRecord({ season, on, after, by }: IceOffValue, where: IceOffRecord["where"]): IceOffRecord {
  return on === undefined ? { season, where, ...omitUndefined({ after, by }) } : { season, where, on };
}

/** The ice-off rows of one lake as records. Several rows of one season are kept, with a warning. */
export function iceOffRecords(
  rows: readonly Row<IceOffValue>[],
  doc: YamlDocument,
  context: SeasonContext,
  problems: Diagnostic[],
): IceOffRecord[] {
  const firstLines = new Map<number, number>();
  return rows.flatMap(({ value, path, where }) => {
    const faults = iceOffFaults(value, context);
    problems.push(...faults.map(({ key, fault }) => errorAt(doc.spot([...path, key]), fault)));
    if (faults.length > 0) return [];
    const unknown = afterAsOf(value.on ?? value.after ?? value.by, context.moment);
    if (unknown !== undefined) problems.push(warningAt(where, unknown));
    const firstLine = firstLines.get(value.season);
    if (firstLine === undefined) firstLines.set(value.season, where.line);
    else problems.push(warningAt(where, secondRow(value.season, firstLine, "the day in the middle is used")));
    return [toRecord(value, where)];
  });
}

/** The first day a record speaks of. */
const firstDay = (record: IceOffRecord): CalendarDate | undefined =>
  "on" in record ? record.on : (record.after ?? record.by);

/** The season in progress recorded in a lake's own file and reported as well. */
export function recordedTwice(
  lakes: readonly Lake[],
  reports: readonly Report[],
  moment: Moment,
): Diagnostic[] {
  const isKnown = (record: IceOffRecord): boolean => afterAsOf(firstDay(record), moment) === undefined;
  const seasonFile = `reports/${moment.season}.yaml`;
  const reported = new Set(
    reports
      .filter(({ ice, where }) => ice !== undefined && where.file === seasonFile)
      .map(({ lake }) => lake),
  );
  return lakes.flatMap(({ slug, iceOff }) => {
    const row = iceOff.find((record) => record.season === moment.season && isKnown(record));
    if (row === undefined || !reported.has(slug)) return [];
    return [
      warningAt(row.where, {
        code: "recorded-twice",
        message: `season ${moment.season} is still running, and this lake's ice is in ${seasonFile} too`,
        hint: "leave the season in progress to the reports; add its row when it is over",
      }),
    ];
  });
}

type TurnoverValue = z.output<typeof turnoverRow>;

function toBeforeFrom({ from, to }: TurnoverValue): Fault | undefined {
  return from <= to
    ? undefined
    : { code: "from-after-to", message: `to ${to} is before from ${from}`, hint: "swap or correct them" };
}

/** Turnover while the lake was still iced. */
function beforeIceOff({ season, from }: TurnoverValue, iceOff: readonly IceOffRecord[]): Fault | undefined {
  const iced = iceOff
    .filter((record) => record.season === season)
    .flatMap((record) => ("on" in record ? [record.on] : record.after === undefined ? [] : [record.after]));
  return iced.length === 0 || iced.some((date) => date < from)
    ? undefined
    : {
        code: "turnover-before-ice-off",
        message: `from ${from} is not later than the ice-off of season ${season}`,
        hint: "a lake can overturn under its ice, but what is recorded here is the murk after ice-off: check both dates; as it stands it does not count",
      };
}

function faultOf(
  value: TurnoverValue,
  { hemisphere, moment }: SeasonContext,
): { key: string; fault: Fault } | undefined {
  const checks: readonly { key: string; fault: Fault | undefined }[] = [
    { key: "season", fault: futureSeason(value.season, moment) },
    { key: "from", fault: wrongSeason("from", value.from, value.season, hemisphere) },
    { key: "to", fault: wrongSeason("to", value.to, value.season, hemisphere) ?? toBeforeFrom(value) },
  ];
  return checks.flatMap(({ key, fault }) => (fault === undefined ? [] : [{ key, fault }]))[0];
}

/** The turnover rows of one lake as records, the first of each season. */
export function turnoverRecords(
  rows: readonly Row<TurnoverValue>[],
  iceOff: readonly IceOffRecord[],
  doc: YamlDocument,
  context: SeasonContext,
  problems: Diagnostic[],
): TurnoverRecord[] {
  const bySeason = new Map<number, TurnoverRecord>();
  for (const { value, path, where } of rows) {
    const found = faultOf(value, context);
    if (found !== undefined) {
      problems.push(errorAt(doc.spot([...path, found.key]), found.fault));
      continue;
    }
    const first = bySeason.get(value.season);
    const early = beforeIceOff(value, iceOff);
    if (early !== undefined) problems.push(warningAt(doc.spot([...path, "from"]), early));
    const doubt =
      first === undefined
        ? afterAsOf(value.from, context.moment)
        : secondRow(value.season, first.where.line, "this one is not used");
    if (doubt !== undefined) problems.push(warningAt(where, doubt));
    if (first === undefined) bySeason.set(value.season, { ...value, where });
  }
  return [...bySeason.values()];
}

/** The last good days of one lake as records, the first of each season. */
export function lastGoodRecords(
  rows: readonly Row<z.output<typeof lastGoodRow>>[],
  doc: YamlDocument,
  { hemisphere, moment }: SeasonContext,
  problems: Diagnostic[],
): LastGoodRecord[] {
  const bySeason = new Map<number, LastGoodRecord>();
  for (const { value, path, where } of rows) {
    const { season, on } = value;
    const wrong = wrongSeason("on", on, season, hemisphere);
    const future = futureSeason(season, moment);
    if (future !== undefined) problems.push(errorAt(doc.spot([...path, "season"]), future));
    else if (wrong !== undefined) problems.push(errorAt(doc.spot([...path, "on"]), wrong));
    if (future !== undefined || wrong !== undefined) continue;
    const first = bySeason.get(season);
    const doubt =
      first === undefined
        ? afterAsOf(on, moment)
        : secondRow(season, first.where.line, "this one is not used");
    if (doubt !== undefined) problems.push(warningAt(where, doubt));
    if (first === undefined) bySeason.set(season, { season, on, where });
  }
  return [...bySeason.values()];
}
