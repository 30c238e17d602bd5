import { expect, test } from "vitest";
import { drawDecoration } from "../../build/cards/pdf/card-pdf.ts";
import { makeDocument, parseFonts } from "../../build/cards/pdf/document.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { stateSwatch } from "../../build/draw/strip/legend.ts";
import { DAY_STATES } from "../../build/model/phase.ts";
import { AS_OF } from "./card-fixture.ts";
import { blackShare, crop, difference, type Raster, rasterise, thresholded, withPdf } from "./rasterise.ts";

const SIDE_PT = 80;
const SCALE = 600 / 72;

/** A swatch of each state as a black-and-white laser printer of 600 dots an inch prints it, without its outline. */
async function printedSwatches(): Promise<Raster[]> {
  const bytes = await makeDocument(
    { title: "Swatches", author: "", asOf: AS_OF },
    parseFonts(),
    (document) => {
      for (const state of DAY_STATES) {
        document.addPage({ size: [SIDE_PT, SIDE_PT], margin: 0 });
        const drawing = stateSwatch(state, paperInk, SIDE_PT, SIDE_PT);
        drawDecoration(document, [{ kind: "drawing", drawing, x_pt: 0, y_pt: 0 }]);
      }
    },
  );
  return withPdf(bytes, async (pdf) => {
    const swatches: Raster[] = [];
    for (let page = 0; page < DAY_STATES.length; page++) {
      const raster = await rasterise(pdf, page, SCALE);
      swatches.push(crop(thresholded(raster), 20, 20, raster.width - 40, raster.height - 40));
    }
    return swatches;
  });
}

test("the five states stay apart in pure black and white", async () => {
  const swatches = await printedSwatches();
  const shares = swatches.map(blackShare);
  // The days to go are solid and laterWeeks is bare; the three hatched ones lie well between and are not alike.
  expect(shares[DAY_STATES.indexOf("postTurnover")]).toBe(1);
  expect(shares[DAY_STATES.indexOf("laterWeeks")]).toBe(0);
  for (const state of ["iced", "iceOff", "turnover"] as const) {
    const share = shares[DAY_STATES.indexOf(state)] ?? 0;
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.5);
  }
  for (const [i, a] of swatches.entries())
    for (const b of swatches.slice(i + 1)) expect(difference(a, b)).toBeGreaterThan(0.05);
});
