import { beforeAll, describe, expect, test } from "vitest";
import { guideOf } from "../lake-fixture.ts";
import {
  ISO_216_MM,
  LIBPAPER_PT,
  POINT_MM,
  QR_QUIET_MODULES,
  qrSide,
  US_LETTER_PT,
} from "../reference/paper.ts";
import { AS_OF, cardsOf, ember, high, kettle, long, need } from "./card-fixture.ts";
import { rasterise, readQr, withPdf } from "./rasterise.ts";

const guide = guideOf([ember, kettle, high, long], AS_OF);
let files: ReadonlyMap<string, Buffer>;

beforeAll(async () => {
  files = (await cardsOf(guide)).files;
});

/** The uncompressed objects of a PDF as text. */
const objects = (bytes: Buffer): string => bytes.toString("latin1");

const mediaBoxes = (bytes: Buffer): number[][] =>
  [...objects(bytes).matchAll(/\/MediaBox \[([\d. ]+)\]/g)].map((m) => (m[1] ?? "").split(" ").map(Number));

describe("paper", () => {
  test("a card is two pages of A6 by ISO 216", () => {
    const boxes = mediaBoxes(need(files, "ember.pdf"));
    expect(boxes).toHaveLength(2);
    for (const [, , width = 0, height = 0] of boxes) {
      expect(width).toBeCloseTo(LIBPAPER_PT.A7[1], 2);
      expect(height).toBeCloseTo(LIBPAPER_PT.A5[0], 2);
      expect(width * POINT_MM).toBeCloseTo(ISO_216_MM.A6[0], 2);
      expect(height * POINT_MM).toBeCloseTo(ISO_216_MM.A6[1], 2);
    }
  });

  test("sheets are A4 by ISO 216 and letter by ANSI/ASME Y14.1, two pages for every two cards", () => {
    for (const [name, [width, height]] of [
      ["sheets-a4.pdf", LIBPAPER_PT.A4],
      ["sheets-letter.pdf", US_LETTER_PT],
    ] as const) {
      const boxes = mediaBoxes(need(files, name));
      expect(boxes).toHaveLength(4);
      for (const box of boxes) {
        expect(box[2]).toBeCloseTo(width, 2);
        expect(box[3]).toBeCloseTo(height, 2);
      }
    }
  });
});

describe("the document", () => {
  test("two runs give the same bytes", async () => {
    const again = (await cardsOf(guide)).files;
    expect([...again.keys()]).toEqual([...files.keys()]);
    for (const [name, bytes] of files) expect([name, bytes.equals(need(again, name))]).toEqual([name, true]);
  });

  test("it is dated by the as-of date alone", () => {
    const dates = [...objects(need(files, "ember.pdf")).matchAll(/\(D:(\d+)Z\)/g)];
    expect(dates.map((m) => m[1])).toEqual(["20260516000000", "20260516000000"]);
  });

  test("it is tagged, in English, shows its title and has bookmarks", () => {
    const text = objects(need(files, "ember.pdf"));
    const keys = ["/Marked true", "/StructTreeRoot", "/Lang (en)", "/DisplayDocTitle true", "/Outlines"];
    const titles = ["Ember Lake: lake card as of 16 May 2026", "Ember Lake, front", "Ember Lake, back"];
    const wanted = [...keys, ...titles.map((title) => `(${title})`)];
    expect(wanted.filter((words) => !text.includes(words))).toEqual([]);
  });

  test("every font is embedded", () => {
    for (const bytes of files.values()) {
      const text = objects(bytes);
      const fonts = text.match(/\/Type \/FontDescriptor/g)?.length;
      expect(fonts).toBe(2);
      expect(text.match(/\/FontFile2 /g)?.length).toBe(fonts);
    }
  });

  test("figures carry words: the strip's title and where the QR code leads", () => {
    const text = objects(need(files, "ember.pdf"));
    expect(text.includes("/Alt (QR code: https://guide.example/spring/lakes/ember/)")).toBe(true);
    expect(text.match(/\/S \/Figure/g)).toHaveLength(2);
  });

  test("its text can be read out, in the order it is meant to be read", async () => {
    const words = await withPdf(need(files, "ember.pdf"), async (pdf) => pdf.getPage(0).getText());
    const order = [
      "Ember Lake",
      "as of 16 May 2026",
      "85 % sure",
      "(17–27 May)",
      "Turnover",
      "Best weeks",
      "Cinder Pupa",
    ];
    const plain = words.replaceAll("\u00a0", " ");
    const places = order.map((word) => plain.indexOf(word));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});

describe("what is written", () => {
  test("one lake alone is its own files and no sheets", async () => {
    expect([...(await cardsOf(guide, "high")).files.keys()].sort()).toEqual(["high-launch.pdf", "high.pdf"]);
  });

  test("no card more once one does not fit, and what is wrong with the rest is said as well", async () => {
    const bad = { ...high, summary: "Mind the second reed bed. ".repeat(60) };
    const worse = { ...kettle, name: "Kettle Lake Kettle Lake ".repeat(8) };
    const { problems, files: some } = await cardsOf(guideOf([ember, bad, worse], AS_OF));
    expect([...new Set(problems.map(({ card, field }) => `${card} ${field}`))]).toEqual([
      "high summary",
      "kettle name",
    ]);
    expect([...some.keys()].sort()).toEqual(["ember-launch.pdf", "ember.pdf"]);
  });
});

describe("QR code", () => {
  const SCALE = 300 / 72;
  const qrOf = (bytes: Buffer) => withPdf(bytes, async (pdf) => readQr(await rasterise(pdf, 1, SCALE)));

  test("printed at 300 dots an inch, it leads to the lake's page", async () => {
    expect((await qrOf(need(files, "ember.pdf")))?.data).toBe("https://guide.example/spring/lakes/ember/");
  });

  test("without an address it gives the lake's place as a geo: URI (RFC 5870)", async () => {
    const { files: local } = await cardsOf(guideOf([kettle], AS_OF, { baseUrl: null }));
    expect((await qrOf(need(local, "kettle.pdf")))?.data).toBe("geo:41.312,-106.291");
  });

  test("its modules are wide enough for a telephone, and the quiet zone is white", async () => {
    const read = await withPdf(need(files, "ember.pdf"), async (pdf) => {
      const page = await rasterise(pdf, 1, SCALE);
      return { page, qr: readQr(page) };
    });
    const { qr, page } = read;
    if (qr === null) throw new Error("no QR code found");
    const { topLeftCorner: from, bottomRightCorner: to } = qr.location;
    const module_px = (to.x - from.x) / qrSide(qr.version);
    // 0.33 to 0.4 mm is the least for a telephone's camera: common practice, from memory.
    expect((module_px / SCALE) * POINT_MM).toBeGreaterThanOrEqual(0.4);
    const quiet_px = QR_QUIET_MODULES * module_px - 2;
    for (const [x, y] of [
      [from.x - quiet_px, from.y],
      [to.x + quiet_px, to.y],
      [from.x, from.y - quiet_px],
      [to.x, to.y + quiet_px],
    ] as const) {
      const steps = Array.from({ length: 20 }, (_, i) => i / 20);
      const corner = x < from.x || y < from.y ? from : to;
      const line = steps.map((t) => {
        const px = Math.round(x + t * 0.9 * (corner.x - x));
        const py = Math.round(y + t * 0.9 * (corner.y - y));
        return page.grey[py * page.width + px] ?? 255;
      });
      expect(Math.min(...line)).toBeGreaterThan(200);
    }
  });
});
