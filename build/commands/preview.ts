import { watch } from "node:fs";
import EleventyDevServer from "@11ty/eleventy-dev-server";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import type { GuideRequest } from "../pipeline.ts";
import { guideCommand } from "./guide.ts";

const FIRST_PORT = 8080;
/** Editors write a file in several steps; wait for the last one. */
const SETTLE_MS = 40;

/** Serves the guide and rebuilds it on every edit of the club folder, deletions included; runs until stopped. */
export async function previewCommand(request: GuideRequest, effects: Effects): Promise<Exit> {
  const first = await guideCommand(request, effects);
  if (first !== EXIT.done) return first;
  const server = EleventyDevServer.getServer("lake-season-guide", request.outDir, { showAllHosts: false });
  server.serve(FIRST_PORT);
  let building: Promise<unknown> = Promise.resolve();
  let settle: NodeJS.Timeout | undefined;
  const rebuild = async (): Promise<void> => {
    if ((await guideCommand(request, effects)) === EXIT.done) server.reload({ files: [] });
  };
  watch(request.dataDir, { recursive: true }, () => {
    clearTimeout(settle);
    settle = setTimeout(() => {
      building = building.then(rebuild);
    }, SETTLE_MS);
  });
  effects.say(`Watching ${request.dataDir}; stop with Ctrl-C.`);
  return EXIT.done;
}
