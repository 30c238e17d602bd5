import { watch } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import EleventyDevServer, { type Answer } from "@11ty/eleventy-dev-server";
import type { Guide } from "../guide/guide-schema.ts";
import { type Cache, inMemory, openCache } from "../incremental/cache.ts";
import { runJob, startThread, type Thread } from "../incremental/threads.ts";
import type { GuideRequest } from "../incremental/up-to-date.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import type { Progress } from "../model/progress.ts";
import { programModule } from "../program/program-files.ts";
import { counted, type Effects, EXIT, type Exit, printInternalError, problemCount } from "./effects.ts";
import { guideCommand } from "./guide.ts";
import { durationText } from "./progress-line.ts";
import type { WriterData, Written } from "./write-thread.ts";

/** Writes guides in a thread of its own, so that whoever asks for a page meanwhile need not wait. */
interface Writer {
  /**
   * Has the club folder's guide written as the folder stands, once the job before has ended. One that is overtaken is
   * broken off.
   */
  write(progress: Progress): Promise<Written>;
  /** Breaks off what is being written. */
  breakOff(): void;
  /** Ends the thread. */
  close(): Promise<void>;
}

/** The thread lives until it is closed, and keeps in memory what an edit leaves as it was; one that failed is started anew. */
function openWriter(request: GuideRequest): Writer {
  const latest = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  let thread: Thread | undefined;
  const start = (): Thread => {
    const worker = startThread(programModule("build/commands/write-thread.ts"), {
      request,
      latest,
    } satisfies WriterData);
    worker.on("error", () => {
      if (thread === worker) thread = undefined;
    });
    return worker;
  };
  thread = start();
  let before: Promise<unknown> = Promise.resolve();
  return {
    write: (progress) => {
      const job = Atomics.add(latest, 0, 1) + 1;
      const written = before.then(() => {
        thread ??= start();
        return runJob<number, Parameters<Progress>, Written>(thread, job, (at) => progress(...at));
      });
      before = written.catch(() => undefined);
      return written;
    },
    breakOff: () => void Atomics.add(latest, 0, 1),
    close: async () => void (await thread?.terminate()),
  };
}

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
      else printInternalError(written.fault, outDir, effects);
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
        if (edit === edits) printInternalError(error, outDir, effects);
      });
    } catch (error) {
      printInternalError(error, outDir, effects);
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

const FIRST_PORT = 8080;
/** Editors write a file in several steps; wait for the last one. */
const SETTLE_MS = 40;

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
};

/** Where inside the guide a web address leads; undefined where it is none. */
function addressOf({ pathname }: URL): string | undefined {
  try {
    const address = decodeURIComponent(pathname.slice(1));
    return address === "" || address.endsWith("/") ? `${address}index.html` : address;
  } catch {
    return undefined;
  }
}

/** What editors keep beside a file while it is open; nothing hidden is ever read. */
const isHidden = (file: string): boolean => file.split(path.sep).some((name) => name.startsWith("."));

/**
 * Serves the guide and rebuilds it on every edit of the club folder, deletions included; runs until stopped. Pages are
 * drawn when they are asked for, of the guide as it was computed last; all else comes from the output folder.
 */
export async function previewCommand(request: GuideRequest, effects: Effects): Promise<Exit> {
  const cache = inMemory(openCache(request.cache));
  const first = await guideCommand(request, effects, undefined, cache);
  if (first !== EXIT.done) return first;
  const { openLiveFiles } = await import("../site/live-files.ts");
  const liveFiles = await openLiveFiles(request.dataDir);
  let textAt: (address: string) => string | undefined = () => undefined;
  const answer = ({ url }: { readonly url: URL }): Answer | undefined => {
    const address = addressOf(url);
    const type = TYPES[path.posix.extname(address ?? "")];
    if (address === undefined || type === undefined) return undefined;
    try {
      const body = textAt(address);
      return body === undefined ? undefined : { headers: { "Content-Type": type }, body };
    } catch (error) {
      printInternalError(error, request.outDir, effects);
      return undefined;
    }
  };
  const server = EleventyDevServer.getServer("lake-season-guide", request.outDir, {
    showAllHosts: false,
    onRequest: { "/*": answer },
  });
  server.serve(FIRST_PORT);
  const preview = openPreview(request, effects, cache, (guide) => {
    textAt = liveFiles(guide);
    server.reload({ files: [] });
  });
  let settle: NodeJS.Timeout | undefined;
  watch(request.dataDir, { recursive: true }, (_, file) => {
    if (file !== null && isHidden(file)) return;
    clearTimeout(settle);
    settle = setTimeout(() => void preview.edited(), SETTLE_MS);
  });
  effects.say(`Watching ${request.dataDir}; stop with Ctrl-C.`);
  setImmediate(() => void preview.warmUp());
  return EXIT.done;
}
