import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { cardProblems } from "../../build/cards/cards.ts";
import { composeGuide } from "../../build/guide/compose.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import type { Diagnostic } from "../../build/model/diagnostic.ts";
import { makeGuide } from "../../build/pipeline.ts";
import { loadTemplates, sitePages } from "../../build/site/pages.ts";
import { activeParts, HARMLESS } from "./active-parts.ts";
import { baseClub, withShapeFiles } from "./base-club.ts";
import type { Case } from "./cases.ts";
import { diagnosticFaults } from "./diagnostic-faults.ts";
import { feedFaults } from "./feed-faults.ts";
import { type HostileClub, hostileClub } from "./mutations.ts";

/** How far a club is taken: read and composed; also drawn and written in memory; also built and published. */
export type Depth = "compose" | "pages" | "build";

export interface CaseResult {
  /** What came of the club: refused with errors, or made into a guide. */
  readonly end: "refused" | "guide";
  readonly faults: readonly string[];
}

const SECRET = "THE-SECRET-OUTSIDE";
/** Every file and folder of a guide has a name that is safe in an address and on any disk. */
const SAFE_NAME = /^[a-z0-9]+([.-][a-z0-9]+)*$/;

const base = baseClub();
const content = await loadContent();
const rigTablesOf = new Map<string, unknown>();
/** Rig boxes are few among thousands of clubs: the tables of each are made once. */
function rememberRigTables<Inputs, T>(kind: string, inputs: Inputs, compute: (inputs: Inputs) => T): T {
  if (kind !== "rig tables") return compute(inputs);
  const name = JSON.stringify(inputs);
  if (!rigTablesOf.has(name)) rigTablesOf.set(name, compute(inputs));
  return rigTablesOf.get(name) as T;
}
const VERSION = { version: "0.0.0" };
const templates = await loadTemplates();
const pagesOf = (guide: Guide): string[] => sitePages(templates, guide).map(({ text }) => text());

/** Writes a club into a folder of its own beside a file that is none of its business. */
export function writeClub({ files, links }: HostileClub, ground: string): string {
  const dir = path.join(ground, "club");
  mkdirSync(dir);
  writeFileSync(path.join(ground, "outside.yaml"), `name: ${SECRET}\n`);
  const put = (name: string, write: (file: string) => void): void => {
    const file = path.join(dir, name);
    try {
      mkdirSync(path.dirname(file), { recursive: true });
      write(file);
    } catch (error) {
      // A name that no file can have, or one that is taken, is no case.
      if (!(error instanceof Error && "code" in error)) throw error;
    }
  };
  for (const [name, text] of files) put(name, (file) => writeFileSync(file, text));
  for (const [name, to] of links)
    put(name, (file) => symlinkSync(to === "outside.yaml" ? path.join(ground, to) : to, file));
  return dir;
}

/** What runs or loads in the pages of the club as it was written, before anything was made wrong. */
const ownParts: ReadonlySet<string> = await (async () => {
  const ground = mkdtempSync(path.join(tmpdir(), "fuzz-"));
  const { club } = await loadClub(writeClub({ files: base, links: new Map() }, ground));
  rmSync(ground, { recursive: true });
  const guide = club && composeGuide(club, content, VERSION).guide;
  if (guide === undefined) throw new Error("the club that is to be made wrong is wrong already");
  return new Set(pagesOf(guide).flatMap((html) => [...activeParts(html)]));
})();

function pageFaults(guide: Guide): string[] {
  return pagesOf(guide).flatMap((html) => [
    ...[...activeParts(html)]
      .filter((part) => !ownParts.has(part) && !HARMLESS.has(part))
      .map((part) => `in a page: ${part.slice(0, 300)}`),
    ...(html.includes(SECRET) ? ["a file outside was read"] : []),
  ]);
}

async function buildFaults(dataDir: string, ground: string): Promise<string[]> {
  const outDir = path.join(ground, "site");
  const { guide } = await makeGuide({ dataDir, outDir, cache: false, ...VERSION });
  const beside = readdirSync(ground).filter((name) => !["club", "outside.yaml", "site"].includes(name));
  const faults = beside.map((name) => `written beside the output: ${name}`);
  if (guide === undefined) return faults;
  for (const name of readdirSync(outDir, { recursive: true, encoding: "utf8" }))
    if (!name.split(path.sep).every((part) => SAFE_NAME.test(part)) || name.length > 200)
      faults.push(`an odd file: ${name}`);
  if (readFileSync(path.join(ground, "outside.yaml"), "utf8") !== `name: ${SECRET}\n`)
    faults.push("a file outside was changed");
  JSON.parse(readFileSync(path.join(outDir, "guide.json"), "utf8"));
  return faults;
}

async function faultsOf(club: HostileClub, depth: Depth, ground: string): Promise<CaseResult> {
  const dir = writeClub(club, ground);
  const problems: Diagnostic[] = [];
  const loaded = await loadClub(dir);
  problems.push(...loaded.problems);
  const composed =
    loaded.club && composeGuide(loaded.club, content, { ...VERSION, memoize: rememberRigTables });
  problems.push(...(composed?.problems ?? []));
  const guide = composed?.guide;
  if (guide !== undefined && depth !== "compose") problems.push(...cardProblems(guide));
  const isRefused = problems.some(({ severity }) => severity === "error");
  const faults = [
    ...diagnosticFaults(problems, club.files, loaded.problems.length),
    ...(JSON.stringify([problems, guide]).includes(SECRET) ? ["a file outside was read"] : []),
    ...(guide === undefined && !isRefused ? ["refused without a word"] : []),
  ];
  if (guide === undefined || depth === "compose")
    return { end: guide === undefined ? "refused" : "guide", faults };
  return {
    end: isRefused ? "refused" : "guide",
    faults: [
      ...faults,
      ...pageFaults(guide),
      ...feedFaults(guide),
      ...(depth === "build" ? await buildFaults(dir, ground) : []),
    ],
  };
}

/** Makes a club wrong, takes it as far as it should go, and says what went wrong on the way: nothing should. */
export async function runCase({ changes, far, shapes }: Case): Promise<CaseResult> {
  const ground = mkdtempSync(path.join(tmpdir(), "fuzz-"));
  try {
    return await faultsOf(hostileClub(withShapeFiles(base, shapes), changes), far, ground);
  } catch (error) {
    return { end: "refused", faults: [`crash: ${error instanceof Error ? error.stack : String(error)}`] };
  } finally {
    rmSync(ground, { recursive: true, force: true });
  }
}
