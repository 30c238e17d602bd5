import { setTimeout as sleep } from "node:timers/promises";
import type { Cache } from "../cache/cache.ts";
import type { Effects } from "../effects.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import type { Progress } from "../model/progress.ts";
import type { GuideRequest } from "../pipeline.ts";
import { PublishError } from "../publish/publish.ts";
import { warnOfFault } from "./fault.ts";
import { counted, problemCount } from "./problem-count.ts";
import { durationText } from "./progress-line.ts";

/** The browser asks for its page first, and whoever types goes on typing. */
const QUIET_MS = 300;

/** A guide kept up to date with its club folder, edit by edit. */
export interface PreviewSession {
  /** Reads the folder so that the first edit finds all the rest known. Shows nothing. */
  warmUp(): Promise<void>;
  /** Call it when the club folder was edited: shows the new guide, then writes it behind. Resolves when it is shown. */
  edited(): Promise<void>;
  /** Resolves when all that was shown is written. */
  written(): Promise<void>;
}

/**
 * Begins a preview. An edit is shown as soon as the guide is computed; the folder with its cards follows, whole as ever.
 * An edit that comes meanwhile breaks the writing off, and the newer guide is written.
 * @param cache of this process, which keeps in memory what an edit leaves as it was
 * @param show lets the reader see a guide that is not written yet
 */
export function openPreview(
  request: GuideRequest,
  effects: Effects,
  cache: Cache,
  show: (guide: Guide) => void,
): PreviewSession {
  const { outDir } = request;
  let latest = new AbortController();
  let showing = Promise.resolve();
  let writing = Promise.resolve();

  const warnOf = (problems: readonly Diagnostic[]): void => {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
  };
  const warnOfError = (error: unknown): void =>
    error instanceof PublishError ? effects.warn(error.message) : warnOfFault(error, outDir, effects);
  const refuse = (problems: readonly Diagnostic[]): void =>
    effects.warn(`${problemCount(problems)}: nothing written, ${outDir} is as it was.`);

  async function write(signal: AbortSignal, told: readonly Diagnostic[]): Promise<void> {
    await sleep(QUIET_MS);
    if (signal.aborted) return;
    const started_ms = effects.now_ms();
    // Not while pages are drawn: many are under way at once, and each would fail by itself.
    const progress: Progress = (stage, done, total) => {
      if (stage !== "pages") signal.throwIfAborted();
      effects.progress?.(stage, done, total);
    };
    try {
      const { makeGuide } = await import("../pipeline.ts");
      const { guide, made, problems } = await makeGuide(request, progress, cache);
      if (signal.aborted) return;
      const known = new Set(told.map(formatDiagnostic));
      warnOf(problems.filter((problem) => !known.has(formatDiagnostic(problem))));
      if (guide === undefined) return refuse(problems);
      const took = durationText(effects.now_ms() - started_ms);
      effects.say(
        `Written to ${outDir}: ${counted(made.pages, "page")}, ${counted(made.cards, "card file")} (${took})`,
      );
    } catch (error) {
      if (!signal.aborted) warnOfError(error);
    }
  }

  async function update(signal: AbortSignal): Promise<void> {
    if (signal.aborted) return;
    const started_ms = effects.now_ms();
    try {
      const { readGuide } = await import("../pipeline.ts");
      const { guide, problems } = await readGuide(request, cache, () => {});
      warnOf(problems);
      if (guide === undefined) return refuse(problems);
      show(guide);
      const took = durationText(effects.now_ms() - started_ms);
      effects.say(
        `Pages are up to date in the browser (${took}); ${outDir} with its cards and data follows …`,
      );
      writing = writing.then(() => write(signal, problems));
    } catch (error) {
      warnOfError(error);
    }
  }

  return {
    warmUp: () => {
      showing = showing.then(async () => {
        const { readGuide } = await import("../pipeline.ts");
        await readGuide(request, cache, () => {}).catch(() => undefined);
      });
      return showing;
    },
    edited: () => {
      latest.abort();
      latest = new AbortController();
      const { signal } = latest;
      showing = showing.then(() => update(signal));
      return showing;
    },
    written: async () => {
      await showing;
      await writing;
    },
  };
}
