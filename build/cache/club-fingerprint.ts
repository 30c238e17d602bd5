import { type Fingerprint, fingerprintOf } from "./fingerprint.ts";
import { hashOf } from "./hashes.ts";

/** What the club's hidden files hold, a version history for one, is never read. */
const isRead = (name: string): boolean => !name.startsWith(".");

/** The club folder as it stands; undefined where it cannot be read as it is: then the loader finds the words. */
export function clubFingerprint(dataDir: string, hash = hashOf): Fingerprint | undefined {
  try {
    return fingerprintOf(dataDir, hash, isRead);
  } catch {
    return undefined;
  }
}
