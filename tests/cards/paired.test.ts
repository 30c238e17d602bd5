import { beforeAll, describe, expect, test } from "vitest";
import type { Face } from "../../build/cards/layout/page.ts";
import { pairSides } from "../../build/cards/trip/sides.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { allFiles, printedOf, SHEETS } from "../../build/guide/print-files.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { cardsOf, need } from "./card-fixture.ts";
import { withPdf } from "./rasterise.ts";

const face = (title: string): Face => ({ title, parts: [], decoration: [] });
const namesOf = (count: number) =>
  pairSides(
    "card",
    Array.from({ length: count }, (_, i) => face(`side ${i + 1}`)),
  ).map(({ front, back }) => [front.title, back.title]);

test("sides go on fronts and backs by turns; a last one alone has a blank back", () => {
  expect(namesOf(2)).toEqual([["side 1", "side 2"]]);
  expect(namesOf(3)).toEqual([
    ["side 1", "side 2"],
    ["side 3", "card, blank back"],
  ]);
});

describe("sheets of a trip's cards and of the rigs'", () => {
  let guide: Guide;
  let files: ReadonlyMap<string, Buffer>;
  beforeAll(async () => {
    const { lakes: _, ...rest } = await demoGuide();
    guide = { ...rest, lakes: [] };
    files = (await cardsOf(guide)).files;
  }, 60_000);

  const pagesOf = (name: string): Promise<string[]> =>
    withPdf(need(files, name), async (pdf) =>
      Array.from({ length: pdf.getPageCount() }, (_, page) => pdf.getPage(page).getText()),
    );

  /** The words of the odd pages and of the even ones; a turned page's come with other gaps. */
  const halves = (pages: readonly string[]): string[] =>
    [0, 1].map((half) => pages.filter((_, page) => page % 2 === half).join(" "));

  test.each(["a4", "letter"])(
    "on %s have all words of the fronts on odd pages, of the backs on even ones",
    async (sheet) => {
      for (const [sheets, alone] of [
        ["rigs", ["rig-a6", "rig-drawings-a6"]],
        ...guide.trips.map(({ slug }) => [`trip-${slug}`, [`trip-${slug}`, `box-${slug}`]] as const),
      ] as const) {
        const pages = await pagesOf(`${sheets}-${sheet}.pdf`);
        expect([sheets, pages.length % 2]).toEqual([sheets, 0]);
        const onSheets = halves(pages).map((words) => words.replace(/\s+/g, ""));
        for (const name of alone)
          for (const [half, words] of halves(await pagesOf(`${name}.pdf`)).entries())
            expect([
              name,
              half,
              words.split(/\s+/).filter((word) => !onSheets[half]?.includes(word)),
            ]).toEqual([name, half, []]);
      }
    },
  );

  test("every file but an unlisted trip's is in the table on the page about printing, and no other", () => {
    const hidden = guide.trips.filter(({ unlisted }) => unlisted);
    const listed = allFiles(printedOf(guide), guide).flatMap(({ alone, sheets }) => [
      ...(alone === null ? [] : [`${alone}.pdf`]),
      ...(sheets === null ? [] : SHEETS.map(([ending]) => `${sheets}-${ending}.pdf`)),
    ]);
    const written = [...files.keys()].filter((name) => !hidden.some(({ slug }) => name.includes(slug)));
    expect([...new Set(listed)].sort()).toEqual(written.sort());
  });

  test("an unlisted trip is on no sheet but its own", () => {
    const hidden = guide.trips.filter(({ unlisted }) => unlisted);
    expect(hidden.length).toBeGreaterThan(0);
    for (const { slug, name } of hidden)
      for (const [file, bytes] of files)
        if (!file.includes(slug))
          expect([file, bytes.toString("latin1").includes(name)]).toEqual([file, false]);
  });
});
