import { createHash } from "node:crypto";
import { deserialize, serialize } from "node:v8";

/** `sha256` of the key and of all that follows, then the value. */
const DIGEST_BYTES = 32;

const digestOf = (key: string, payload: Buffer): Buffer =>
  createHash("sha256").update(key).update("\n").update(payload).digest();

/** A value as it is kept: plain data, written so that it reads back the same to the last bit, -0 and all. */
export function sealed(key: string, value: unknown): Buffer {
  const payload = serialize(value);
  return Buffer.concat([digestOf(key, payload), payload]);
}

/** What was kept under this key; undefined for a cut, a damaged or another key's entry. */
export function unsealed(key: string, entry: Buffer): { readonly value: unknown } | undefined {
  const payload = entry.subarray(DIGEST_BYTES);
  if (!digestOf(key, payload).equals(entry.subarray(0, DIGEST_BYTES))) return undefined;
  try {
    return { value: deserialize(payload) };
  } catch {
    return undefined;
  }
}
