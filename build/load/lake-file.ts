import type { z } from "zod";
import { type Hemisphere, hemisphereOf } from "../model/calendar.ts";
import { type Lake, type TurnoverRule, USUAL_TURNOVER } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { checkDepths, checkTurnoverRule } from "./depths.ts";
import { iceOffRecords } from "./ice-off.ts";
import { type iceOffRow, type LakeFields, lakeSchema, type turnoverRow } from "./lake-schema.ts";
import type { Moment } from "./moment.ts";
import { present } from "./present.ts";
import { type Row, readRecord, readRows } from "./read-record.ts";
import { turnoverRecords } from "./turnover.ts";
import { readYaml, type YamlDocument } from "./yaml-document.ts";

/** A lake file as far as it could be read, before the season is known. */
export interface LakeDraft {
  readonly slug: string;
  readonly doc: YamlDocument;
  readonly fields: LakeFields;
  readonly iceOff: readonly Row<z.output<typeof iceOffRow>>[];
  readonly turnover: readonly Row<z.output<typeof turnoverRow>>[];
  /** Undefined when the position could not be read. */
  readonly hemisphere: Hemisphere | undefined;
}

/** Reads one lake file; undefined when it is not YAML. */
export function readLake({ file, slug, text }: ClubFile, problems: Diagnostic[]): LakeDraft | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const fields = readRecord(lakeSchema, doc, problems, ["iceOff", "turnover"]);
  checkDepths(fields, doc, problems);
  checkTurnoverRule(fields, doc, problems);
  return {
    slug,
    doc,
    fields,
    iceOff: readRows(lakeSchema.shape.iceOff.unwrap(), ["iceOff"], doc, problems),
    turnover: readRows(lakeSchema.shape.turnover.unwrap(), ["turnover"], doc, problems),
    hemisphere: fields.position === undefined ? undefined : hemisphereOf(fields.position.lat),
  };
}

const turnoverRuleOf = (rule: LakeFields["turnoverRule"]): TurnoverRule => {
  if (rule === undefined) return USUAL_TURNOVER;
  return rule === "none" ? { turnsOver: false } : { turnsOver: true, ...rule };
};

const depthBandsOf = (bands: LakeFields["depthBands"]): Lake["depthBands"] =>
  Object.fromEntries(
    Object.entries(bands ?? {}).flatMap(([phase, band]) =>
      band === undefined ? [] : [[phase, { from_m: band.from, to_m: band.to }]],
    ),
  );

/** Checks what depends on the season, and makes the lake; undefined when its name or position is missing. */
export function finishLake(
  { slug, doc, fields, hemisphere, ...rows }: LakeDraft,
  moment: Moment | undefined,
  problems: Diagnostic[],
): Lake | undefined {
  const iceOff = iceOffRecords(rows.iceOff, doc, { hemisphere, moment }, problems);
  const turnover = turnoverRecords(rows.turnover, iceOff, doc, { hemisphere, moment }, problems);
  const { name, position, access, depth } = fields;
  if (name === undefined || position === undefined) return undefined;
  return {
    slug,
    name,
    position,
    ...present({
      elevation_m: fields.elevation,
      region: fields.region,
      area_ha: fields.area,
      maxDepth_m: depth?.max,
      meanDepth_m: depth?.mean,
      water: fields.water,
      summary: fields.summary,
      access: access && present({ text: access.text, opens: access.opens, travel_h: access.travel }),
      rules: fields.rules,
      notes: fields.notes,
    }),
    hazards: fields.hazards ?? [],
    depthBands: depthBandsOf(fields.depthBands),
    iceOff,
    turnover,
    turnoverRule: turnoverRuleOf(fields.turnoverRule),
  };
}
