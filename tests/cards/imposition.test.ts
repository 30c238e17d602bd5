import { beforeAll, describe, expect, test } from "vitest";
import { backPlacement, frontPlacement, type Placement } from "../../build/cards/pdf/sheets.ts";
import { guideOf } from "../lake-fixture.ts";
import { ISO_216_MM, LIBPAPER_PT, POINT_MM, US_LETTER_PT } from "../reference/paper.ts";
import { AS_OF, cardsOf, ember, high, kettle, need } from "./card-fixture.ts";
import { crop, difference, quarterTurn, type Raster, rasterise, readQr, withPdf } from "./rasterise.ts";

const CARD_PT = ISO_216_MM.A6.map((side) => side / POINT_MM) as [number, number];
const SHEETS = { a4: LIBPAPER_PT.A4, letter: US_LETTER_PT } as const;

const put = ([a, b, c, d, e, f]: Placement, x: number, y: number): [number, number] => [
  a * x + c * y + e,
  b * x + d * y + f,
];

describe.each(["a4", "letter"] as const)("two cards on %s", (sheet) => {
  const [width, height] = SHEETS[sheet];

  test.each([0, 1])("slot %i: each point of the back lands behind its own front", (slot) => {
    for (const [x, y] of [
      [0, 0],
      [CARD_PT[0], 0],
      [0, CARD_PT[1]],
      [CARD_PT[0], CARD_PT[1]],
      [100, 40],
    ] as const) {
      // Turned like a leaf, a point `x` from the front's left is `x` from the back's right; so is the sheet.
      const [frontX, frontY] = put(frontPlacement(sheet, slot), x, y);
      const [backX, backY] = put(backPlacement(sheet, slot), CARD_PT[0] - x, y);
      expect(backX).toBeCloseTo(width - frontX, 1);
      expect(backY).toBeCloseTo(frontY, 1);
    }
  });

  test("cards lie inside the sheet with room for crop marks, and not on each other", () => {
    const boxes = [0, 1].map((slot) => {
      const place = frontPlacement(sheet, slot);
      const corners = [put(place, 0, 0), put(place, CARD_PT[0], CARD_PT[1])];
      const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
      return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    });
    const room_pt = 10 / POINT_MM;
    for (const { left, right, top, bottom } of boxes) {
      expect(Math.min(left, width - right, top, height - bottom)).toBeGreaterThan(room_pt);
    }
    expect(boxes[0]?.bottom).toBeLessThanOrEqual((boxes[1]?.top ?? 0) + 0.01);
  });
});

describe("on paper", () => {
  const SCALE = 2;
  // The guide gives them in another order; the sheets go by slug.
  const lakes = [ember, high, kettle];
  let fronts: Raster[];
  let files: ReadonlyMap<string, Buffer>;

  beforeAll(async () => {
    files = (await cardsOf(guideOf([ember, kettle, high], AS_OF))).files;
    fronts = [];
    for (const { slug } of lakes)
      fronts.push(await withPdf(need(files, `${slug}.pdf`), (pdf) => rasterise(pdf, 0, SCALE)));
  });

  /** Which lake's front a part of a sheet shows: turned a quarter back, it differs far less than any other. */
  function frontAt(sheet: Raster, x: number, y: number): string | undefined {
    const byLikeness = fronts
      .map((front, i) => {
        const onItsSide = quarterTurn(quarterTurn(quarterTurn(front)));
        const part = crop(sheet, x, y, onItsSide.width, onItsSide.height);
        return { slug: lakes[i]?.slug, differs: difference(onItsSide, part) };
      })
      .sort((a, b) => a.differs - b.differs);
    const [best, next] = byLikeness;
    return best !== undefined && next !== undefined && best.differs < next.differs / 1.5
      ? best.slug
      : undefined;
  }

  test.each(["a4", "letter"] as const)(
    "on %s a lake's QR code stands behind that lake's front",
    async (sheet) => {
      const seen: (string | undefined)[] = [];
      await withPdf(need(files, `sheets-${sheet}.pdf`), async (pdf) => {
        for (let page = 0; page < pdf.getPageCount(); page += 2) {
          const front = await rasterise(pdf, page, SCALE);
          const back = await rasterise(pdf, page + 1, SCALE);
          const half = Math.round(back.height / 2);
          for (const [slot, lake] of lakes.slice(page, page + 2).entries()) {
            const qr = readQr(crop(back, 0, slot * half, back.width, half - 1));
            expect(qr?.data).toBe(`https://guide.example/spring/lakes/${lake.slug}/`);
            // The code's middle, seen through the paper.
            const corners = qr === null ? [] : [qr.location.topLeftCorner, qr.location.bottomRightCorner];
            const x = front.width - corners.reduce((sum, corner) => sum + corner.x, 0) / 2;
            const y = slot * half + corners.reduce((sum, corner) => sum + corner.y, 0) / 2;
            const left = Math.round((front.width - CARD_PT[1] * SCALE) / 2);
            const top = Math.round(front.height / 2 - (1 - slot) * CARD_PT[0] * SCALE);
            expect(x > left && x < left + CARD_PT[1] * SCALE && y > top && y < top + CARD_PT[0] * SCALE).toBe(
              true,
            );
            seen.push(frontAt(front, left, top));
          }
        }
      });
      expect(seen).toEqual(lakes.map(({ slug }) => slug));
    },
  );

  test("crop marks of fronts and backs fall on each other", async () => {
    await withPdf(need(files, "sheets-a4.pdf"), async (pdf) => {
      const [front, back] = [await rasterise(pdf, 0, SCALE), await rasterise(pdf, 1, SCALE)];
      const levels = ({ grey, width, height }: Raster, x: number): number[] =>
        Array.from({ length: height }, (_, y) => y).filter((y) => (grey[y * width + x] ?? 255) < 200);
      const x = Math.round((31 - 4) / POINT_MM) * SCALE;
      const inCards = (y: number): boolean => y > 40 * SCALE && y < front.height - 70 * SCALE;
      const marks = levels(front, x).filter(inCards);
      expect(marks.length).toBeGreaterThanOrEqual(3);
      expect(levels(back, back.width - 1 - x).filter(inCards)).toEqual(marks);
    });
  });
});
