import { createHash } from "node:crypto";
import type { Needs } from "../model/needs.ts";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

/** Names needs by what they hold. */
export type Digest = (kind: string, needs: Needs) => string;

/**
 * Begins to name needs. A part that is one object in the needs of many is hashed once; a list is named by its items, so
 * that a lake is hashed once for its own page and for the page of all lakes. Nothing handed in may change afterwards.
 */
export function openDigest(): Digest {
  const known = new WeakMap<object, string>();
  const ofOnce = (part: unknown): string => {
    if (typeof part !== "object" || part === null) return sha256(JSON.stringify([part]));
    let digest = known.get(part);
    if (digest === undefined) {
      digest = sha256(Array.isArray(part) ? JSON.stringify(part.map(ofOnce)) : JSON.stringify(part));
      known.set(part, digest);
    }
    return digest;
  };
  return (kind, needs) =>
    sha256(JSON.stringify([kind, Object.entries(needs).map(([name, part]) => [name, ofOnce(part)])]));
}
