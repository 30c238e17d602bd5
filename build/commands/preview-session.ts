import { setTimeout as sleep } from "node:timers/promises";
import type { Cache } from "../cache/cache.ts";
import type { GuideRequest } from "../cache/standing-guide.ts";
import type { Effects } from "../effects.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import { warnOfFault } from "./fault.ts";
import { counted, problemCount } from "./problem-count.ts";
import { durationText } from "./progress-line.ts";
import { openWriter } from "./write-behind.ts";

/** Whoever types goes on typing: an edit that follows at once spares the writing. */
const QUIET_MS = 300;

/** A guide kept up to date with its club folder, edit by edit. */
export interface PreviewSession {
  /** Reads the folder so that the first edit finds all the rest known. Shows nothing. */
  warmUp(): Promise<void>;
  /** Call it when the club folder was edited: shows the new guide, then has it written. Resolves when it is shown. */
  edited(): Promise<void>;
  /** Resolves when all that was shown is written. */
  written(): Promise<void>;
  /** Breaks off what is being written, and ends. */
  close(): Promise<void>;
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
  const writer = openWriter(request);
  let edits = 0;
  let showing = Promise.resolve();
  let writing = Promise.resolve();

  const warnOf = (problems: readonly Diagnostic[]): void => {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
  };
  const refuse = (problems: readonly Diagnostic[]): void =>
    effects.warn(`${problemCount(problems)}: nothing written, ${outDir} is as it was.`);

  async function write(edit: number, told: readonly Diagnostic[]): Promise<void> {
    await sleep(QUIET_MS);
    if (edit !== edits) return;
    const started_ms = effects.now_ms();
    const written = await writer.write((...at) => effects.progress?.(...at));
    if (edit !== edits || "overtaken" in written) return;
    if ("failed" in written) {
      if (written.fault === undefined) effects.warn(written.failed);
      else warnOfFault(written.fault, outDir, effects);
      return;
    }
    const known = new Set(told.map(formatDiagnostic));
    warnOf(written.problems.filter((problem) => !known.has(formatDiagnostic(problem))));
    if ("refused" in written) return refuse(written.problems);
    const { pages, cards } = written.made;
    const took = durationText(effects.now_ms() - started_ms);
    effects.say(`Written to ${outDir}: ${counted(pages, "page")}, ${counted(cards, "card file")} (${took})`);
  }

  async function update(edit: number): Promise<void> {
    if (edit !== edits) return;
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
      writing = write(edit, problems).catch((error: unknown) => {
        if (edit === edits) warnOfFault(error, outDir, effects);
      });
    } catch (error) {
      warnOfFault(error, outDir, effects);
    } finally {
      cache.close();
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
      edits += 1;
      writer.breakOff();
      const edit = edits;
      showing = showing.then(() => update(edit));
      return showing;
    },
    written: async () => {
      await showing;
      await writing;
    },
    close: () => {
      edits += 1;
      return writer.close();
    },
  };
}
