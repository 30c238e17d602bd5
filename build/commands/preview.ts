import { watch } from "node:fs";
import path from "node:path";
import EleventyDevServer, { type Answer } from "@11ty/eleventy-dev-server";
import { openCache } from "../cache/cache.ts";
import { inMemory } from "../cache/memory.ts";
import type { GuideRequest } from "../cache/standing-guide.ts";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import { warnOfFault } from "./fault.ts";
import { guideCommand } from "./guide.ts";
import { openPreview } from "./preview-session.ts";

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
  const { liveFiles } = await import("../site/live-files.ts");
  let textAt: (address: string) => string | undefined = () => undefined;
  const answer = ({ url }: { readonly url: URL }): Answer | undefined => {
    const address = addressOf(url);
    const type = TYPES[path.posix.extname(address ?? "")];
    if (address === undefined || type === undefined) return undefined;
    try {
      const body = textAt(address);
      return body === undefined ? undefined : { headers: { "Content-Type": type }, body };
    } catch (error) {
      warnOfFault(error, request.outDir, effects);
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
