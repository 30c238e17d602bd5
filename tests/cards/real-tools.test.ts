import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { writeCards } from "../../build/cards/cards.ts";
import { parseFonts } from "../../build/cards/pdf/document.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import {
  INDEX_CARD_PT,
  ISO_216_MM,
  LEGIBLE,
  LIBPAPER_PT,
  POINT_MM,
  US_LETTER_PT,
} from "../reference/paper.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { blackShare, crop, type Raster, thresholded } from "./rasterise.ts";
import { missingPackages, popplerRaster, told, type Word, wordsOf } from "./tools.ts";

const missing = await missingPackages();
const install = `cards not checked by qpdf and poppler: apt-get install ${missing.join(" ")}`;

/** A round lake, a wide one and one that does not turn over. */
const SLUGS = ["gannister", "oxbar", "tallow"];
const SHEET = /(^|-)(a4|letter)\.pdf$/;

let dir = "";
let guide: Guide;
let names: string[] = [];
const at = (name: string): string => path.join(dir, "cards", name);
const cards = (): string[] => names.filter((name) => !SHEET.test(name));

async function build(): Promise<void> {
  const whole = await demoGuide();
  guide = { ...whole, lakes: whole.lakes.filter(({ slug }) => SLUGS.includes(slug)) };
  dir = await mkdtemp(path.join(tmpdir(), "real-tools-"));
  expect(await writeCards(guide, dir)).toEqual([]);
  names = (await readdir(path.join(dir, "cards"))).sort();
}

/** What is found wrong, by file. */
async function faultsOf(files: readonly string[], look: (name: string) => Promise<readonly string[]>) {
  const found: string[] = [];
  for (const name of files) found.push(...(await look(name)).map((fault) => `${name}: ${fault}`));
  return found;
}

const { CI } = process.env;
test.runIf(CI === "true")("qpdf and poppler are there", () => {
  expect(missing, install).toEqual([]);
});

describe.skipIf(missing.length > 0)(missing.length > 0 ? install : "every PDF, by qpdf and poppler", () => {
  beforeAll(build, 120_000);
  afterAll(() => rm(dir, { recursive: true, force: true }));

  const pagesOf = async (name: string): Promise<number> =>
    Number(/Pages:\s+(\d+)/.exec(await told("pdfinfo", at(name)))?.[1]);

  test("is sound", async () => {
    expect(names.length).toBeGreaterThan(15);
    const sound = /No syntax or stream encoding errors found/;
    const faults = await faultsOf(names, async (name) =>
      told("qpdf", "--check", at(name)).then(
        (words) => (sound.test(words) ? [] : [words]),
        (problem: Error) => [problem.message],
      ),
    );
    expect(faults).toEqual([]);
  });

  test("has every font embedded, with its characters told", async () => {
    const faults = await faultsOf(names, async (name) => {
      const rows = (await told("pdffonts", at(name))).trim().split("\n").slice(2);
      // Columns: name, type, encoding, emb, sub, uni, object.
      const bad = rows.filter((row) => !/\syes\s+(yes|no)\s+yes\s+\d+\s+\d+\s*$/.test(row));
      return rows.length === 0 ? ["no fonts"] : bad;
    });
    expect(faults).toEqual([]);
  });

  test("is tagged, titled, in English, with a bookmark for every page", async () => {
    const faults = await faultsOf(names, async (name) => {
      const info = await told("pdfinfo", at(name));
      const json = JSON.parse(await told("qpdf", "--json", "--json-key=outlines", at(name))) as {
        readonly outlines: readonly { readonly destpageposfrom1: number }[];
      };
      const marked = json.outlines.map(({ destpageposfrom1 }) => destpageposfrom1);
      const pages = Array.from({ length: await pagesOf(name) }, (_, i) => i + 1);
      const language = /\/Lang \(en\)/.test(await told("qpdf", "--qdf", at(name), "-"));
      return [
        ...(/^Tagged:\s+yes$/m.test(info) ? [] : ["not tagged"]),
        ...(/^Title:\s+\S.*as of 16 May 2026/m.test(info) ? [] : ["title without its day"]),
        ...(language ? [] : ["no language"]),
        ...(marked.join() === pages.join() ? [] : [`bookmarks to ${marked.join()}`]),
      ];
    });
    expect(faults).toEqual([]);
  });

  test("has its paper's size on every page", async () => {
    const sizeOf = (name: string): readonly [number, number] => {
      if (/-letter\.pdf$/.test(name)) return US_LETTER_PT;
      if (/-a4\.pdf$/.test(name)) return LIBPAPER_PT.A4;
      if (/5x3/.test(name)) return INDEX_CARD_PT;
      return [LIBPAPER_PT.A7[1], LIBPAPER_PT.A5[0]];
    };
    const faults = await faultsOf(names, async (name) => {
      const [wide, high] = sizeOf(name);
      const sizes = [
        ...(await told("pdfinfo", "-l", "-1", at(name))).matchAll(/size:\s+([\d.]+) x ([\d.]+) pts/g),
      ];
      const wrong = sizes.filter(
        ([, w, h]) => Math.abs(Number(w) - wide) > 0.01 || Math.abs(Number(h) - high) > 0.01,
      );
      return sizes.length === 0 ? ["no page"] : wrong.map(([text]) => text);
    });
    expect(faults).toEqual([]);
  });

  test("a card's text comes title first, then its day", async () => {
    const titles = new Map<string, string>([
      ...guide.lakes.map(({ slug, name }) => [`${slug}.pdf`, name] as const),
      ...guide.trips.map(({ slug, name }) => [`trip-${slug}.pdf`, name] as const),
      ["rig-a6.pdf", "Lines and leaders"] as const,
      ["rig-5x3.pdf", `Plumb, read across: ${guide.rigs.plumb.fly}`] as const,
      ["rig-drawings-a6.pdf", "The rig to scale"] as const,
    ]);
    const faults = await faultsOf([...titles.keys()], async (name) => {
      const text = (await told("pdftotext", "-raw", "-l", "1", at(name), "-")).replace(/\s+/g, " ").trim();
      return text.startsWith(`${titles.get(name)} as of 16 May 2026 `) ? [] : [text.slice(0, 60)];
    });
    expect(faults).toEqual([]);
    const front = (await told("pdftotext", "-layout", "-l", "1", at("gannister.pdf"), "-")).replaceAll(
      "\u00a0",
      " ",
    );
    const order = ["Gannister Lake", "Now", "Best weeks from", "Set", "Flies", "Ice-off", "Turnover"];
    const lead = front.indexOf("Flies");
    expect(order.filter((word) => !front.includes(word))).toEqual([]);
    expect(front.indexOf("Set")).toBeLessThan(lead);
    expect(lead).toBeLessThan(front.lastIndexOf("Turnover"));
  });

  test("no word of a card is smaller than Degani's least, none lies on another", async () => {
    const { ascent, descent, xHeight } = parseFonts().regular.parsed;
    const xHeight_mm = ({ top, bottom }: Word): number =>
      ((bottom - top) / (ascent - descent)) * xHeight * POINT_MM;
    /** The middle half of a word's height, which no other word may enter. */
    const core = ({ top, bottom }: Word): readonly [number, number] => [
      top + (bottom - top) / 4,
      bottom - (bottom - top) / 4,
    ];
    const overlap = (a: Word, b: Word): boolean => {
      const [[aTop, aBottom], [bTop, bBottom]] = [core(a), core(b)];
      return (
        a.page === b.page &&
        Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.3 &&
        Math.min(aBottom, bBottom) - Math.max(aTop, bTop) > 0
      );
    };
    const faults = await faultsOf(cards(), async (name) => {
      const words = await wordsOf(at(name));
      const small = words.filter((word) => xHeight_mm(word) < LEGIBLE.any_mm - 0.01);
      const laid = words.flatMap((a, i) =>
        words
          .slice(i + 1)
          .filter((b) => overlap(a, b))
          .map((b) => `${a.text} on ${b.text}`),
      );
      return [
        ...(words.length === 0 ? ["no words"] : []),
        ...small.map(({ text }) => `small: ${text}`),
        ...laid,
      ];
    });
    expect(faults).toEqual([]);
  });

  const DPI = 150;
  const px = (length_mm: number): number => (length_mm / 25.4) * DPI;

  test("nothing is inked within 3 mm of a card's edge", async () => {
    const faults = await faultsOf(cards(), async (name) => {
      const inked: string[] = [];
      for (let page = 1; page <= (await pagesOf(name)); page++) {
        const { width, height, grey } = await popplerRaster(at(name), page, DPI);
        const rim = Math.floor(px(3));
        const near = grey.findIndex((value, i) => {
          const [x, y] = [i % width, Math.floor(i / width)];
          return value < 200 && (x < rim || y < rim || x >= width - rim || y >= height - rim);
        });
        if (near >= 0)
          inked.push(`page ${page}, ${near % width} px across, ${Math.floor(near / width)} px down`);
      }
      return inked;
    });
    expect(faults).toEqual([]);
  });

  test("in pure black and white a word keeps its ink, and does not run together", async () => {
    const dpi = 300;
    const scale = dpi / 72;
    const shown = [
      "gannister.pdf",
      "rig-a6.pdf",
      "rig-drawings-a6.pdf",
      "trip-late-may-weekend.pdf",
      "box-late-may-weekend.pdf",
    ];
    const faults = await faultsOf(shown, async (name) => {
      const words = (await wordsOf(at(name))).filter(({ text }) => /[\p{L}\p{N}]/u.test(text));
      const weak: string[] = [];
      for (let page = 1; page <= (await pagesOf(name)); page++) {
        const raster = await popplerRaster(at(name), page, dpi);
        for (const { text, left, right, top, bottom } of words.filter((word) => word.page === page)) {
          const [x, y] = [Math.floor(left * scale), Math.floor(top * scale)];
          const part = crop(raster, x, y, Math.ceil(right * scale) - x, Math.ceil(bottom * scale) - y);
          const kept = blackShare(thresholded(part)) / blackShare(part);
          if (!(kept > 0.85 && kept < 1.15)) weak.push(`${text}: ${kept.toFixed(2)} of its ink`);
        }
      }
      return weak;
    });
    expect(faults).toEqual([]);
  });

  /** Where short dark stretches cross a line of pixels, in mm from the sheet's edge. */
  function crossings({ grey, width, height }: Raster, along: "x" | "y", at_mm: number): number[] {
    const fixed = Math.round(px(at_mm));
    const length = along === "x" ? width : height;
    const dark = Array.from({ length }, (_, i) => i).filter(
      (i) => (grey[along === "x" ? fixed * width + i : i * width + fixed] ?? 255) < 200,
    );
    const starts = dark.filter((i, k) => dark[k - 1] !== i - 1);
    return starts.map((i) => (i / DPI) * 25.4);
  }

  const LETTER_MM = US_LETTER_PT.map((side) => side * POINT_MM) as [number, number];
  const KINDS_OF_SHEETS = ["sheets", "rigs", "report-slips", "trip-late-may-weekend"];
  test.each(
    KINDS_OF_SHEETS.flatMap((kind) => [
      [`${kind}-a4.pdf`, ISO_216_MM.A4] as const,
      [`${kind}-letter.pdf`, LETTER_MM] as const,
    ]),
  )(
    "%s: cut marks of a back lie within 0.5 mm of its front's, an A6 card apart",
    async (name, [wide, high]) => {
      const [front, back] = [await popplerRaster(at(name), 1, DPI), await popplerRaster(at(name), 2, DPI)];
      const [cardWide, cardHigh] = ISO_216_MM.A6;
      // Marks stand from 2 to 7 mm outside the cards: looked at where they are 4.5 mm away.
      const [left, top] = [(wide - cardHigh) / 2 - 4.5, (high - 2 * cardWide) / 2 - 4.5];
      const across = crossings(front, "x", top);
      const inBlock = (y: number): boolean => y > top && y < high - top;
      const down = crossings(front, "y", left).filter(inBlock);
      expect([across.length, down.length]).toEqual([2, 3]);
      expect(Math.abs((across[1] ?? 0) - (across[0] ?? 0) - cardHigh)).toBeLessThan(0.5);
      for (const i of [1, 2])
        expect(Math.abs((down[i] ?? 0) - (down[i - 1] ?? 0) - cardWide)).toBeLessThan(0.5);
      const behind = crossings(back, "x", top)
        .map((x) => wide - x)
        .reverse();
      for (const [i, x] of across.entries()) expect(Math.abs(x - (behind[i] ?? 0))).toBeLessThan(0.5);
      const beside = crossings(back, "y", wide - left).filter(inBlock);
      for (const [i, y] of down.entries()) expect(Math.abs(y - (beside[i] ?? 0))).toBeLessThan(0.5);
    },
  );
});
