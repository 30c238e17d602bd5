import { createHash } from "node:crypto";
import { ADDRESS } from "../../templates/sheet.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import type { ListedFile } from "./listed-files.ts";

const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("base64");

/** For programs, or for a device with a signal: not worth the room on a phone. */
const isForPrograms = (address: string): boolean =>
  address === ADDRESS.data || address === ADDRESS.reportsFeed || address.endsWith(".geojson");

/**
 * The script that tells the offline worker what to save: each file's address and the SHA-256 of its bytes, in base64
 * as browsers check it (W3C Subresource Integrity). Same files, same script: a phone that has them fetches nothing.
 */
export function offlineFilesScript(files: readonly ListedFile[], { asOf }: Pick<Guide, "asOf">): string {
  const hashes = files
    .filter(({ address }) => !isForPrograms(address))
    .map(({ address, bytes }) => [address, sha256(bytes)]);
  const list = { asOf, asOfWords: dayMonthYear(asOf), files: Object.fromEntries(hashes) };
  return `self.guideFiles = ${JSON.stringify(list)};\n`;
}
