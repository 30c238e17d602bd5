import fc from "fast-check";
import type { ClubFiles } from "./base-club.ts";
import {
  CHARACTERS,
  DATES,
  FILE_NAMES,
  KEYS,
  MARKDOWN,
  MARKUP,
  NUMBERS,
  YAML_BOMBS,
  YAML_VALUES,
} from "./hostile-texts.ts";
import { mutatedJson } from "./json-mutation.ts";

const KINDS = [
  "splice",
  "value",
  "text value",
  "key",
  "new key",
  "yaml bomb",
  "bytes",
  "file name",
  "link",
  "csv cell",
  "geojson",
  "markdown",
  "every text",
  "free text",
  "line doubled",
  "line removed",
  "huge",
] as const;
type Kind = (typeof KINDS)[number];

/** One change to a club's files; `file` and `at` are taken modulo what there is. */
export interface Mutation {
  readonly kind: Kind;
  readonly file: number;
  readonly at: number;
  readonly cut: number;
  readonly text: string;
}

/** A club folder that was made wrong: its files, and links by their place, with where they lead. */
export interface HostileClub {
  readonly files: ClubFiles;
  readonly links: ReadonlyMap<string, string>;
}

const piece = fc.oneof(
  fc.constantFrom<string>(...MARKUP),
  fc.constantFrom<string>(...CHARACTERS),
  fc.constantFrom<string>(...NUMBERS),
  fc.constantFrom<string>(...DATES),
  fc.constantFrom<string>(...YAML_VALUES),
  fc.constantFrom<string>(...KEYS),
  fc.string({ maxLength: 8, unit: "binary" }),
);
const hostileText = fc
  .tuple(fc.constantFrom("", "E "), fc.constantFrom<string>(...MARKUP, ...MARKDOWN, ...CHARACTERS))
  .map(([before, text]) => before + text);
const textOfKind: Readonly<Partial<Record<Kind, fc.Arbitrary<string>>>> = {
  "yaml bomb": fc.constantFrom(...YAML_BOMBS),
  "file name": fc.constantFrom<string>(...FILE_NAMES),
  key: fc.constantFrom<string>(...KEYS),
  "new key": fc.constantFrom<string>(...KEYS),
  markdown: fc
    .array(fc.constantFrom<string>(...MARKDOWN, ...MARKUP, ...CHARACTERS), { minLength: 1, maxLength: 6 })
    .map((all) => all.join("\n\n")),
  "text value": hostileText,
  "every text": hostileText,
  "free text": hostileText,
  "csv cell": fc.oneof(
    fc.constantFrom<string>(...NUMBERS, ...CHARACTERS, ...MARKUP),
    fc.constantFrom('"', "=1+1", "41.2", "-106.35", "0"),
  ),
  link: fc.constantFrom(
    "outside.yaml",
    "/etc/passwd",
    "..",
    ".",
    "itself",
    "/dev/zero",
    "/proc/self/environ",
  ),
  bytes: fc.constantFrom("bom", "crlf", "cr", "utf16", "latin1", "surrogate", "nul", "truncate"),
  huge: fc.constantFrom("line", "rows", "notes", "ring", "csv", "names"),
};

const mutationOf = (kind: Kind): fc.Arbitrary<Mutation> =>
  fc.record({
    kind: fc.constant(kind),
    file: fc.nat(1000),
    at: fc.nat(100_000),
    cut: fc.nat(12),
    text: textOfKind[kind] ?? piece,
  });

/** Changes of texts alone, which a club may write as it likes: such a club is read, and its texts reach pages and feeds. */
const MILD: readonly Kind[] = ["every text", "free text", "markdown"];

/** Clubs that are still in order, their texts aside. */
export const mildMutations: fc.Arbitrary<readonly Mutation[]> = fc.array(fc.oneof(...MILD.map(mutationOf)), {
  minLength: 1,
  maxLength: 3,
});

/** Clubs made wrong in one to four ways. `huge`: also with files of many megabytes. */
export const mutations = (huge: boolean): fc.Arbitrary<readonly Mutation[]> =>
  fc.array(
    fc.oneof(
      ...KINDS.filter((kind) => kind !== "huge").map((kind) => ({
        arbitrary: mutationOf(kind),
        weight: kind === "yaml bomb" || kind === "link" ? 50 : 100,
      })),
      ...(huge ? [{ arbitrary: mutationOf("huge"), weight: 1 }] : []),
    ),
    { minLength: 1, maxLength: 4 },
  );

const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % list.length];
const textAt = (files: ClubFiles, name: string): string => {
  const content = files.get(name) ?? "";
  return typeof content === "string" ? content : new TextDecoder().decode(content);
};

const KEY_LINE = /^([ -]*)([A-Za-z]+):( .*)?$/;

/** Changes one line of a file that says `key: value`. */
function onKeyLine(
  files: ClubFiles,
  { file, at }: Mutation,
  change: (before: string, key: string, value: string) => string,
  isWanted = (line: string): boolean => KEY_LINE.test(line),
): void {
  const name = pick(
    [...files.keys()].filter((each) => each.endsWith(".yaml")),
    file,
  );
  if (name === undefined) return;
  const lines = textAt(files, name).split("\n");
  const line = pick(
    lines.flatMap((text, i) => (isWanted(text) ? [i] : [])),
    at,
  );
  if (line === undefined) return;
  const [, before = "", key = "", value = ""] = KEY_LINE.exec(lines[line] ?? "") ?? [];
  lines[line] = change(before, key, value);
  files.set(name, lines.join("\n"));
}

/** Properly quoted, so that it is read as it stands. */
const asYaml = (text: string): string => JSON.stringify(text).replaceAll("\u007f", "\\u007f");

const TEXT_KEYS = /^([ -]*(?:name|notice|notes|summary|region|text|material):) .*$/gm;
const FLOW_TEXTS = /((?:name|material): )([^,}"]+|"[^"]*")/g;

function everyText(files: ClubFiles, text: string): void {
  for (const name of files.keys())
    if (name.endsWith(".yaml"))
      files.set(
        name,
        textAt(files, name)
          .replace(/\|\n(?: {2}.*\n|\n)+/g, "plain\n")
          .replace(TEXT_KEYS, (line, key: string) => (/\{/.test(line) ? line : `${key} ${asYaml(text)}`))
          .replace(FLOW_TEXTS, (_, key: string) => `${key}${asYaml(text)}`)
          .replace(/^ {2}- [A-Z].*$/gm, `  - ${asYaml(text)}`),
      );
    else if (name.endsWith(".geojson"))
      files.set(name, textAt(files, name).replace(/"name": ?"[^"]*"/g, `"name": ${JSON.stringify(text)}`));
    else if (name.endsWith(".md")) files.set(name, `# ${text}\n\n${text}\n`);
}

const BYTES: Readonly<Record<string, (text: string, at: number) => string | Uint8Array>> = {
  bom: (text) => `\ufeff${text}`,
  crlf: (text) => text.replaceAll("\n", "\r\n"),
  cr: (text) => text.replaceAll("\n", "\r"),
  utf16: (text) => Buffer.from(`\ufeff${text}`, "utf16le"),
  latin1: (text) => Buffer.from(`# é\n${text}`, "latin1"),
  surrogate: (text, at) => Buffer.concat([Buffer.from(text.slice(0, at)), Buffer.from([0xed, 0xa0, 0x80])]),
  nul: (text, at) => `${text.slice(0, at)}\u0000${text.slice(at)}`,
  truncate: (text, at) => text.slice(0, at),
};

const HUGE: Readonly<Record<string, (files: ClubFiles) => void>> = {
  line: (files) => files.set("club.yaml", `name: ${"x".repeat(10_000_000)}\n`),
  rows: (files) =>
    files.set("reports/2026.yaml", "- { lake: thimblerig, date: 2026-05-01, ice: off }\n".repeat(30_000)),
  notes: (files) =>
    files.set(
      "lakes/thimblerig.yaml",
      `${textAt(files, "lakes/thimblerig.yaml")}\n${"  *a* [b](c) `d`\n".repeat(90_000)}`,
    ),
  ring: (files) =>
    files.set(
      "lakes/cairnlight.geojson",
      JSON.stringify({
        type: "FeatureCollection",
        features: [
          {
            type: "Feature",
            properties: { kind: "shoreline" },
            geometry: {
              type: "Polygon",
              coordinates: [
                Array.from({ length: 100_001 }, (_, i) => [
                  -106.3 + Math.cos((i % 100_000) / 15_915.494) / 100,
                  41.2 + Math.sin((i % 100_000) / 15_915.494) / 100,
                ]),
              ],
            },
          },
        ],
      }),
    ),
  csv: (files) =>
    files.set("lakes/thimblerig.csv", `lat,lon,depth (ft)\n${"41.2467,-106.3561,12\n".repeat(450_000)}`),
  names: (files) => {
    for (let i = 0; i < 400; i++) files.set(`pages/page-${i}.md`, `# Page ${i}\n`);
  },
};

function apply(files: ClubFiles, links: Map<string, string>, mutation: Mutation): void {
  const { kind, file, at, cut, text } = mutation;
  const name = pick([...files.keys()], file);
  if (name === undefined) return;
  const content = textAt(files, name);
  const offset = at % (content.length + 1);
  switch (kind) {
    case "splice":
      files.set(name, content.slice(0, offset) + text + content.slice(offset + cut));
      return;
    case "value":
      onKeyLine(files, mutation, (before, key) => `${before}${key}: ${text}`);
      return;
    case "text value":
      onKeyLine(files, mutation, (before, key) => `${before}${key}: ${asYaml(text)}`);
      return;
    case "free text":
      onKeyLine(
        files,
        mutation,
        (before, key) => `${before}${key}: ${asYaml(text)}`,
        (line) => /^[ -]*(?:name|notice|summary|region|text|material): [^{|]+$/.test(line),
      );
      return;
    case "key":
      onKeyLine(files, mutation, (before, _, value) => `${before}${text}:${value}`);
      return;
    case "new key":
      onKeyLine(
        files,
        mutation,
        (before, key, value) => `${before}${text}: ${cut}\n${before.replace("-", " ")}${key}:${value}`,
      );
      return;
    case "yaml bomb":
      files.set(name, cut < 6 ? text : `${content}\nextra: ${text}`);
      return;
    case "bytes":
      files.set(name, BYTES[text]?.(content, offset) ?? content);
      return;
    case "file name": {
      files.delete(name);
      files.set(`${name.includes("/") ? `${name.split("/")[0]}/` : cut < 3 ? "lakes/" : ""}${text}`, content);
      return;
    }
    case "link":
      files.delete(name);
      links.set(name, text === "itself" ? (name.split("/").at(-1) ?? "") : text);
      return;
    case "csv cell": {
      const table = pick(
        [...files.keys()].filter((each) => each.endsWith(".csv")),
        file,
      );
      if (table === undefined) return;
      const rows = textAt(files, table).split("\n");
      const row = at % rows.length;
      const cells = (rows[row] ?? "").split(",");
      cells[cut % cells.length] = text;
      rows[row] = cells.join(",");
      files.set(table, rows.join("\n"));
      return;
    }
    case "geojson":
      if (!files.has("lakes/cairnlight.geojson")) return;
      files.set(
        "lakes/cairnlight.geojson",
        mutatedJson(textAt(files, "lakes/cairnlight.geojson"), at, cut, text),
      );
      return;
    case "markdown":
      if (cut < 6) files.set("pages/etiquette.md", `# Title\n\n${text}\n`);
      else
        files.set(
          "lakes/thimblerig.yaml",
          textAt(files, "lakes/thimblerig.yaml").replace(
            /^notes: [\s\S]*/m,
            () => `notes: ${asYaml(text)}\n`,
          ),
        );
      return;
    case "every text":
      everyText(files, text);
      return;
    case "line doubled":
    case "line removed": {
      const lines = content.split("\n");
      const line = at % lines.length;
      lines.splice(
        line,
        kind === "line removed" ? 1 + (cut % 3) : 0,
        ...(kind === "line doubled" ? [lines[line] ?? ""] : []),
      );
      files.set(name, lines.join("\n"));
      return;
    }
    case "huge":
      HUGE[text]?.(files);
      return;
  }
}

/** The base club with every change made, in their order. */
export function hostileClub(base: ClubFiles, changes: readonly Mutation[]): HostileClub {
  const files = new Map(base);
  const links = new Map<string, string>();
  for (const change of changes) apply(files, links, change);
  return { files, links };
}
