import { isDeepStrictEqual } from "node:util";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Cache } from "./cache.ts";
import { clubFingerprint } from "./club-fingerprint.ts";

const KIND = "problems of a club folder";

/**
 * The problems of a club folder: those that the same program found in it when it stood just as it does now, else found
 * anew. Nothing is kept when the folder was edited meanwhile: nobody knows in which of its two states they were found.
 */
export async function problemsOnce(
  dataDir: string,
  version: string,
  cache: Cache,
  find: () => Promise<readonly Diagnostic[]>,
): Promise<readonly Diagnostic[]> {
  const club = clubFingerprint(dataDir);
  if (club === undefined) return find();
  const needs = [version, club];
  const last = cache.recall(KIND, needs) as readonly Diagnostic[] | undefined;
  if (last !== undefined) return last;
  const problems = await find();
  if (isDeepStrictEqual(clubFingerprint(dataDir), club)) cache.keep(KIND, needs, problems);
  return problems;
}
