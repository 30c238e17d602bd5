import { readdirSync } from "node:fs";
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import type { CalendarDate } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Cache, openCache } from "./cache.ts";
import { clubFingerprint } from "./club-fingerprint.ts";
import { type Fingerprint, fingerprintOf } from "./fingerprint.ts";
import type { HashOf } from "./hashes.ts";

/** What is asked for, with all that its result depends on besides the program. */
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

/** What is said of a guide when it has been built, and again when it stands as it should. */
export interface Said {
  readonly club: string;
  readonly asOf: CalendarDate;
  readonly lakes: number;
  readonly pages: number;
  /** Files of cards. */
  readonly cards: number;
  readonly problems: readonly Diagnostic[];
}

/** All that a whole guide follows from, besides the program. */
type Inputs = readonly unknown[];

interface Standing {
  readonly made: Fingerprint;
  readonly said: Said;
}

const KIND = "guide";

/** Undefined for a part of a guide, and where the club folder cannot be read as it is. */
function inputsOf(
  { dataDir, version, asOf, baseUrl, only, preview }: GuideRequest,
  hashes?: HashOf,
): Inputs | undefined {
  const club = only === undefined ? clubFingerprint(dataDir, hashes) : undefined;
  return club && [version, asOf ?? null, baseUrl ?? null, preview ?? false, club];
}

/** True where a killed run left its folders beside the output: the next build clears them. */
const hasLeftovers = (outDir: string): boolean =>
  readdirSync(path.dirname(outDir)).some((name) => name.startsWith(`.${path.basename(outDir)}.`));

function standsIn(outDir: string, made: Fingerprint): boolean {
  try {
    return !hasLeftovers(outDir) && isDeepStrictEqual(fingerprintOf(outDir), made);
  } catch {
    return false;
  }
}

/** What was said of the guide that stands in the output folder; undefined unless building it anew would change not one byte. */
export function standingGuide(request: GuideRequest): Said | undefined {
  const outDir = path.resolve(request.outDir);
  const inputs = request.cache === false ? undefined : inputsOf(request);
  if (inputs === undefined) return undefined;
  const standing = openCache(request.cache).recall(KIND, inputs) as Standing | undefined;
  return standing !== undefined && standsIn(outDir, standing.made) ? standing.said : undefined;
}

/**
 * Begins to watch over a build.
 * @returns what takes note of the guide that was made, its files read before anybody else could reach them. Nothing
 * is noted when the club folder was edited meanwhile: nobody knows from which of its two states the guide was made
 */
export function noteGuide(request: GuideRequest, cache: Cache): (made: Fingerprint, said: Said) => void {
  const before = request.cache === false ? undefined : inputsOf(request, cache.hashes);
  return (made, said) => {
    if (before !== undefined && isDeepStrictEqual(inputsOf(request, cache.hashes), before))
      cache.keep(KIND, before, { made, said } satisfies Standing);
  };
}
