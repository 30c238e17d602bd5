import { readFile } from "node:fs/promises";
import type { RigBox } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { fromBeyondTo } from "./depths.ts";
import { present } from "./present.ts";
import { errorAt } from "./problem.ts";
import { quoted } from "./quote.ts";
import type { ReadAgain } from "./read-again.ts";
import { readRecord, readRows } from "./read-record.ts";
import { rigsSchema, SHOT_DENSITY_KGM3 } from "./rigs-schema.ts";
import { readYaml, type YamlDocument } from "./yaml-document.ts";

const DEFAULTS = new URL("../../content/rig-defaults.yaml", import.meta.url);
const { shape } = rigsSchema;
const LISTS = ["leaders", "lines", "shot", "indicators"] as const;

type Lists = Pick<RigBox, (typeof LISTS)[number]>;

function readLeaders(doc: YamlDocument, problems: Diagnostic[]): Lists["leaders"] {
  const part = ({ length, size }: { length: number; size: number }) => ({ length_m: length, size });
  return readRows(shape.leaders.unwrap(), ["leaders"], doc, problems).map(({ value, where }) => ({
    name: value.name,
    taper: part(value.taper),
    middle: part(value.middle),
    tippet: part(value.tippet),
    tied: value.tied ?? 0,
    where,
  }));
}

function readLines(doc: YamlDocument, problems: Diagnostic[]): Lists["lines"] {
  return readRows(shape.lines.unwrap(), ["lines"], doc, problems).map(({ value, path, where }) => {
    const { name, kind, sinkRate } = value;
    if (kind === "floating" && sinkRate !== undefined)
      problems.push(
        errorAt(doc.spot([...path, "sinkRate"]), {
          code: "floating-line-sinks",
          message: "a floating line has no sinkRate",
          hint: "remove sinkRate, or correct kind",
        }),
      );
    if (kind !== "floating" && sinkRate === undefined)
      problems.push(
        errorAt(where, {
          code: "missing-key",
          message: "“sinkRate” is missing: this line sinks",
          hint: "add how fast it sinks, such as “sinkRate: 1.5 in/s”",
        }),
      );
    return { name, kind, where, ...present({ sinkRate_mps: sinkRate }) };
  });
}

function readLists(doc: YamlDocument, problems: Diagnostic[]): Partial<Lists> {
  const lists: Lists = {
    leaders: readLeaders(doc, problems),
    lines: readLines(doc, problems),
    shot: readRows(shape.shot.unwrap(), ["shot"], doc, problems).map(({ value, where }) => ({
      name: value.name,
      mass_g: value.mass,
      density_kgm3: SHOT_DENSITY_KGM3[value.material],
      carried: value.carried,
      where,
    })),
    indicators: readRows(shape.indicators.unwrap(), ["indicators"], doc, problems).map(
      ({ value, where }) => ({
        name: value.name,
        diameter_m: value.diameter,
        density_kgm3: value.density,
        carried: value.carried,
        where,
      }),
    ),
  };
  return Object.fromEntries(Object.entries(lists).filter(([, rows]) => rows.length > 0));
}

function repeatedNames(lists: Partial<Lists>, problems: Diagnostic[]): void {
  for (const key of LISTS) {
    const seen = new Map<string, number>();
    for (const { name, where } of lists[key] ?? []) {
      const line = seen.get(name);
      if (line !== undefined)
        problems.push(
          errorAt(where, {
            code: "name-twice",
            message: `${key}: ${quoted(name)} is there already, on line ${line}`,
            hint: "give each its own name; cards and boards call it by its name",
          }),
        );
      seen.set(name, where.line);
    }
  }
}

function readRigs({ file, text }: Pick<ClubFile, "file" | "text">, problems: Diagnostic[]): Partial<RigBox> {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return {};
  const fields = readRecord(rigsSchema, doc, problems, LISTS);
  const { offBottom } = fields;
  if (offBottom !== undefined && offBottom.from > offBottom.to)
    problems.push(errorAt(doc.spot(["offBottom", "to"]), fromBeyondTo("offBottom", "more")));
  const lists = readLists(doc, problems);
  repeatedNames(lists, problems);
  return {
    ...present({
      rod_m: fields.rod,
      reach_m: fields.reach,
      offBottom: offBottom && { from_m: offBottom.from, to_m: offBottom.to },
      margin_m: fields.margin,
      lift_m: fields.lift,
      dryShare: fields.dryShare,
      castLimit_g: fields.castLimit,
    }),
    ...lists,
  };
}

const KEYS: readonly (keyof RigBox)[] = [
  "rod_m",
  "reach_m",
  "offBottom",
  "margin_m",
  "lift_m",
  "dryShare",
  "castLimit_g",
  ...LISTS,
];

const isComplete = (box: Partial<RigBox>): box is RigBox => KEYS.every((key) => box[key] !== undefined);

/**
 * The club's rig box: the program's defaults, and over them what its rigs.yaml says, key by key.
 * @throws when the defaults that come with the program are broken
 */
export async function readRigBox(
  file: ClubFile | undefined,
  problems: Diagnostic[],
  reading: ReadAgain,
): Promise<RigBox> {
  const text = await readFile(DEFAULTS, "utf8");
  return reading("rigs.yaml", [text, file?.text], (found) => rigBoxOf(text, file, found), problems);
}

function rigBoxOf(usual: string, file: ClubFile | undefined, problems: Diagnostic[]): RigBox {
  const broken: Diagnostic[] = [];
  const defaults = readRigs({ file: "content/rig-defaults.yaml", text: usual }, broken);
  const box = { ...defaults, ...(file === undefined ? {} : readRigs(file, problems)) };
  if (broken.length > 0) throw new Error(broken.map(formatDiagnostic).join("\n"));
  if (!isComplete(box)) throw new Error("content/rig-defaults.yaml leaves out a key");
  return box;
}
