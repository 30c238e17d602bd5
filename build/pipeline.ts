import path from "node:path";
import { writeCards } from "./cards/cards.ts";
import { writeData } from "./feeds/write-data.ts";
import { composeGuide } from "./guide/compose.ts";
import type { Guide } from "./guide/guide-schema.ts";
import { type Cache, openCache } from "./incremental/cache.ts";
import { openOutputs } from "./incremental/outputs.ts";
import { precomputeShapes } from "./incremental/precompute-shapes.ts";
import { type GuideRequest, watchGuideInputs } from "./incremental/up-to-date.ts";
import { placeAtFields } from "./input/field-places.ts";
import { inputSchemas } from "./input/json-schemas.ts";
import { loadClub } from "./input/load-club.ts";
import { loadContent } from "./input/load-content.ts";
import type { Diagnostic } from "./model/diagnostic.ts";
import type { Progress } from "./model/progress.ts";
import { publish } from "./publish/publish.ts";
import { writeOfflineListAndSitemap } from "./site/offline-and-sitemap.ts";
import { isSecret } from "./site/outputs.ts";
import { writeSite } from "./site/site.ts";

export interface GuideResult {
  /** Absent when the data has errors; then nothing was written. */
  readonly guide?: Guide;
  /** How many pages and card files were made now. */
  readonly made: Made;
  readonly problems: readonly Diagnostic[];
}

/** How many of what a build makes one by one. */
interface Made {
  readonly pages: number;
  readonly cards: number;
}

/** The request cannot be met as it was asked. */
export class RequestError extends Error {
  override readonly name = "RequestError";
}

/**
 * The whole program: club folder -> Club -> Guide -> pages, cards and data, swapped in at once.
 * @param progress told how far it is; what it throws ends the build, and leaves what is published as it was
 * @param cache of a process that builds more than once; opened as the request says unless it is given
 * @throws RequestError when `only` names no lake of the club; PublishError when the output cannot be written
 */
export async function makeGuide(
  request: GuideRequest,
  progress: Progress = () => {},
  cache: Cache = openCache(request.cache),
): Promise<GuideResult> {
  const made = { pages: 0, cards: 0 };
  const counting: Progress = (stage, done, total) => {
    if (stage === "pages" || stage === "cards") made[stage] = done;
    progress(stage, done, total);
  };
  try {
    return { ...(await buildGuide(request, cache, counting, made)), made };
  } finally {
    cache.close();
  }
}

/**
 * Club folder -> Club -> Guide, and nothing written.
 * @returns no guide when the data has errors
 */
export async function readGuide(
  request: GuideRequest,
  cache: Cache,
  progress: Progress,
): Promise<Pick<GuideResult, "guide" | "problems">> {
  const { memoize, memoizeLast, fileStamp } = cache;
  progress("load", 0, 0);
  const { club, problems } = await loadClub(request.dataDir, {
    ...(request.asOf === undefined ? {} : { asOf: request.asOf }),
    memoize,
    memoizeLast,
    fileStamp,
  });
  if (club === undefined) return { problems };
  progress("compute", 0, 0);
  // Once for a process that goes on: an edit draws few shapes anew. What it fails at is met again while composing.
  await memoizeLast("shapes of all lakes", [club.units], () =>
    precomputeShapes(club, cache, (done, total) => progress("compute", done, total)).catch(() => undefined),
  );
  const content = await memoizeLast("content", [], loadContent);
  const { guide, problems: doubts } = composeGuide(club, content, { ...request, memoize, memoizeLast });
  const said = [...problems, ...doubts];
  return guide === undefined ? { problems: said } : { guide, problems: said };
}

async function buildGuide(
  request: GuideRequest,
  cache: Cache,
  progress: Progress,
  made: Made,
): Promise<Omit<GuideResult, "made">> {
  const keepGuide = watchGuideInputs(request, cache);
  const { guide, problems: said } = await readGuide(request, cache, progress);
  if (guide === undefined) return { problems: said };
  if (request.only !== undefined && !guide.lakes.some(({ slug }) => slug === request.only))
    throw new RequestError(
      `no lake “${request.only}”: the lakes are ${guide.lakes.map(({ slug }) => slug).join(", ")}`,
    );
  const unfit: Diagnostic[] = [];
  const outDir = path.resolve(request.outDir);
  const unlisted = new Set<string>();
  const write = async (staging: string): Promise<boolean> => {
    const kept = request.only === undefined ? openOutputs(outDir, staging, cache) : undefined;
    const schemas = inputSchemas();
    const site = await writeSite(guide, staging, {
      clubDir: path.resolve(request.dataDir),
      only: request.only,
      kept,
      schemas: ["guide", ...Object.keys(schemas)],
      progress,
    });
    unfit.push(...site.problems);
    for (const output of site.outputs) if (isSecret(output)) unlisted.add(output.address);
    progress("data", 0, 0);
    await writeData(guide, schemas, staging);
    const misfits = await writeCards(guide, staging, { only: request.only, kept, progress });
    unfit.push(...(await placeAtFields(request.dataDir, misfits)));
    if (unfit.length > 0) return false;
    progress("publish", 0, 0);
    if (request.preview !== true) await writeOfflineListAndSitemap(guide, site.outputs, staging);
    const { club, asOf, lakes } = guide;
    if (kept !== undefined)
      keepGuide(kept.keep(), { club: club.name, asOf, lakes: lakes.length, ...made, problems: said });
    return true;
  };
  const published = await publish(outDir, write, {
    keep: request.only !== undefined,
    isUnlisted: (address) => unlisted.has(address),
  });
  return published ? { guide, problems: said } : { problems: [...said, ...unfit] };
}
