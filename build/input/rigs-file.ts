import { readFile } from "node:fs/promises";
import type { z } from "zod";
import type { LineStock, RigBox, RigStock, ShotStep, ShotStock } from "../model/club.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import { quoted } from "../model/fault.ts";
import { clubNames, clubRecord } from "../model/fields/field.ts";
import {
  indicatorRow,
  leaderRow,
  lineRow,
  rigBoxSchema,
  rigsSchema,
  SHOT_DENSITY_KGM3,
  shotRow,
} from "../model/fields/rigs-fields.ts";
import type { MemoizeRead } from "../model/memoize.ts";
import { programFile } from "../program/program-files.ts";
import type { ClubFile } from "./club-files.ts";
import { fromBeyondTo } from "./lake-file.ts";
import { errorAt } from "./problem.ts";
import { type Row, readRecord, readRows } from "./schema/read-record.ts";
import { readYaml, type YamlDocument } from "./yaml/yaml-document.ts";

const DEFAULTS = programFile("content/rig-defaults.yaml");
const { shape } = rigsSchema;
const LISTS = ["leaders", "lines", "shot", "indicators"] as const satisfies readonly (keyof RigStock)[];
/** The keys that hold no list. */
const plainSchema = rigsSchema.omit({ leaders: true, lines: true, shot: true, indicators: true });

function readLines(doc: YamlDocument, problems: Diagnostic[]): LineStock[] {
  return readRows(shape.lines.unwrap(), ["lines"], doc, problems).map(({ value, path, where }) => {
    const { kind, sinkRate, tip } = value;
    if (kind !== "sink tip" && tip !== undefined)
      problems.push(
        errorAt(doc.spot([...path, "tip"]), {
          code: "tip-of-no-sink-tip",
          message: "only a sink tip has a tip",
          hint: "remove tip, or write “kind: sink tip”",
        }),
      );
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
    return { ...clubRecord(lineRow, value), where };
  });
}

function shotOf({ value, where }: Row<z.output<typeof shotRow>>): ShotStock {
  const { material, ...shot } = clubRecord(shotRow, value);
  return { ...shot, density_kgm3: SHOT_DENSITY_KGM3[material], where };
}

function readLists(doc: YamlDocument, problems: Diagnostic[]): Partial<RigStock> {
  const { leaders, shot, indicators } = shape;
  const lists: RigStock = {
    leaders: readRows(leaders.unwrap(), ["leaders"], doc, problems).map(({ value, where }) => ({
      ...clubRecord(leaderRow, value),
      where,
    })),
    lines: readLines(doc, problems),
    shot: readRows(shot.unwrap(), ["shot"], doc, problems).map(shotOf),
    indicators: readRows(indicators.unwrap(), ["indicators"], doc, problems).map(({ value, where }) => ({
      ...clubRecord(indicatorRow, value),
      where,
    })),
  };
  return Object.fromEntries(Object.entries(lists).filter(([, rows]) => rows.length > 0));
}

function repeatedNames(lists: Partial<RigStock>, problems: Diagnostic[]): void {
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

const PIECES = /^(?:(\d) ?[x×] ?)?(.+)$/;

/** "none", "BB", "2 x BB" as shot pinched on together. */
function stepOf(written: string): ShotStep {
  const [, times = "1", shot = written] = PIECES.exec(written) ?? [];
  return written === "none" ? [] : [{ shot, count: Number(times) }];
}

/** Steps of shot that the box does not list. */
function unknownShot(
  steps: readonly ShotStep[],
  shot: RigStock["shot"],
  doc: YamlDocument,
  problems: Diagnostic[],
): void {
  const names = shot.map(({ name }) => name);
  for (const [i, step] of steps.entries())
    for (const { shot: name } of step)
      if (!names.includes(name))
        problems.push(
          errorAt(doc.spot(["steps", i]), {
            code: "unknown-shot",
            message: `steps: no shot is called ${quoted(name)}`,
            hint: `the box lists ${names.join(", ")}; write “none”, one of these, or two: “2 x ${names.at(-1) ?? "BB"}”`,
          }),
        );
}

/** Masses of the usual steps' two sizes, g. Common practice, no source. */
const USUAL_STEP_G = [0.17, 0.4] as const;

/** None, one small, one large, two large, of the sizes nearest the usual ones. */
function stepsFrom(shot: RigStock["shot"]): ShotStep[] {
  const [small, large] = USUAL_STEP_G.map(
    (mass_g) =>
      shot.toSorted((a, b) => Math.abs(a.mass_g - mass_g) - Math.abs(b.mass_g - mass_g))[0]?.name ?? "",
  );
  const one = (name = ""): ShotStep => [{ shot: name, count: 1 }];
  return [[], ...(small === large ? [] : [one(small)]), one(large), [{ shot: large ?? "", count: 2 }]];
}

const scopeOf = (scope: number | RigBox["scope"]): RigBox["scope"] =>
  typeof scope === "number" ? { calm: scope, ripple: scope, chop: scope } : scope;

/** @param usualShot the shot of a box that lists none itself */
function readRigs(
  { file, text }: Pick<ClubFile, "file" | "text">,
  problems: Diagnostic[],
  usualShot: RigStock["shot"] = [],
): Partial<RigBox> {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return {};
  const fields = readRecord(rigsSchema, doc, problems, LISTS);
  const { offBottom } = fields;
  if (offBottom !== undefined && offBottom.from > offBottom.to)
    problems.push(errorAt(doc.spot(["offBottom", "to"]), fromBeyondTo("offBottom", "more")));
  const lists = readLists(doc, problems);
  repeatedNames(lists, problems);
  const { steps: written, scope, ...plain } = clubRecord(plainSchema, fields);
  const own = written?.map(stepOf);
  if (own !== undefined) unknownShot(own, lists.shot ?? usualShot, doc, problems);
  const steps = own ?? (lists.shot === undefined ? undefined : stepsFrom(lists.shot));
  return {
    ...plain,
    ...lists,
    ...(steps === undefined ? {} : { steps }),
    ...(scope === undefined ? {} : { scope: scopeOf(scope) }),
  };
}

const isComplete = (box: Partial<RigBox>): box is RigBox =>
  clubNames(rigBoxSchema).every((name) => box[name] !== undefined);

/**
 * The club's rig box: the program's defaults, and over them what its rigs.yaml says, key by key.
 * @throws when the defaults that come with the program are broken
 */
export async function readRigBox(
  file: ClubFile | undefined,
  problems: Diagnostic[],
  reading: MemoizeRead,
): Promise<RigBox> {
  const text = await readFile(DEFAULTS, "utf8");
  return reading("rigs.yaml", [text, file?.text], (found) => rigBoxOf(text, file, found), problems);
}

function rigBoxOf(usual: string, file: ClubFile | undefined, problems: Diagnostic[]): RigBox {
  const broken: Diagnostic[] = [];
  const defaults = readRigs({ file: "content/rig-defaults.yaml", text: usual }, broken);
  const box = { ...defaults, ...(file === undefined ? {} : readRigs(file, problems, defaults.shot)) };
  if (broken.length > 0) throw new Error(broken.map(formatDiagnostic).join("\n"));
  if (!isComplete(box)) throw new Error("content/rig-defaults.yaml leaves out a key");
  return box;
}
