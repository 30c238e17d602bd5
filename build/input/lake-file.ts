import type { z } from "zod";
import { type Hemisphere, hemisphereOf } from "../model/calendar.ts";
import { type DayRange, type Lake, type TurnoverRule, USUAL_TURNOVER } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";
import { clubRecordIfWhole } from "../model/fields/field.ts";
import {
  type iceOffRow,
  lakeSchema,
  type lastGoodRow,
  type turnoverRow,
} from "../model/fields/lake-fields.ts";
import { iceOffRecords, lastGoodRecords, turnoverRecords } from "./checks/lake-records.ts";
import { oldPhaseWords } from "./checks/old-words.ts";
import type { Moment } from "./checks/season-checks.ts";
import type { ClubFile } from "./club-files.ts";
import { unshown } from "./page-file.ts";
import { errorAt } from "./problem.ts";
import { type Row, readRecord, readRows } from "./schema/read-record.ts";
import { readYaml, type YamlDocument } from "./yaml/yaml-document.ts";

/** A lake file's keys, as far as they could be read. */
type LakeFields = Partial<z.output<typeof lakeSchema>>;

/** "from" beyond "to" in a pair of depths, heights or spans. */
export const fromBeyondTo = (label: string, beyond: string): Fault => ({
  code: "from-after-to",
  message: `${label}: “from” is ${beyond} than “to”`,
  hint: "swap or correct them",
});

/** Checks a lake's depths and depth bands against each other. */
function checkDepths(fields: LakeFields, doc: YamlDocument, problems: Diagnostic[]): void {
  const { max, mean } = fields.depth ?? {};
  if (max !== undefined && mean !== undefined && mean > max)
    problems.push(
      errorAt(doc.spot(["depth", "mean"]), {
        code: "mean-above-max",
        message: "depth.mean is more than depth.max",
        hint: "“max” is the deepest place, “mean” the depth on average: swap or correct them",
      }),
    );
  for (const [i, { name, depths }] of (fields.places ?? []).entries())
    for (const [k, depth] of depths.entries())
      if (max !== undefined && depth > max)
        problems.push(
          errorAt(doc.spot(["places", i, "depths", k]), {
            code: "place-below-bottom",
            message: `places: “${name}” is deeper than the lake, depth.max`,
            hint: "correct the depth, or depth.max",
          }),
        );
  for (const [phase, band] of Object.entries(fields.depthBands ?? {})) {
    if (band === undefined) continue;
    const label = `depthBands.${phase}`;
    const where = doc.spot(["depthBands", phase, "to"]);
    if (band.from > band.to) problems.push(errorAt(where, fromBeyondTo(label, "deeper")));
    else if (max !== undefined && band.to > max)
      problems.push(
        errorAt(where, {
          code: "band-below-bottom",
          message: `${label}: “to” is deeper than the lake, depth.max`,
          hint: "correct the band, or depth.max",
        }),
      );
  }
}

/** Checks a club's own turnover rule: whole days, and ranges the right way round. */
function checkTurnoverRule(fields: LakeFields, doc: YamlDocument, problems: Diagnostic[]): void {
  const { turnoverRule } = fields;
  if (turnoverRule === undefined || turnoverRule === "none") return;
  for (const part of ["onset", "duration"] as const)
    problems.push(...dayRangeProblems(turnoverRule[part], ["turnoverRule", part], doc));
}

function dayRangeProblems({ from, to }: DayRange, path: readonly string[], doc: YamlDocument): Diagnostic[] {
  const parts = Object.entries({ from, to }).filter(([, days]) => !Number.isInteger(days));
  return [
    ...parts.map(([key, days]) =>
      errorAt(doc.spot([...path, key]), {
        code: "not-whole-days",
        message: `${[...path, key].join(".")}: ${days} days are not whole days`,
        hint: "write whole days, such as 8 days",
      }),
    ),
    ...(from > to ? [errorAt(doc.spot([...path, "to"]), fromBeyondTo(path.join("."), "more"))] : []),
  ];
}

/** A lake file as far as it could be read, before the season is known. */
export interface LakeDraft {
  readonly slug: string;
  readonly doc: YamlDocument;
  readonly fields: LakeFields;
  readonly iceOff: readonly Row<z.output<typeof iceOffRow>>[];
  readonly turnover: readonly Row<z.output<typeof turnoverRow>>[];
  readonly lastGood: readonly Row<z.output<typeof lastGoodRow>>[];
  /** Undefined when the position could not be read. */
  readonly hemisphere: Hemisphere | undefined;
}

/** Reads one lake file; undefined when it is not YAML. */
export function readLake({ file, slug, text }: ClubFile, problems: Diagnostic[]): LakeDraft | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const fields = readRecord(lakeSchema, doc, problems, ["iceOff", "turnover", "lastGood"]);
  problems.push(...oldPhaseWords(doc));
  if (fields.notes !== undefined) problems.push(...unshown(fields.notes, () => doc.spot(["notes"])));
  checkDepths(fields, doc, problems);
  checkTurnoverRule(fields, doc, problems);
  return {
    slug,
    doc,
    fields,
    iceOff: readRows(lakeSchema.shape.iceOff.unwrap(), ["iceOff"], doc, problems),
    turnover: readRows(lakeSchema.shape.turnover.unwrap(), ["turnover"], doc, problems),
    lastGood: readRows(lakeSchema.shape.lastGood.unwrap(), ["lastGood"], doc, problems),
    hemisphere: fields.position === undefined ? undefined : hemisphereOf(fields.position.lat),
  };
}

const turnoverRuleOf = (rule: LakeFields["turnoverRule"]): TurnoverRule => {
  if (rule === undefined) return USUAL_TURNOVER;
  return rule === "none" ? { turnsOver: false } : { turnsOver: true, ...rule };
};

/** Checks what depends on the season, and makes the lake; undefined when its name or position is missing. */
export function finishLake(
  { slug, doc, fields, hemisphere, ...rows }: LakeDraft,
  moment: Moment | undefined,
  problems: Diagnostic[],
): Lake | undefined {
  const iceOff = iceOffRecords(rows.iceOff, doc, { hemisphere, moment }, problems);
  const turnover = turnoverRecords(rows.turnover, iceOff, doc, { hemisphere, moment }, problems);
  const lastGood = lastGoodRecords(rows.lastGood, doc, { hemisphere, moment }, problems);
  const lake = clubRecordIfWhole(lakeSchema, fields);
  return (
    lake && { ...lake, slug, iceOff, turnover, lastGood, turnoverRule: turnoverRuleOf(fields.turnoverRule) }
  );
}
