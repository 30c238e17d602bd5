import { createHash } from "node:crypto";
import type { Inputs } from "../model/memoize.ts";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

/** Names inputs by their content. */
export type InputHash = (kind: string, inputs: Inputs) => string;

/**
 * Hashes inputs. An object that is part of many inputs is hashed once; a list is named by its items, so that a lake is
 * hashed once for its own page and for the page of all lakes. Nothing passed in may change afterwards.
 */
export function openInputHash(): InputHash {
  const known = new WeakMap<object, string>();
  const hashOf = (part: unknown): string => {
    if (typeof part !== "object" || part === null) return sha256(JSON.stringify([part]));
    let hash = known.get(part);
    if (hash === undefined) {
      hash = sha256(Array.isArray(part) ? JSON.stringify(part.map(hashOf)) : JSON.stringify(part));
      known.set(part, hash);
    }
    return hash;
  };
  return (kind, inputs) =>
    sha256(JSON.stringify([kind, Object.entries(inputs).map(([name, part]) => [name, hashOf(part)])]));
}
