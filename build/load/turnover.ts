import type { z } from "zod";
import type { IceOffRecord, TurnoverRecord } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { turnoverRow } from "./lake-schema.ts";
import { errorAt, type Fault, warningAt } from "./problem.ts";
import type { Row } from "./read-record.ts";
import { afterAsOf, futureSeason, type SeasonContext, secondRow, wrongSeason } from "./season-checks.ts";
import type { YamlDocument } from "./yaml-document.ts";

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
        hint: "a lake turns over after its ice has gone: correct one of the two",
      };
}

function faultOf(
  value: TurnoverValue,
  iceOff: readonly IceOffRecord[],
  { hemisphere, moment }: SeasonContext,
): { key: string; fault: Fault } | undefined {
  const checks: readonly { key: string; fault: Fault | undefined }[] = [
    { key: "season", fault: futureSeason(value.season, moment) },
    { key: "from", fault: wrongSeason("from", value.from, value.season, hemisphere) },
    { key: "to", fault: wrongSeason("to", value.to, value.season, hemisphere) ?? toBeforeFrom(value) },
    { key: "from", fault: beforeIceOff(value, iceOff) },
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
    const found = faultOf(value, iceOff, context);
    if (found !== undefined) {
      problems.push(errorAt(doc.spot([...path, found.key]), found.fault));
      continue;
    }
    const first = bySeason.get(value.season);
    const doubt =
      first === undefined
        ? afterAsOf(value.from, context.moment)
        : secondRow(value.season, first.where.line, "this one is not used");
    if (doubt !== undefined) problems.push(warningAt(where, doubt));
    if (first === undefined) bySeason.set(value.season, { ...value, where });
  }
  return [...bySeason.values()];
}
