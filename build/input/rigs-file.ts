import { readFile } from "node:fs/promises";
import { z } from "zod";
import { LINE_KINDS, type RigBox, type ShotStep } from "../model/club.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { fromBeyondTo } from "./lake-file.ts";
import { errorAt, quoted } from "./problem.ts";
import type { ReadAgain } from "./read-again.ts";
import { oneOf, quantity, text, tippetSize, whole } from "./schema/fields.ts";
import { omitUndefined, readRecord, readRows } from "./schema/read-record.ts";
import { readYaml, type YamlDocument } from "./yaml/yaml-document.ts";

/** Density of what split shot is made of, kg/m3. Lead, tin, tungsten: NIST. Brass and steel: common alloys, from memory. */
const SHOT_DENSITY_KGM3 = {
  lead: 11350,
  tin: 7310,
  tungsten: 19300,
  brass: 8500,
  steel: 7850,
} as const;
const MATERIALS = Object.keys(SHOT_DENSITY_KGM3) as [keyof typeof SHOT_DENSITY_KGM3];

const carried = whole(0, 10_000, "How many the club carries.");
const lengthUpTo = (most: string, example: string, description: string) =>
  quantity("length", { description, example, above: "0 m", most });

const leaderPart = (description: string) =>
  z
    .strictObject({
      length: lengthUpTo("15 m", "6 ft", "Length of this part."),
      size: tippetSize("Tippet size at its end."),
    })
    .meta({ description });

const leaderRow = z
  .strictObject({
    name: text("What its board is called."),
    taper: leaderPart("The tapered part, from the fly line."),
    middle: leaderPart("The level part knotted to the taper."),
    tippet: leaderPart("The level part the fly is tied to."),
    tied: whole(0, 1000, "How many are tied and on boards.").optional(),
  })
  .meta({ description: "One leader." });

const lineRow = z
  .strictObject({
    name: text("What the line is called."),
    kind: oneOf(LINE_KINDS, "What kind of line it is."),
    sinkRate: quantity("sinkRate", {
      description: "How fast it sinks; time your own in still water.",
      example: "1.5 in/s",
      above: "0 in/s",
      most: "12 in/s",
    }).optional(),
    tip: lengthUpTo("15 m", "15 ft", "Length of a sink tip: it never hangs deeper.").optional(),
  })
  .meta({ description: "One fly line." });

const shotRow = z
  .strictObject({
    name: text("The size printed on the box."),
    mass: quantity("mass", { description: "Mass of one.", example: "0.4 g", above: "0 g", most: "20 g" }),
    material: oneOf(MATERIALS, "What it is made of."),
    carried,
  })
  .meta({ description: "One size of split shot." });

const indicatorRow = z
  .strictObject({
    name: text("What it is called."),
    diameter: lengthUpTo("60 mm", "0.75 in", "Diameter."),
    density: quantity("density", {
      description: "Mass by volume; foam and hollow balls are far lighter than water.",
      example: "60 kg/m3",
      above: "0 kg/m3",
      most: "999 kg/m3",
    }),
    carried,
  })
  .meta({ description: "One size of indicator." });

const seconds = (description: string, example: string) =>
  quantity("seconds", { description, example, above: "0 s", most: "10 min" });

const scopeNumber = z.number().min(1).max(20).meta({ description: "Times depth and bow." });

const offBottomBand = z
  .strictObject({
    from: lengthUpTo("2 m", "6 in", "At least this far above the bottom."),
    to: lengthUpTo("2 m", "8 in", "At most this far above the bottom."),
  })
  .meta({ description: "How far above the plumbed bottom the fly hangs." });

export const rigsSchema = z
  .strictObject({
    rod: lengthUpTo("6 m", "10 ft", "Length of the rod.").optional(),
    reach: quantity("length", {
      description: "How much less than a rod's length of fixed leader can be landed, for the arm's reach.",
      example: "1 ft",
      least: "0 m",
      most: "2 m",
    }).optional(),
    offBottom: offBottomBand.optional(),
    margin: quantity("length", {
      description: "Knot-free leader left below and above the indicator.",
      example: "6 in",
      least: "0 m",
      most: "2 m",
    }).optional(),
    lift: lengthUpTo("2 m", "6 in", "How far the fly may lift in the current that is expected.").optional(),
    mostLift: lengthUpTo(
      "3 m",
      "12 in",
      "How far it may lift in the worst current that is likely.",
    ).optional(),
    steps: z
      .array(text("A step: none, or shot from the list, such as BB or 2 x BB."))
      .min(1)
      .max(8)
      .optional()
      .meta({
        description: "What is pinched on, from none up; at most two pieces cast well.",
        examples: [["none", "No. 4", "BB", "2 x BB"]],
      }),
    longestWait: seconds(
      "The longest wait on a tight line that a light step may ask for.",
      "90 s",
    ).optional(),
    longestCount: seconds("The longest count after every cast.", "60 s").optional(),
    bow: quantity("length", {
      description: "From the water up to the bow of the boat.",
      example: "2 ft",
      least: "0 m",
      most: "3 m",
    }).optional(),
    scope: z
      .union([scopeNumber, z.strictObject({ calm: scopeNumber, ripple: scopeNumber, chop: scopeNumber })])
      .optional()
      .meta({
        description: "Anchor rope over depth and bow together: one number, or one for each condition.",
        examples: [5, { calm: 5, ripple: 5, chop: 7 }],
      }),
    dryShare: z
      .number()
      .min(0)
      .max(0.95)
      .optional()
      .meta({ description: "Share of an indicator's volume that stays dry, 0 to 0.95.", examples: [0.5] }),
    castLimit: quantity("mass", {
      description: "The most weight that still casts comfortably.",
      example: "1.2 g",
      above: "0 g",
      most: "50 g",
    }).optional(),
    leaders: z.array(leaderRow).min(1).optional().meta({ description: "Leaders on boards or in the box." }),
    lines: z.array(lineRow).min(1).optional().meta({ description: "Fly lines." }),
    shot: z.array(shotRow).min(1).optional().meta({ description: "Split shot." }),
    indicators: z.array(indicatorRow).min(1).optional().meta({ description: "Indicators." }),
  })
  .meta({
    title: "Rigs",
    description:
      "What the club builds rigs from: rigs.yaml. What is left out comes from the program's defaults.",
  });

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
    const { name, kind, sinkRate, tip } = value;
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
    return { name, kind, where, ...omitUndefined({ sinkRate_mps: sinkRate, tip_m: tip }) };
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

const PIECES = /^(?:(\d) ?[x×] ?)?(.+)$/;

/** "none", "BB", "2 x BB" as shot pinched on together. */
function stepOf(written: string): ShotStep {
  const [, times = "1", shot = written] = PIECES.exec(written) ?? [];
  return written === "none" ? [] : [{ shot, count: Number(times) }];
}

/** Steps of shot that the box does not list. */
function unknownShot(
  steps: readonly ShotStep[],
  shot: Lists["shot"],
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
function stepsFrom(shot: Lists["shot"]): ShotStep[] {
  const [small, large] = USUAL_STEP_G.map(
    (mass_g) =>
      shot.toSorted((a, b) => Math.abs(a.mass_g - mass_g) - Math.abs(b.mass_g - mass_g))[0]?.name ?? "",
  );
  const one = (name = ""): ShotStep => [{ shot: name, count: 1 }];
  return [[], ...(small === large ? [] : [one(small)]), one(large), [{ shot: large ?? "", count: 2 }]];
}

const scopeOf = (scope: number | RigBox["scope"] | undefined): RigBox["scope"] | undefined =>
  typeof scope === "number" ? { calm: scope, ripple: scope, chop: scope } : scope;

function readRigs(
  { file, text }: Pick<ClubFile, "file" | "text">,
  problems: Diagnostic[],
  defaults: Partial<RigBox> = {},
): Partial<RigBox> {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return {};
  const fields = readRecord(rigsSchema, doc, problems, LISTS);
  const { offBottom } = fields;
  if (offBottom !== undefined && offBottom.from > offBottom.to)
    problems.push(errorAt(doc.spot(["offBottom", "to"]), fromBeyondTo("offBottom", "more")));
  const lists = readLists(doc, problems);
  repeatedNames(lists, problems);
  const steps = fields.steps?.map(stepOf);
  if (steps !== undefined) unknownShot(steps, lists.shot ?? defaults.shot ?? [], doc, problems);
  return {
    ...omitUndefined({
      rod_m: fields.rod,
      reach_m: fields.reach,
      offBottom: offBottom && { from_m: offBottom.from, to_m: offBottom.to },
      margin_m: fields.margin,
      lift_m: fields.lift,
      dryShare: fields.dryShare,
      castLimit_g: fields.castLimit,
      mostLift_m: fields.mostLift,
      steps: steps ?? (lists.shot === undefined ? undefined : stepsFrom(lists.shot)),
      longestWait_s: fields.longestWait,
      longestCount_s: fields.longestCount,
      bow_m: fields.bow,
      scope: scopeOf(fields.scope),
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
  "mostLift_m",
  "steps",
  "longestWait_s",
  "longestCount_s",
  "bow_m",
  "scope",
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
  const box = { ...defaults, ...(file === undefined ? {} : readRigs(file, problems, defaults)) };
  if (broken.length > 0) throw new Error(broken.map(formatDiagnostic).join("\n"));
  if (!isComplete(box)) throw new Error("content/rig-defaults.yaml leaves out a key");
  return box;
}
