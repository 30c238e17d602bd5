import type { Again } from "../model/again.ts";
import type { Needs } from "../model/needs.ts";
import type { Remember } from "../model/remember.ts";
import { openAgain } from "./again.ts";
import type { Cache } from "./cache.ts";
import { markOf } from "./file-mark.ts";
import { openHashes } from "./hashes.ts";

/**
 * A cache for a process that builds one guide after another: what it has once found or made it keeps in memory and hands
 * out as the very same objects, which are then known by sight. Only what it was given by `cache` comes from the disk, and
 * as ever nothing handed out may be changed.
 */
export function inMemory(cache: Cache): Cache {
  const again: Again = openAgain();
  const { digest } = cache;
  let recent = new Map<string, unknown>();
  let older = new Map<string, unknown>();
  const remember: Remember = <Needs_, Result>(
    kind: string,
    needs: Needs_,
    compute: (needs: Needs_) => Result,
  ): Result => {
    const name = digest(kind, needs as Needs);
    const known = recent.has(name) ? recent : older;
    const result = known.has(name) ? (known.get(name) as Result) : cache.remember(kind, needs, compute);
    recent.set(name, result);
    return result;
  };
  return {
    ...cache,
    remember,
    again,
    markOf,
    hashes: openHashes(markOf),
    close: () => {
      // What was not asked for in two runs is forgotten.
      older = recent;
      recent = new Map();
      cache.close();
    },
  };
}
