import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";

/** Which rooms of the house each room may import from; a room may always import from itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  model: [],
  season: ["model"],
  rigs: ["model"],
  water: ["model"],
  flies: ["model"],
  guide: ["season", "rigs", "water", "flies", "model"],
  program: [],
  input: ["program", "model"],
  edit: ["input", "model"],
  draw: ["guide", "model"],
  templates: ["draw", "guide", "model"],
  incremental: ["program", "guide", "water", "model"],
  site: ["program", "incremental", "templates", "draw", "feeds", "guide", "model"],
  cards: ["program", "incremental", "draw", "guide", "model"],
  feeds: ["guide", "model"],
  publish: ["model"],
};

/** Rooms that only compute: no files, no clock, no page or card library. */
const PURE_ROOMS = ["model", "season", "rigs", "water", "flies", "guide", "draw"];
const IMPURE_MODULES = /^(node:|@11ty\/|pdfkit|js-yaml|commander|svg-to-pdfkit)/;
const IMPURE_WORDS = /\bnew Date\(|\bDate\.now\b|\bMath\.random\b|\bprocess\.|\bperformance\.now\b/;
/** A power other than a square, whose last digit is the engine's: `power` in its place. */
const ENGINE_POWER = /\S \*\* (?!2\b(?!\.\d)).*|\bMath\.pow\b.*/;
/** Rooms whose modules keep nothing from one call to the next. */
const STATELESS_ROOMS = [...PURE_ROOMS, "templates", "input", "edit", "cards", "feeds"];
const MODULE_LET = /^(?:export )?let (\w+)/gm;
const MODULE_COLLECTION = /^(?:export )?const (\w+)[^;{]*?= new (?:Map|Set|WeakMap|WeakSet)\b/gm;
/** The one importer of each library that would otherwise spread. */
const ONE_HOME: Readonly<Record<string, string>> = {
  "@11ty/eleventy": "site",
  pdfkit: "cards",
  "temporal-polyfill": "model",
  "js-quantities": "model",
  "ical.js": "feeds",
  xmlbuilder2: "feeds",
  "markdown-it": "guide",
  "astronomy-engine": "water",
  fflate: "site",
  "@resvg/resvg-wasm": "site",
  "d3-contour": "water",
  "d3-delaunay": "water",
  "geographiclib-geodesic": "model",
  jstat: "flies",
};

interface Source {
  readonly file: string;
  readonly room: string;
  readonly text: string;
  readonly imports: readonly string[];
}

const ROOM_ROOTS = Object.keys(MAY_IMPORT).map((room) => (room === "templates" ? room : `build/${room}`));
const roomOf = (file: string): string | undefined => {
  const root = ROOM_ROOTS.find((candidate) => file.startsWith(`${candidate}/`));
  return root === undefined ? undefined : path.basename(root);
};

const sources: Source[] = ROOM_ROOTS.flatMap((root) =>
  readdirSync(root, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith(".d.ts"))
    .map((name) => {
      const file = path.posix.join(root, name);
      const text = readFileSync(file, "utf8");
      const imports = [...text.matchAll(/\b(?:from|import\()\s*"([^"]+)"/g)].map((match) => match[1] ?? "");
      return { file, room: path.basename(root), text, imports };
    }),
);

describe("the arrows run one way", () => {
  test("every room holds sources", () => {
    expect(new Set(sources.map(({ room }) => room))).toEqual(new Set(Object.keys(MAY_IMPORT)));
  });

  test("no import runs back", () => {
    const back = sources.flatMap(({ file, room, imports }) =>
      imports
        .filter((name) => name.startsWith("."))
        .map((name) => path.posix.join(path.posix.dirname(file), name))
        .filter((target) => {
          const targetRoom = roomOf(target);
          return (
            targetRoom !== room && !(MAY_IMPORT[room] ?? []).includes(targetRoom ?? "outside every room")
          );
        })
        .map((target) => `${file} -> ${target}`),
    );
    expect(back).toEqual([]);
  });

  test("computing is pure: no files, clock, chance or output library", () => {
    const impure = sources
      .filter(({ room }) => PURE_ROOMS.includes(room))
      .flatMap(({ file, text, imports }) => [
        ...imports.filter((name) => IMPURE_MODULES.test(name)).map((name) => `${file} imports ${name}`),
        ...(IMPURE_WORDS.test(text) ? [`${file} says ${IMPURE_WORDS.exec(text)?.[0]}`] : []),
      ]);
    expect(impure).toEqual([]);
  });

  test("powers are the same on every engine", () => {
    const fromEngine = sources
      .filter(({ room }) => [...PURE_ROOMS, "templates"].includes(room))
      .flatMap(({ file, text }) => ENGINE_POWER.exec(text)?.map((found) => `${file}: ${found}`) ?? []);
    expect(fromEngine).toEqual([]);
  });

  test("no module state: what is shared is made by the caller and passed", () => {
    const namesIn = (text: string, declaration: RegExp): string[] =>
      [...text.matchAll(declaration)].map((match) => match[1] ?? "");
    const stateful = sources
      .filter(({ room }) => STATELESS_ROOMS.includes(room))
      .flatMap(({ file, text }) =>
        [
          ...namesIn(text, MODULE_LET),
          ...namesIn(text, MODULE_COLLECTION).filter((name) =>
            new RegExp(`\\b${name}\\.(?:set|add|delete|clear)\\(`).test(text),
          ),
        ].map((name) => `${file}: ${name}`),
      );
    expect(stateful).toEqual([]);
  });

  test.each(Object.entries(ONE_HOME))("%s is imported in %s only", (library, home) => {
    const importers = sources.filter(({ imports }) => imports.includes(library)).map(({ room }) => room);
    expect(new Set(importers)).toEqual(new Set([home]));
  });
});
