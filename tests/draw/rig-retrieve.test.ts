import { expect, test } from "vitest";
import { drawDecoration } from "../../build/cards/pdf/card-pdf.ts";
import { makeDocument, parseFonts } from "../../build/cards/pdf/document.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { retrieveDrawing, retrieveRigOf } from "../../build/draw/rig/retrieve.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { LINE_KINDS } from "../../build/model/club.ts";
import type { UnitSystem } from "../../build/model/units.ts";
import { usualRigs } from "../../build/rigs/lake-rigs.ts";
import { rigTables } from "../../build/rigs/tables/rig-tables.ts";
import { AS_OF } from "../cards/card-fixture.ts";
import { blackShare, difference, type Raster, rasterise, thresholded, withPdf } from "../cards/rasterise.ts";
import { box } from "../rigs/box-fixture.ts";
import { lettering, letteringBoxes, letteringFaults } from "./lettering-boxes.ts";
import { MEDIA } from "./rig-fixture.ts";

const retrieves = (units: UnitSystem) =>
  usualRigs(box, units).filter(({ rig }) => !rig.way.startsWith("indicator"));

const TABLES = { imperial: rigTables(box, "imperial"), metric: rigTables(box, "metric") };

const drawn = (units: UnitSystem) =>
  retrieves(units).map(({ rig, band }) => retrieveRigOf(rig, band, TABLES[units]));

test("five ways are cast or trolled", () => {
  expect(retrieves("imperial")).toHaveLength(5);
});

test("no line of lettering runs into another or out of the drawing", () => {
  for (const units of ["imperial", "metric"] as const)
    for (const { ink, width } of MEDIA)
      for (const one of drawn(units)) {
        const drawing = retrieveDrawing(one, { ink, width: width * 1.28, height: 100, units });
        expect(letteringFaults(drawing), one.rig.way).toEqual([]);
      }
});

test("the bottom lies at the band's depths, by the staff", () => {
  for (const one of drawn("metric")) {
    const drawing = retrieveDrawing(one, { ink: paperInk, width: 220, height: 150, units: "metric" });
    const numbers = letteringBoxes(drawing).filter(({ text }) => /^[\d.]+$/.test(text));
    const [first, last] = [numbers[0], numbers.at(-1)];
    if (first === undefined || last === undefined) throw new Error("a staff has numbers");
    const perMetre = (last.top - first.top) / (Number(last.text) - Number(first.text));
    const ground = /<path d="M\S+ (\S+?)L\S+ \S+?L\S+ (\S+?)L[^"]*" stroke-width="1.3"/.exec(
      renderSvg(drawing),
    );
    const [shallow, deep] = [Number(ground?.[1]), Number(ground?.[2])];
    expect(perMetre, one.rig.way).toBeGreaterThan(5);
    expect((deep - shallow) / perMetre, one.rig.way).toBeCloseTo(one.band.to_m - one.band.from_m, 1);
  }
});

test("a rig that is counted down says how long and how deep", () => {
  for (const one of drawn("imperial")) {
    const drawing = retrieveDrawing(one, { ink: paperInk, width: 220, height: 100, units: "imperial" });
    const written = lettering(drawing).join(" ");
    if (one.rig.countdown === null) expect(written, one.rig.way).not.toContain("count");
    else if (one.rig.countdown.to_s !== null)
      expect(written, one.rig.way).toContain(`count ${one.rig.countdown.to_s} s`);
  }
});

/** The same trolled rig on a line of each kind, as a black-and-white laser printer of 300 dots an inch prints it. */
async function printedLines(): Promise<Raster[]> {
  const trolled = drawn("imperial").find(({ rig }) => rig.way === "trolled");
  if (trolled?.line === undefined) throw new Error("nothing trolled");
  const { line } = trolled;
  const kinds = LINE_KINDS.filter((kind) => kind !== "sink tip");
  const bytes = await makeDocument({ title: "Lines", author: "", asOf: AS_OF }, parseFonts(), (document) => {
    for (const kind of kinds) {
      document.addPage({ size: [220, 120], margin: 0 });
      const drawing = retrieveDrawing(
        { ...trolled, line: { ...line, kind } },
        { ink: paperInk, width: 220, height: 100, units: "imperial" },
      );
      drawDecoration(document, [{ kind: "drawing", drawing, x_pt: 0, y_pt: 0 }]);
    }
  });
  return withPdf(bytes, async (pdf) => {
    const rasters: Raster[] = [];
    for (let page = 0; page < kinds.length; page++)
      rasters.push(thresholded(await rasterise(pdf, page, 300 / 72)));
    return rasters;
  });
}

test("lines that float, that are clear and that sink stay apart in pure black and white", async () => {
  const lines = await printedLines();
  const [floating = 0, clear = 0, sinking = 0] = lines.map(blackShare);
  // Solid, hollow and broken: the gaps show as white.
  expect(clear).toBeLessThan(floating);
  expect(sinking).toBeLessThan(floating);
  const [a, b, c] = lines;
  if (a === undefined || b === undefined || c === undefined) throw new Error("three lines were printed");
  for (const share of [difference(a, b), difference(a, c), difference(b, c)])
    expect(share).toBeGreaterThan(0.001);
});
