import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { placeCards } from "../../build/cards/card-writer.ts";
import { writeCards } from "../../build/cards/cards.ts";
import { LAKE_SHEETS, planLakeCards } from "../../build/cards/lake/lake-cards.ts";
import type { Ruler } from "../../build/cards/layout/column.ts";
import { parseFonts } from "../../build/cards/pdf/document.ts";
import { guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { lakeSheets } from "../../build/guide/print-files.ts";
import { LAKES_PER_VOLUME, sheetVolumes } from "../../build/guide/sheet-volumes.ts";
import { openInputHash } from "../../build/incremental/input-hash.ts";
import type { Progress } from "../../build/model/progress.ts";
import { guideOf } from "../lake-fixture.ts";
import { AS_OF, cardsOf, ember, need, ruler } from "./card-fixture.ts";

let dir: string;
beforeEach(async () => {
  dir = await mkdtemp(path.join(tmpdir(), "volumes-"));
});
afterEach(() => rm(dir, { recursive: true, force: true }));

const one = guideOf([ember], AS_OF);
const slugAt = (i: number): string => `lake-${String(i).padStart(3, "0")}`;
const guideWith = (count: number): Guide => ({
  ...one,
  lakes: one.lakes.flatMap((lake) =>
    Array.from({ length: count }, (_, i) => ({ ...lake, slug: slugAt(i), name: `Lake ${i}` })),
  ),
});

/** What each file of sheets would be made of; nothing is inked. */
async function sheetsOf(guide: Guide): Promise<ReadonlyMap<string, string>> {
  const digest = openInputHash();
  const files = new Map<string, string>();
  const reuse = (kind: string, needs: Readonly<Record<string, unknown>>, addresses: readonly string[]) => {
    for (const address of addresses)
      if (address.startsWith("cards/sheets-")) files.set(path.basename(address, ".pdf"), digest(kind, needs));
    return true;
  };
  await writeCards(guide, dir, { kept: { reuse } });
  return files;
}

describe("sheets in volumes", () => {
  test("take the cards that are placed already, and place the others", async () => {
    const { lakes } = guideWith(2);
    const frame = guideFrame(one);
    const [first, second] = lakes;
    if (first === undefined || second === undefined) throw new Error("two lakes");
    const placed = placeCards(planLakeCards(frame, first), { ruler, lakes: [] }).lakes ?? [];
    const inputs = { guide: frame, number: null, lakes: [first] };
    const fonts = parseFonts();
    const noRuler: Ruler = {
      width_pt: () => {
        throw new Error("placed anew");
      },
      missing: () => [],
      xHeight_pt: () => 0,
    };
    const taken = await LAKE_SHEETS.place(inputs, { ruler: noRuler, lakes: placed }).ink(fonts);
    expect(taken).toEqual(await LAKE_SHEETS.place(inputs, { ruler, lakes: [] }).ink(fonts));
    const both = LAKE_SHEETS.place({ ...inputs, lakes }, { ruler: noRuler, lakes: placed });
    await expect(async () => both.ink(fonts)).rejects.toThrow("placed anew");
  });

  test("every lake stands in one volume, none is too large, and a forecast’s order changes nothing", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(500).map(slugAt), { minLength: 1, maxLength: 200 }), (slugs) => {
        const lakes = slugs.map((slug) => ({ slug }));
        const volumes = sheetVolumes(lakes);
        expect(volumes.flatMap((volume) => volume.lakes.map(({ slug }) => slug))).toEqual([...slugs].sort());
        expect(Math.max(...volumes.map((volume) => volume.lakes.length))).toBeLessThanOrEqual(
          LAKES_PER_VOLUME,
        );
        expect(sheetVolumes(lakes.toReversed())).toEqual(volumes);
      }),
    );
  });

  test("as many as a volume holds are one file for each paper, one more are two", async () => {
    const full = await sheetsOf(guideWith(LAKES_PER_VOLUME));
    expect([...full.keys()]).toEqual(["sheets-a4", "sheets-letter"]);
    const over = await sheetsOf(guideWith(LAKES_PER_VOLUME + 1));
    expect([...over.keys()]).toEqual(["sheets-1-a4", "sheets-1-letter", "sheets-2-a4", "sheets-2-letter"]);
  });

  test("an edit of a lake changes its own volume alone, also when the lakes’ order changes with it", async () => {
    const guide = guideWith(2 * LAKES_PER_VOLUME + 5);
    const edited = LAKES_PER_VOLUME + 3;
    const lakes = guide.lakes.map((lake, i) => (i === edited ? { ...lake, notes: "Seen again." } : lake));
    const [before, after] = [await sheetsOf(guide), await sheetsOf({ ...guide, lakes: lakes.toReversed() })];
    expect([...after.keys()]).toEqual([...before.keys()]);
    const changed = [...after].flatMap(([name, madeOf]) => (before.get(name) === madeOf ? [] : [name]));
    expect(changed).toEqual(["sheets-2-a4", "sheets-2-letter"]);
  });

  test("the list to print names every file, from which lake to which", async () => {
    const guide = guideWith(LAKES_PER_VOLUME + 2);
    const listed = lakeSheets(guide.lakes);
    expect(
      listed.flatMap(({ sheets }) => ["a4", "letter"].map((paper) => `${sheets}-${paper}`)).sort(),
    ).toEqual([...(await sheetsOf(guide)).keys()].sort());
    expect(listed[0]).toMatchObject({
      what: `Lake cards, Lake 0 to Lake ${LAKES_PER_VOLUME - 1}`,
      sheets: "sheets-1",
    });
    expect(lakeSheets(guide.lakes.slice(-1)).map(({ what }) => what)).toEqual(["All lake cards"]);
  });
});

describe("many volumes, which are made in threads", () => {
  const guide = guideWith(2 * LAKES_PER_VOLUME + 2);

  test("are the same files as they are alone, all told of", async () => {
    const told: (readonly [number, number])[] = [];
    const progress: Progress = (_, done, total) => told.push([done, total]);
    expect(await writeCards(guide, dir, { progress })).toEqual([]);
    const names = await readdir(path.join(dir, "cards"));
    // The lake's own cards, and its launch card.
    expect(names.filter((name) => name.startsWith("lake-"))).toHaveLength(2 * guide.lakes.length);
    expect(names.filter((name) => name.startsWith("sheets-"))).toHaveLength(6);
    expect(told.at(-1)).toEqual([names.length, names.length]);
    for (const slug of [slugAt(0), slugAt(LAKES_PER_VOLUME), slugAt(2 * LAKES_PER_VOLUME + 1)]) {
      const { files } = await cardsOf(guide, slug);
      expect(await readFile(path.join(dir, "cards", `${slug}.pdf`))).toEqual(need(files, `${slug}.pdf`));
    }
  });

  test("say of every volume what does not fit, in the lakes’ order", async () => {
    const bad = [LAKES_PER_VOLUME - 1, 2 * LAKES_PER_VOLUME];
    const lakes = guide.lakes.map((lake, i) =>
      bad.includes(i) ? { ...lake, summary: "Mind the second reed bed. ".repeat(60) } : lake,
    );
    const problems = await writeCards({ ...guide, lakes }, dir);
    expect([...new Set(problems.map(({ card }) => card))]).toEqual(bad.map(slugAt));
  });

  test("name the card that breaks the program", async () => {
    const lakes = guide.lakes.map((lake, i) => (i === 50 ? { ...lake, daily: null as never } : lake));
    await expect(writeCards({ ...guide, lakes }, dir)).rejects.toThrow(
      /^cards\/lake-050\.pdf cannot be made: /,
    );
  });
});
