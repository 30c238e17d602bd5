import { type Fingerprint, fingerprintOf } from "./fingerprint.ts";

/** What the club's hidden files hold, a version history for one, is never read. */
const isRead = (name: string): boolean => !name.startsWith(".");

/** The club folder as it stands; undefined where it cannot be read as it is: then the loader finds the words. */
export function clubFingerprint(dataDir: string): Fingerprint | undefined {
  try {
    return fingerprintOf(dataDir, isRead);
  } catch {
    return undefined;
  }
}
