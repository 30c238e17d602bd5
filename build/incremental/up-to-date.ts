import { readdirSync } from "node:fs";
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import { ADDRESS } from "../model/addresses.ts";
import type { CalendarDate } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { contentsOfGuide } from "../publish/file-list.ts";
import { type Cache, openCache } from "./cache.ts";
import { clubFolderHash, type FileHash, FOLDER, type FolderHash, fileHash } from "./file-hash.ts";

/** What is wanted, with all that its result depends on besides the program. */
export interface GuideRequest {
  readonly dataDir: string;
  readonly outDir: string;
  readonly version: string;
  readonly asOf?: CalendarDate;
  readonly baseUrl?: string;
  /** One lake's slug: only its page and card are made anew, the rest stays as published. */
  readonly only?: string;
  /** Where results are kept from one run to the next; false for nowhere, undefined for the operating system's cache folder. */
  readonly cache?: string | false;
  /** For looking at while it is edited: not to be saved on a phone. */
  readonly preview?: boolean;
}

/** What is printed of a guide when it has been built, and again when it is up to date. */
export interface GuideSummary {
  readonly club: string;
  readonly asOf: CalendarDate;
  readonly lakes: number;
  readonly pages: number;
  /** Files of cards. */
  readonly cards: number;
  readonly problems: readonly Diagnostic[];
}

/** A guide that was built. */
interface BuiltGuide {
  /** Without the list of its files, which is written last. */
  readonly files: FolderHash;
  readonly summary: GuideSummary;
}

const GUIDE = "guide";

/**
 * All that a whole guide follows from, besides the program. Undefined for a part of a guide, and where the club folder
 * cannot be read as it is.
 */
function guideInputs(
  { dataDir, version, asOf, baseUrl, only, preview }: GuideRequest,
  hash?: FileHash,
): readonly unknown[] | undefined {
  const club = only === undefined ? clubFolderHash(dataDir, hash) : undefined;
  return club && [version, asOf ?? null, baseUrl ?? null, preview ?? false, club];
}

/** True where a killed run left its folders beside the output: the next build clears them. */
const hasLeftovers = (outDir: string): boolean =>
  readdirSync(path.dirname(outDir)).some((name) => name.startsWith(`.${path.basename(outDir)}.`));

function isPublished(outDir: string, files: FolderHash): boolean {
  try {
    if (hasLeftovers(outDir)) return false;
    const own = contentsOfGuide(outDir)?.own.filter((address) => address !== ADDRESS.fileList);
    return isDeepStrictEqual(
      own?.map((address) => [address, fileHash(path.join(outDir, address))]),
      files.filter(([, hash]) => hash !== FOLDER),
    );
  } catch {
    return false;
  }
}

/** The summary of the guide in the output folder; undefined unless building it anew would change not one byte. */
export function upToDateGuide(request: GuideRequest): GuideSummary | undefined {
  const outDir = path.resolve(request.outDir);
  const inputs = request.cache === false ? undefined : guideInputs(request);
  if (inputs === undefined) return undefined;
  const built = openCache(request.cache).recall(GUIDE, inputs) as BuiltGuide | undefined;
  return built !== undefined && isPublished(outDir, built.files) ? built.summary : undefined;
}

/**
 * Call it before a build.
 * @returns what keeps the guide that was built, its files read before anybody else could reach them. Nothing is kept when
 * the club folder was edited meanwhile: nobody knows from which of its two states the guide was made
 */
export function watchGuideInputs(
  request: GuideRequest,
  cache: Cache,
): (files: FolderHash, summary: GuideSummary) => void {
  const before = request.cache === false ? undefined : guideInputs(request, cache.fileHash);
  return (files, summary) => {
    if (before !== undefined && isDeepStrictEqual(guideInputs(request, cache.fileHash), before))
      cache.keep(GUIDE, before, { files, summary } satisfies BuiltGuide);
  };
}

const PROBLEMS = "problems of a club folder";

/**
 * The problems of a club folder: those that the same program found in it when it stood just as it does now, else found
 * anew. Nothing is kept when the folder was edited meanwhile.
 */
export async function upToDateProblems(
  dataDir: string,
  version: string,
  cache: Cache,
  find: () => Promise<readonly Diagnostic[]>,
): Promise<readonly Diagnostic[]> {
  const club = clubFolderHash(dataDir);
  if (club === undefined) return find();
  const inputs = [version, club];
  const last = cache.recall(PROBLEMS, inputs) as readonly Diagnostic[] | undefined;
  if (last !== undefined) return last;
  const problems = await find();
  if (isDeepStrictEqual(clubFolderHash(dataDir), club)) cache.keep(PROBLEMS, inputs, problems);
  return problems;
}
