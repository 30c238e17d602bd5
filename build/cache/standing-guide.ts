import { readdirSync } from "node:fs";
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import type { CalendarDate } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Cache, openCache } from "./cache.ts";
import { clubFingerprint } from "./club-fingerprint.ts";
import { type Fingerprint, fingerprintOf } from "./fingerprint.ts";
import type { HashOf } from "./hashes.ts";

/** A request for a guide, as far as its result depends on it. */
export interface GuideQuestion {
  readonly dataDir: string;
  readonly outDir: string;
  readonly version: string;
  readonly asOf?: CalendarDate;
  readonly baseUrl?: string;
  /** A part of a guide is always made. */
  readonly only?: string;
  readonly preview?: boolean;
  readonly cache?: string | false;
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
  { dataDir, version, asOf, baseUrl, only, preview }: GuideQuestion,
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
export function standingGuide(question: GuideQuestion): Said | undefined {
  const outDir = path.resolve(question.outDir);
  const inputs = question.cache === false ? undefined : inputsOf(question);
  if (inputs === undefined) return undefined;
  const standing = openCache(question.cache).recall(KIND, inputs) as Standing | undefined;
  return standing !== undefined && standsIn(outDir, standing.made) ? standing.said : undefined;
}

/**
 * Begins to watch over a build.
 * @returns what takes note of the guide that was made, its files read before anybody else could reach them. Nothing
 * is noted when the club folder was edited meanwhile: nobody knows from which of its two states the guide was made
 */
export function noteGuide(question: GuideQuestion, cache: Cache): (made: Fingerprint, said: Said) => void {
  const before = question.cache === false ? undefined : inputsOf(question, cache.hashes);
  return (made, said) => {
    if (before !== undefined && isDeepStrictEqual(inputsOf(question, cache.hashes), before))
      cache.keep(KIND, before, { made, said } satisfies Standing);
  };
}
