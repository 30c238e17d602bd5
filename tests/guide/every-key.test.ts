import { expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { inputSchemas } from "../../build/input/json-schemas.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { addDays, parseCalendarDate } from "../../build/model/calendar.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { QUANTITY_KINDS, type QuantityKindName, toBase } from "../../build/model/units.ts";
import { folderOf } from "../input/club-folder.ts";
import { FULL_CLUB } from "./full-club.ts";

/** The file in which a kind's keys are changed. */
const FILE_OF: Readonly<Record<string, string>> = {
  club: "club.yaml",
  lake: "lakes/ember.yaml",
  pattern: "patterns/pale-scud.yaml",
  reports: "reports/2026.yaml",
  trip: "trips/opener.yaml",
  rigs: "rigs.yaml",
};

interface Node {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
  readonly enum?: readonly string[];
  readonly examples?: readonly unknown[];
  readonly format?: string;
  readonly pattern?: string;
  readonly maximum?: number;
}
type Step = string | 0;
interface Leaf {
  readonly path: readonly Step[];
  readonly node: Node;
}

/** Keys whose value stands nowhere in the Guide, but changes it: what it is there. */
const IN_ANOTHER_FORM: Readonly<Record<string, string>> = {
  "lake.iceOff.on": "the forecast",
  "lake.iceOff.after": "the forecast",
  "lake.iceOff.by": "the forecast",
  "lake.turnover.season": "the forecast",
  "lake.turnover.from": "the forecast",
  "lake.turnover.to": "the forecast",
  "lake.turnoverRule.onset.from": "the forecast",
  "lake.turnoverRule.onset.to": "the forecast",
  "lake.turnoverRule.duration.from": "the forecast",
  "lake.turnoverRule.duration.to": "the forecast",
  "lake.lastGood.season": "the forecast",
  "lake.lastGood.on": "the forecast",
  "lake.watched": "the chance that an opening would be reported",
  "pattern.rank": "the order of flies",
  "reports.rods": "rod-hours",
  "reports.hours": "rod-hours",
  "trip.flyLoss": "how many flies to tie",
  "trip.lakes": "which lakes come into question, in which order",
  "rigs.reach": "which leaders are fixed, and to which depth",
  "rigs.margin": "set depths",
  "rigs.lift": "shot against drift",
  "rigs.dryShare": "what an indicator carries",
  "rigs.castLimit": "the steps of shot, where the club names none",
  "rigs.longestCount": "which counts are printed",
  "rigs.leaders.taper.length": "length of the leader",
  "rigs.leaders.middle.length": "length of the leader",
  "rigs.leaders.tippet.length": "length of the leader",
  "rigs.shot.mass": "shot against drift",
  "rigs.shot.material": "shot against drift",
  "rigs.indicators.diameter": "what an indicator carries",
  "rigs.indicators.density": "what an indicator carries",
};

/** Keys, and groups of keys, that no reader sees: why. */
const NOT_SHOWN: Readonly<Record<string, string>> = {
  "lake.role": "a lake outside the guide has no page; what its days tell is in the forecast",
  "club.reportForm": "how tables of reports are read",
  "rigs.shot.carried": "written down for packing lists, which do not count shot so far",
  "rigs.indicators.carried": "written down for packing lists, which do not count indicators so far",
};

/** What is written in place of a key, or of what it stands in, where its schema cannot suggest it. */
const WRITTEN: Readonly<
  Record<string, { readonly file?: string; readonly at?: readonly Step[]; readonly value: unknown }>
> = {
  "club.season": { at: [], value: { ...FULL_CLUB["club.yaml"], season: 2025, asOf: "2025-05-16" } },
  "club.timezone": { value: "America/Boise" },
  "lake.iceOff.season": { at: ["iceOff", 0], value: { season: 2023, on: "2023-05-14" } },
  "lake.turnover.season": {
    at: ["turnover", 0],
    value: { season: 2024, from: "2024-05-24", to: "2024-06-02" },
  },
  "lake.role": {
    file: "lakes/valley.yaml",
    at: [],
    value: { name: "Valley Pond", position: { lat: 41.1, lon: -106.1 }, role: "indicator" },
  },
  "pattern.rank": { value: 4 },
  "reports.lake": { value: "willow" },
  "reports.caught.pattern": { value: "bloodworm" },
  "trip.lakes": { value: "willow" },
  "trip.travel.longest": { value: "2 h" },
  "lake.depthBands.post-turnover.from": {
    at: ["depthBands"],
    value: { "post-turnover": { from: "7 ft", to: "17 ft" } },
  },
  "lake.depthBands.post-turnover.to": {
    at: ["depthBands"],
    value: { "post-turnover": { from: "7 ft", to: "17 ft" } },
  },
  "lake.lastGood.season": { at: ["lastGood", 0], value: { season: 2022, on: "2022-06-12" } },
  "lake.lastGood.on": { value: "2024-06-12" },
  "rigs.reach": { value: "5.3 ft" },
  "rigs.mostLift": { value: "2 in" },
  "rigs.longestWait": { value: "30 s" },
  "rigs.longestCount": { value: "5 s" },
  "rigs.castLimit": { value: "0.3 g" },
  "rigs.steps": { at: ["steps"], value: ["none", "No. 4"] },
  "rigs.lines.kind": { value: "sink tip" },
};

/** Every key that holds one value; of what may be written in several forms, the one with the most keys. */
function leavesOf(node: Node, path: readonly Step[] = []): Leaf[] {
  const group = node.anyOf?.find(({ properties }) => properties !== undefined);
  if (group !== undefined) return leavesOf(group, path);
  if (node.properties !== undefined)
    return Object.entries(node.properties).flatMap(([key, child]) => leavesOf(child, [...path, key]));
  return node.items === undefined ? [{ path, node }] : leavesOf(node.items, [...path, 0]);
}

const nameOf = (kind: string, { path }: Leaf): string =>
  [kind, ...path.filter((step) => step !== 0)].join(".");

function anotherNumber(text: string): string {
  const [, number = "", unit = ""] = /^([\d.]+)(.*)$/.exec(text) ?? [];
  return `${unit.trim() === "days" ? Number(number) + 1 : Number((Number(number) * 1.0137).toFixed(6))}${unit}`;
}

/** A value that this schema allows, other than `value`, and easily told from any other; a first one for a key that has none. */
function another(node: Node, value: unknown): unknown {
  const { enum: choices, examples: [example] = [] } = node;
  if (choices !== undefined) return choices.find((choice) => choice !== value) ?? value;
  if (node.type === "boolean") return value !== true;
  if (node.type === "integer") {
    const number = Number(value ?? 1);
    return number + (number + 1 > (node.maximum ?? number + 1) ? -1 : 1);
  }
  const written = value ?? example ?? "Recognisable";
  if (typeof written === "number") return Number((written * 1.0137).toFixed(6));
  const text = String(written);
  const date = node.format === "date" ? parseCalendarDate(text) : undefined;
  if (date !== undefined) return addDays(date, 1);
  if (/^\dX$/.test(text)) return text.replace("X", ".5X");
  return node.pattern === undefined ? `${text} Recognisable` : anotherNumber(text);
}

/** The first place of a list where the rest of the path leads to something, or else its first. */
function placeIn(list: readonly unknown[], rest: readonly Step[]): number {
  return Math.max(
    0,
    list.findIndex((entry) => valueAt(entry, rest) !== undefined),
  );
}

function valueAt(data: unknown, [step, ...rest]: readonly Step[]): unknown {
  if (step === undefined || data === undefined) return data;
  if (Array.isArray(data)) return valueAt(data[placeIn(data, rest)], rest);
  return typeof data === "object" && data !== null ? valueAt(Reflect.get(data, step), rest) : undefined;
}

/** The same data with one value set, however little of the way there was written. */
function withValue(data: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value;
  if (step === 0) {
    const list: readonly unknown[] = Array.isArray(data) ? data : [undefined];
    const place = placeIn(list, rest);
    return list.map((entry, i) => (i === place ? withValue(entry, rest, value) : entry));
  }
  const group = typeof data === "object" && data !== null ? data : {};
  return { ...group, [step]: withValue(Reflect.get(group, step), rest, value) };
}

const NO_CONTENT = { chapters: [], cautions: [], packing: [] };

const results = new Map<string, unknown>();
/** Makes once what follows from the same inputs: a key changes little of a guide. */
function remember<Inputs, T>(kind: string, inputs: Inputs, compute: (inputs: Inputs) => T): T {
  const name = JSON.stringify([kind, inputs]);
  if (!results.has(name)) results.set(name, compute(inputs));
  return results.get(name) as T;
}

async function guideOf(files: Readonly<Record<string, unknown>>): Promise<Guide> {
  const dir = await folderOf(
    Object.fromEntries(Object.entries(files).map(([file, data]) => [file, JSON.stringify(data, null, 1)])),
  );
  const { club, problems } = await loadClub(dir);
  const { guide } =
    club === undefined ? {} : composeGuide(club, NO_CONTENT, { version: "0", memoize: remember });
  if (guide === undefined) throw new Error(problems.map(formatDiagnostic).join("\n"));
  return guide;
}

/** Every value of the Guide, under the way to it. */
const valuesOf = (value: unknown, way = ""): [string, unknown][] =>
  typeof value === "object" && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => valuesOf(inner, `${way}.${key}`))
    : [[way, value]];

/** What the Guide might hold where `written` was: itself, or a quantity in the unit of a kind that has its unit. */
function readings(written: unknown): unknown[] {
  const [, number, unit = ""] = /^([\d.]+)\s*(.*)$/.exec(String(written)) ?? [];
  const kinds = Object.keys(QUANTITY_KINDS) as QuantityKindName[];
  const fitting = kinds.filter((kind) => (QUANTITY_KINDS[kind].allowed as readonly string[]).includes(unit));
  return [
    written,
    ...(unit === "X" ? [Number(number)] : []),
    ...fitting.map((kind) => toBase(Number(number), unit, kind)),
  ];
}

const holds = (value: unknown, reading: unknown): boolean =>
  value === reading || (typeof value === "string" && typeof reading === "string" && value.includes(reading));

type Fate = "as it stands" | "in another form" | "not at all";

/** How the Guide shows a key: what in it is new once the key says something else. */
async function fateOf(kind: string, leaf: Leaf, before: ReadonlyMap<string, unknown>): Promise<Fate> {
  const written = WRITTEN[nameOf(kind, leaf)];
  const file = written?.file ?? FILE_OF[kind] ?? "";
  const club = FULL_CLUB[file];
  const { at = leaf.path, value = another(leaf.node, valueAt(club, leaf.path)) } = written ?? {};
  const data = withValue(club, at, value);
  const after = valuesOf(await guideOf({ ...FULL_CLUB, [file]: data }));
  const news = after.filter(([way, value]) => before.get(way) !== value);
  const sought = readings(valueAt(data, leaf.path));
  if (news.some(([, value]) => sought.some((reading) => holds(value, reading)))) return "as it stands";
  return news.length > 0 || after.length !== before.size ? "in another form" : "not at all";
}

const leaves = Object.entries(inputSchemas()).flatMap(([kind, schema]) =>
  leavesOf(schema as Node).map((leaf) => ({ kind, leaf, name: nameOf(kind, leaf) })),
);
let unchanged: Promise<Guide> | undefined;
/** The Guide of the club as it is, made once. */
async function valuesBefore(): Promise<ReadonlyMap<string, unknown>> {
  unchanged ??= guideOf(FULL_CLUB);
  return new Map(valuesOf(await unchanged));
}

/** True for a key that is named, or stands in a group that is. */
const isOn = (list: object, name: string): boolean =>
  Object.keys(list).some((entry) => name === entry || name.startsWith(`${entry}.`));

function expectedFate(name: string): Fate {
  if (isOn(NOT_SHOWN, name)) return "not at all";
  return isOn(IN_ANOTHER_FORM, name) ? "in another form" : "as it stands";
}

test.each(leaves)(
  "what a club writes under $name reaches the Guide, or a list says why not",
  async ({ kind, leaf, name }) => {
    expect(await fateOf(kind, leaf, await valuesBefore())).toBe(expectedFate(name));
  },
);

test("the lists name keys that there are", () => {
  const names = leaves.map(({ name }) => name);
  for (const entry of [...Object.keys(IN_ANOTHER_FORM), ...Object.keys(NOT_SHOWN), ...Object.keys(WRITTEN)])
    expect(
      names.some((name) => isOn({ [entry]: "" }, name)),
      entry,
    ).toBe(true);
});
