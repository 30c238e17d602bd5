import { readFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { Guide } from "../guide/guide-schema.ts";
import { type Cache, inMemory, openCache } from "../incremental/cache.ts";
import { ownFileStamp } from "../incremental/file-stamp.ts";
import { runJob, startThread, type Thread } from "../incremental/threads.ts";
import type { GuideRequest } from "../incremental/up-to-date.ts";
import { ADDRESS } from "../model/addresses.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import type { Progress } from "../model/progress.ts";
import { programModule } from "../program/program-files.ts";
import { contentsOfGuide } from "../publish/file-list.ts";
import { counted, type Effects, EXIT, type Exit, printInternalError, problemCount } from "./effects.ts";
import { guideCommand } from "./guide.ts";
import { type Body, ListenError, openPreviewServer, type PreviewServer } from "./preview-server.ts";
import { durationText } from "./progress-line.ts";
import { refusedPlace } from "./refused-places.ts";
import { watchFolder } from "./watch-folder.ts";
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

/** Where a preview is served. */
export interface PreviewPlace {
  readonly host: string;
  /** The first that is tried. */
  readonly port: number;
}

/** Reads files of the guide that is published: what its list does not name is somebody else's, and not shown. */
function openPublished(outDir: string): (address: string) => Buffer | undefined {
  let known: { readonly stamp: string | undefined; readonly own: ReadonlySet<string> } | undefined;
  return (address) => {
    try {
      const stamp = ownFileStamp(path.join(outDir, ADDRESS.fileList));
      if (known === undefined || known.stamp !== stamp)
        known = { stamp, own: new Set(contentsOfGuide(outDir)?.own) };
      return known.own.has(address) ? readFileSync(path.join(outDir, address)) : undefined;
    } catch {
      return undefined; // just being replaced
    }
  };
}

/**
 * Serves the guide and rebuilds it on every edit of the club folder, deletions included; runs until stopped. Pages are
 * drawn when they are asked for, of the guide as it was computed last; all else comes from the output folder.
 */
export async function previewCommand(
  request: GuideRequest,
  place: PreviewPlace,
  effects: Effects,
): Promise<Exit> {
  const refused = await refusedPlace(request);
  if (refused !== undefined) {
    effects.warn(refused);
    return EXIT.badUsage;
  }
  const published = openPublished(path.resolve(request.outDir));
  let textAt: (address: string) => string | undefined = () => undefined;
  const fileAt = (address: string): Body | undefined => {
    try {
      return textAt(address) ?? published(address);
    } catch (error) {
      printInternalError(error, request.outDir, effects);
      return published(address);
    }
  };
  let server: PreviewServer;
  try {
    server = await openPreviewServer(place, fileAt, effects.warn);
  } catch (error) {
    if (!(error instanceof ListenError)) throw error;
    effects.warn(error.message);
    return EXIT.cannotWrite;
  }
  const watch = watchFolder(request.dataDir);
  const cache = inMemory(openCache(request.cache));
  const first = await guideCommand(request, effects, undefined, cache);
  if (first !== EXIT.done) {
    server.close();
    return first;
  }
  const { openLiveFiles } = await import("../site/live-files.ts");
  const liveFiles = await openLiveFiles(request.dataDir);
  const preview = openPreview(request, effects, cache, (guide) => {
    textAt = liveFiles(guide);
    server.reload();
  });
  watch(() => void preview.edited());
  effects.say(`Preview at http://localhost:${server.port}/`);
  effects.say(`Watching ${request.dataDir}; stop with Ctrl-C.`);
  setImmediate(() => void preview.warmUp());
  return EXIT.done;
}
