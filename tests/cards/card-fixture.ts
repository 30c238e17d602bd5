import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeCards } from "../../build/cards/cards.ts";
import { layoutCard } from "../../build/cards/lake/lake-cards.ts";
import { createRuler, parseFonts } from "../../build/cards/pdf/document.ts";
import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { bareLake, day, fullLake, guideOf } from "../lake-fixture.ts";

export const AS_OF = day("2026-05-16");

export const ember = fullLake("ember", "Ember Lake", day("2026-05-12"), AS_OF);
export const kettle = bareLake("kettle", "Kettle Lake", day("2026-04-29"), AS_OF);
export const high = fullLake("high", "High Lake", day("2026-06-01"), AS_OF);
/** Known by its name and place alone, and the name is long. */
export const long = bareLake("long", "Pennesseewassee Norway Lake", day("2026-05-02"), AS_OF);

export const ruler = createRuler(parseFonts());

export const layoutOf = (lake: GuideLake, change: Partial<Guide> = {}) =>
  layoutCard(guideOf([lake], AS_OF, change), lake, ruler);

/** Writes a guide's cards to a folder of their own, and reads them back by name. */
export async function cardsOf(guide: Guide, only?: string) {
  const dir = await mkdtemp(path.join(tmpdir(), "cards-"));
  try {
    const problems = await writeCards(guide, dir, { only });
    const names = await readdir(path.join(dir, "cards")).catch(() => []);
    const files = new Map<string, Buffer>();
    for (const name of names.sort()) files.set(name, await readFile(path.join(dir, "cards", name)));
    return { problems, files };
  } finally {
    await rm(dir, { recursive: true, force: true });
  }
}

/** A file that must be among those written. */
export function need(files: ReadonlyMap<string, Buffer>, name: string): Buffer {
  const bytes = files.get(name);
  if (bytes === undefined) throw new Error(`${name} was not written`);
  return bytes;
}
