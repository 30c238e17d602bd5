import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import { dump, load } from "js-yaml";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Cache, openMemoizeLast } from "../../build/incremental/cache.ts";
import { fileHash } from "../../build/incremental/file-hash.ts";
import { openInputHash } from "../../build/incremental/input-hash.ts";
import { OUTPUTS, type Outputs } from "../../build/incremental/outputs.ts";
import type { GuideRequest } from "../../build/incremental/up-to-date.ts";
import { inputSchemas } from "../../build/input/json-schemas.ts";
import { unmemoizedLast } from "../../build/model/memoize.ts";
import { makeGuide, readGuide } from "../../build/pipeline.ts";
import { writeEveryKey } from "./every-key-club.ts";

// Whatever is kept from one build to the next is kept under its declared inputs. Each value of a club is changed in turn
// and everything is made again: the same inputs must give the same result, or something was seen that was not declared.

let work: string;
let dataDir: string;
beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "declared-inputs-"));
  dataDir = path.join(work, "club");
  await writeEveryKey(dataDir);
});
afterAll(() => rm(work, { recursive: true, force: true }));

type Place = readonly (string | number)[];

/** The first place of each key in a file; the items of a list have their keys in common. */
function firstPlaces(data: unknown): Map<string, Place> {
  const places = new Map<string, Place>();
  const walk = (value: unknown, key: string, place: Place): void => {
    if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, `${key}[]`, [...place, i]);
    else if (typeof value === "object" && value !== null && !(value instanceof Date))
      for (const [name, item] of Object.entries(value)) walk(item, `${key}.${name}`, [...place, name]);
    else if (!places.has(key)) places.set(key, place);
  };
  walk(data, "", []);
  return places;
}

type Node = Record<string | number, unknown>;
const parentOf = (data: unknown, place: Place): Node =>
  place.slice(0, -1).reduce((node, name) => node[name] as Node, data as Node);

/** Every word that some key of the club's files may hold. */
function wordsIn(schema: unknown): string[] {
  if (typeof schema !== "object" || schema === null) return [];
  const { enum: words = [], const: word } = schema as { enum?: unknown[]; const?: unknown };
  return [...words, word, ...Object.values(schema).flatMap(wordsIn)].filter((one) => typeof one === "string");
}
const WORDS = [...new Set(Object.values(inputSchemas()).flatMap(wordsIn))];

/** Other values for one, likely ones first: a little more, a day later, other words. */
function otherValues(value: unknown, slugs: readonly string[]): unknown[] {
  if (typeof value === "number") return [value + 1, value * 0.9, value + 0.001];
  if (typeof value === "boolean") return [!value];
  const text = String(value);
  const [, date, day] = /^(\d{4}-\d{2}-)(\d{2})$/.exec(text) ?? [];
  if (date !== undefined)
    return [1, -1].map((days) => `${date}${String(Number(day) + days).padStart(2, "0")}`);
  const [, number, unit] = /^([\d.]+)( \S+|X)$/.exec(text) ?? [];
  if (number !== undefined)
    return [Number(number) + 1, Number(number) * 0.9].map((other) => `${Number(other.toFixed(3))}${unit}`);
  return [`${text.trimEnd().slice(0, -1)}q`, "America/Boise", ...WORDS, ...slugs].filter(
    (other) => other !== text,
  );
}

/** Holds what is made to what was made before under the same inputs. */
function recorder() {
  const known = new Map<string, unknown>();
  const stale: string[] = [];
  const record = (key: string, result: unknown): void => {
    if (known.has(key) && !isDeepStrictEqual(known.get(key), result)) stale.push(key);
    known.set(key, result);
  };
  const keyOf = (kind: string, inputs: unknown): string => JSON.stringify([kind, inputs]);
  const kept: Cache = {
    keeps: true,
    memoize: (kind, inputs, compute) => {
      const key = keyOf(kind, inputs);
      if (!known.has(key)) record(key, compute(inputs));
      return known.get(key) as ReturnType<typeof compute>;
    },
    memoizeLast: openMemoizeLast(),
    // No output is reused: each is made, and recorded when the list of them is kept.
    recall: () => undefined,
    has: () => false,
    keep: (kind, _inputs, value) => {
      if (kind === OUTPUTS)
        for (const [address, inputs, sha256] of value as Outputs) record(`${address} ${inputs}`, sha256);
    },
    close: () => {},
    inputHash: openInputHash(),
    fileHash,
    fileStamp: fileHash,
  };
  const clean: Cache = {
    ...kept,
    memoize: (kind, inputs, compute) => {
      const result = compute(inputs);
      record(keyOf(kind, inputs), result);
      return result;
    },
    memoizeLast: unmemoizedLast,
  };
  return { kept, clean, stale };
}

const YAML_FILES = [
  "club.yaml",
  "rigs.yaml",
  "lakes/chalkhen.yaml",
  "patterns/bloodworm.yaml",
  "reports/2026.yaml",
  "trips/weekend.yaml",
];
/** Goes with the dates beside it, and cannot be another alone. */
const isSeason = (key: string): boolean => key.endsWith(".season");
const TEXT_CHANGES: readonly (readonly [file: string, from: RegExp, to: string])[] = [
  ["pages/etiquette.md", /$/, "\nOne line more.\n"],
  ["lakes/chalkhen.geojson", /"name":\s*"([^"]+)"/, '"name": "$1 altered"'],
  ["lakes/peatkettle.csv", /^(-?[\d.]+,-?[\d.]+,)[\d.]+/m, "$12.2"],
];

/** `npm test` changes one value in sixteen; EVERY_VALUE=1 all of them, which takes minutes. */
const { EVERY_VALUE } = process.env;
const STEP = EVERY_VALUE === undefined ? 16 : 1;

const { kept, clean, stale } = recorder();
const requestOf = (): GuideRequest => ({
  dataDir,
  outDir: path.join(work, "site"),
  version: "1",
  baseUrl: "https://club.example/",
});

/** @returns false when there is no such guide: the club was refused, or something does not fit on a card */
async function build(request = requestOf()): Promise<boolean> {
  await rm(request.outDir, { recursive: true, force: true });
  const anew = await readGuide(request, clean, () => {});
  if (anew.guide === undefined) return false;
  const { guide } = await makeGuide(request, () => {}, kept);
  if (guide === undefined) return false;
  expect(guide).toStrictEqual(anew.guide);
  expect(stale.map((key) => key.slice(0, 100))).toEqual([]);
  return true;
}

async function buildWithOther(file: string, text: string, place: Place): Promise<boolean> {
  const data = load(text);
  const parent = parentOf(data, place);
  const at = place.at(-1) ?? "";
  for (const other of otherValues(parent[at], ["peatkettle", "booby"])) {
    parent[at] = other;
    await writeFile(path.join(dataDir, file), dump(data));
    if (await build()) return true;
  }
  return false;
}

/** Long: each change makes a whole guide. */
const LIMIT_MS = 1_200_000;

describe("the same inputs, the same result", () => {
  test(
    "whoever makes it, and wherever it is published",
    async () => {
      expect(await build()).toBe(true);
      expect(await build({ ...requestOf(), version: "2" })).toBe(true);
      expect(await build({ ...requestOf(), baseUrl: "https://other.example/" })).toBe(true);
    },
    LIMIT_MS,
  );

  test.each(YAML_FILES)(
    "whichever value of %s is another",
    async (file) => {
      const text = await readFile(path.join(dataDir, file), "utf8");
      const places = [...firstPlaces(load(text))]
        .filter(([key]) => !isSeason(key))
        .filter((_, i) => i % STEP === 4 % STEP);
      expect(places).not.toEqual([]);
      const rejected: string[] = [];
      for (const [key, place] of places) if (!(await buildWithOther(file, text, place))) rejected.push(key);
      await writeFile(path.join(dataDir, file), text);
      expect(rejected).toEqual([]);
    },
    LIMIT_MS,
  );

  test.each(TEXT_CHANGES)(
    "another %s",
    async (file, from, to) => {
      const text = await readFile(path.join(dataDir, file), "utf8");
      expect(text).toMatch(from);
      await writeFile(path.join(dataDir, file), text.replace(from, to));
      expect(await build()).toBe(true);
      await writeFile(path.join(dataDir, file), text);
    },
    LIMIT_MS,
  );
});
