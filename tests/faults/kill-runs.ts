import { cpSync, existsSync, mkdirSync, statSync, writeFileSync } from "node:fs";
import { readdir, rm } from "node:fs/promises";
import path from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import { isDeepStrictEqual } from "node:util";
import { ADDRESS } from "../../build/model/addresses.ts";
import { recoverOutput } from "../../build/publish/publish.ts";
import { seeded } from "../seeded-random.ts";
import { type Child, start, startGuide } from "./child.ts";
import { OWN_FILES } from "./own-files.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

/** When the real command is killed: at any time, while it writes, around the swap, or while the old guide is deleted. */
const AIMS = ["any time", "writing", "swap", "deleting"] as const;
export type Aim = (typeof AIMS)[number] | "many swaps" | "many swaps, two renames";

export interface KillRun {
  readonly aim: Aim;
  /** False when the program was done before the kill. */
  readonly wasKilled: boolean;
  /** What was published after the kill, before anything was mended. */
  readonly found: "old" | "new" | "nothing" | "broken";
  /** What stood beside the output after the kill. */
  readonly left: readonly string[];
  /** How many times a reader looked at the output while the program ran, and found none. */
  readonly looks: number;
  readonly misses: number;
  /** What was wrong after the next run; "" when nothing was. */
  readonly wrongAfterNext: string;
}

/** Turns until `isDue` holds or the child has ended; between turns a reader looks for the guide. */
async function lookUntil(child: Child, out: string, isDue: () => boolean) {
  let [looks, misses, ended] = [0, 0, false];
  child.process.once("exit", () => {
    ended = true;
  });
  while (!ended && !isDue()) {
    looks++;
    if (!existsSync(path.join(out, "guide.json"))) misses++;
    await nextTurn();
  }
  return { looks, misses };
}

const inodeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.ino ?? 0;

/** Due a while after something was first seen. */
function dueAfter(isSeen: () => boolean, wait_ms: number): () => boolean {
  let seen_ms: number | undefined;
  return () => {
    if (seen_ms === undefined && isSeen()) seen_ms = performance.now();
    return seen_ms !== undefined && performance.now() - seen_ms >= wait_ms;
  };
}

async function killed(child: Child, out: string, isDue: () => boolean) {
  const seen = await lookUntil(child, out, isDue);
  child.process.kill("SIGKILL");
  const { exit } = await child.ended;
  return { ...seen, wasKilled: exit === null };
}

const besides = async (dir: string): Promise<string[]> =>
  (await readdir(dir)).filter((name) => name.startsWith("."));

/** Two guides that were built undisturbed, and folders to disturb builds in. */
export class KillGround {
  private constructor(
    readonly clubs: TinyClubs,
    readonly whole: Readonly<Record<"old" | "new", Readonly<Record<string, string>>>>,
    /** How long an undisturbed build takes. */
    readonly build_ms: number,
  ) {}

  static async prepare(): Promise<KillGround> {
    const clubs = await tinyClubs();
    const build = async (data: string, out: string) => {
      const { exit, text } = await startGuide(data, out).ended;
      if (exit !== 0) throw new Error(text);
      return contentsOf(out);
    };
    const old = await build(clubs.old, path.join(clubs.dir, "whole-old"));
    const begun_ms = performance.now();
    const fresh = await build(clubs.new, path.join(clubs.dir, "whole-new"));
    const build_ms = performance.now() - begun_ms;
    if (isDeepStrictEqual(old, fresh)) throw new Error("the two guides are the same: nothing could be seen");
    return new KillGround(clubs, { old, new: fresh }, build_ms);
  }

  remove(): Promise<void> {
    return rm(this.clubs.dir, { recursive: true, force: true });
  }

  #isDue(aim: Aim, out: string, chance: number): () => boolean {
    const next = path.join(path.dirname(out), `.${path.basename(out)}.next`);
    const before = inodeOf(out);
    switch (aim) {
      case "writing":
        return dueAfter(() => existsSync(next), chance * this.build_ms * 0.5);
      case "swap":
        // The last file written; then the files are flushed, and the folders change places.
        return dueAfter(() => existsSync(path.join(next, ADDRESS.offlineFiles)), chance * 40);
      case "deleting":
        return dueAfter(() => inodeOf(out) !== before, chance * 4);
      default:
        return dueAfter(() => true, chance * this.build_ms * 1.1);
    }
  }

  async #foundAt(out: string): Promise<KillRun["found"]> {
    if (!existsSync(out)) return "nothing";
    const found = Object.fromEntries(
      Object.entries(await contentsOf(out)).filter(([name]) => name !== ".git"),
    );
    for (const version of ["old", "new"] as const)
      if (isDeepStrictEqual(found, { ...this.whole[version], ...OWN_FILES })) return version;
    return "broken";
  }

  /** Kills the real command over a published guide, looks at what is published, and runs it again. */
  async killCommand(aim: Aim, name: string, chance: number): Promise<KillRun> {
    const ground = path.join(this.clubs.dir, name);
    const out = path.join(ground, "site");
    cpSync(path.join(this.clubs.dir, "whole-old"), out, { recursive: true });
    for (const [name, text] of Object.entries(OWN_FILES)) {
      mkdirSync(path.dirname(path.join(out, name)), { recursive: true });
      writeFileSync(path.join(out, name), text);
    }
    // A cache of its own: the kill also hits what is kept for the next run.
    const cache = path.join(ground, "cache");
    const run = await killed(startGuide(this.clubs.new, out, { cache }), out, this.#isDue(aim, out, chance));
    const [found, left] = [await this.#foundAt(out), await besides(ground)];
    const again = await startGuide(this.clubs.new, out, { cache }).ended;
    const wrong = [
      ...(again.exit === 0 ? [] : [`the next run ended with ${again.exit}: ${again.text}`]),
      ...((await this.#foundAt(out)) === "new" ? [] : ["the next run published something else"]),
      ...(await besides(ground)).map((leftover) => `the next run left ${leftover}`),
    ];
    await rm(ground, { recursive: true, force: true });
    return { aim, ...run, found, left, wrongAfterNext: wrong.join("; ") };
  }

  /**
   * Kills a program that publishes without pause, so that the kill is often within a swap.
   * @param canExchange false: it runs where no program can exchange folders for it
   */
  async killSwapping(canExchange: boolean, name: string, chance: number): Promise<KillRun> {
    const ground = path.join(this.clubs.dir, name);
    const out = path.join(ground, "site");
    const options = canExchange ? {} : { env: { PATH: "" } };
    const runOnce = async (first: number, wait_ms: number) => {
      const child = start("tests/faults/publish-many.ts", [out, String(first)], options);
      await lookUntil(child, out, () => existsSync(path.join(out, "guide.json")));
      return killed(
        child,
        out,
        dueAfter(() => true, wait_ms),
      );
    };
    const run = await runOnce(0, 20 + chance * 200);
    const [found, left] = [await numbersIn(out), await besides(ground)];
    const next = await nextAfter(out, ground);
    await rm(ground, { recursive: true, force: true });
    return {
      aim: canExchange ? "many swaps" : "many swaps, two renames",
      ...run,
      found: found === undefined ? "nothing" : found.size === 1 ? "new" : "broken",
      left,
      wrongAfterNext: next,
    };
  }
}

/** Which guides the files in a folder are of: one, if it is whole. Undefined when there is no folder. */
async function numbersIn(out: string): Promise<ReadonlySet<string> | undefined> {
  if (!existsSync(out)) return undefined;
  const { "guide.json": guide, "guide-files.json": list, CNAME, ...pages } = await contentsOf(out);
  const { number = 0 } = JSON.parse(guide ?? "{}") as { number?: number };
  const isWhole = Object.keys(pages).length === 40 && list !== undefined;
  // Somebody's own file is put there after the first guide.
  const isKept = number === 0 || CNAME === OWN_FILES.CNAME;
  return new Set([
    isWhole ? `guide ${number}\n` : "some pages are missing",
    ...(isKept ? [] : ["a file that is not the guide's is lost"]),
    ...Object.values(pages),
  ]);
}

/** What every run does first, without the build behind it. */
async function nextAfter(out: string, ground: string): Promise<string> {
  await recoverOutput(out);
  const numbers = await numbersIn(out);
  return [
    ...(numbers === undefined ? ["the next run left no guide"] : []),
    ...(numbers !== undefined && numbers.size !== 1 ? ["the next run left a broken guide"] : []),
    ...(await besides(ground)).map((leftover) => `the next run left ${leftover}`),
  ].join("; ");
}

/** Runs the real command at one aim after the other, then a program that swaps without pause, every third time with two renames. */
export async function killRuns(
  ground: KillGround,
  plan: { readonly commands: number; readonly swaps: number; readonly seed: number; readonly name: string },
  tell: (run: KillRun) => void = () => undefined,
): Promise<KillRun[]> {
  const random = seeded(plan.seed);
  const runs: KillRun[] = [];
  const add = (run: KillRun): void => {
    tell(run);
    runs.push(run);
  };
  for (let i = 0; i < plan.commands; i++)
    add(await ground.killCommand(AIMS[i % AIMS.length] ?? "any time", `${plan.name}-c${i}`, random()));
  for (let i = 0; i < plan.swaps; i++)
    add(await ground.killSwapping(i % 3 !== 2, `${plan.name}-s${i}`, random()));
  return runs;
}

/** What must not be: a guide that is not whole, none where folders can be exchanged, and anything wrong after the next run. */
export const isBad = ({ aim, found, misses, wrongAfterNext }: KillRun): boolean =>
  found === "broken" ||
  wrongAfterNext !== "" ||
  (aim !== "many swaps, two renames" && (found === "nothing" || misses > 0));
