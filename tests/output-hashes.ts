import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import fc from "fast-check";
import { findProblems } from "../build/commands/find-problems.ts";
import { makeGuide } from "../build/pipeline.ts";
import { baseClub, withShapeFiles } from "./fuzz/base-club.ts";
import { clubs } from "./fuzz/cases.ts";
import { hostileClub } from "./fuzz/mutations.ts";
import { writeClub } from "./fuzz/one-case.ts";

/**
 * Holds a rearrangement of the program to its output: `npm run output-hashes -- --record FILE [CLUB...]` writes down the
 * SHA-256 of every file made of the demo, of the club folders given and of 50 seeded hostile clubs, and of every problem found
 * in them; `--compare FILE` does the same again, prints what differs and ends with 1 if anything does. Nothing is cached.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    record: { type: "string" },
    compare: { type: "string" },
    fuzz: { type: "string", default: "50" },
    seed: { type: "string", default: "20260516" },
  },
});

type Hashes = Record<string, string>;
const VERSION = "0.0.0";
const sha256 = (bytes: string | Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const without = (dir: string, text: string): string => text.replaceAll(dir, "CLUB");

/** Every problem of a club, then every file of its guide, each under the club's name. */
async function hashesOf(name: string, dataDir: string): Promise<Hashes> {
  const ground = mkdtempSync(path.join(tmpdir(), "hashes-"));
  const outDir = path.join(ground, "site");
  try {
    const problems = await findProblems(dataDir, VERSION, (_kind, needs, compute) => compute(needs));
    const { guide, problems: said } = await makeGuide({ dataDir, outDir, version: VERSION, cache: false });
    const files = guide === undefined ? [] : readdirSync(outDir, { recursive: true, withFileTypes: true });
    return Object.fromEntries([
      [`${name} check`, sha256(without(dataDir, JSON.stringify(problems)))],
      [`${name} guide`, sha256(without(dataDir, JSON.stringify(said)))],
      ...files
        .filter((entry) => entry.isFile())
        .map((entry) => path.join(entry.parentPath, entry.name))
        .sort()
        .map((file) => [`${name}/${path.relative(outDir, file)}`, sha256(readFileSync(file))]),
    ]);
  } catch (error) {
    return { [`${name} crash`]: String(error) };
  } finally {
    rmSync(ground, { recursive: true });
  }
}

const found: Hashes = {};
for (const dir of ["demo-data", ...positionals])
  Object.assign(found, await hashesOf(path.basename(dir), dir));
const base = baseClub();
const samples = fc.sample(clubs(false), { seed: Number(values.seed), numRuns: Number(values.fuzz) });
for (const [i, { changes, shapes }] of samples.entries()) {
  const ground = mkdtempSync(path.join(tmpdir(), "hashes-"));
  const dir = writeClub(hostileClub(withShapeFiles(base, shapes), changes), ground);
  Object.assign(found, await hashesOf(`fuzz-${i}`, dir));
  rmSync(ground, { recursive: true, force: true });
}
console.log(`${Object.keys(found).length} hashes, ${sha256(JSON.stringify(found)).slice(0, 12)}`);
if (values.record !== undefined) {
  mkdirSync(path.dirname(values.record), { recursive: true });
  writeFileSync(values.record, `${JSON.stringify(found, null, 1)}\n`);
}
if (values.compare !== undefined) {
  const recorded = JSON.parse(readFileSync(values.compare, "utf8")) as Hashes;
  const names = new Set([...Object.keys(recorded), ...Object.keys(found)]);
  const changed = [...names].filter((name) => recorded[name] !== found[name]);
  for (const name of changed)
    console.log(
      `${recorded[name] === undefined ? "new" : found[name] === undefined ? "gone" : "changed"} ${name}`,
    );
  process.exitCode = changed.length > 0 ? 1 : 0;
}
