import { describe, expect, test } from "vitest";
import { layoutReportSlip } from "../../build/cards/report-slip.ts";
import { FOODS, ICE_STATES, METHODS } from "../../build/model/club.ts";
import { reportRow } from "../../build/model/fields/report-fields.ts";
import { PHASE_WORDS } from "../../build/model/phase.ts";
import { cardsOf, need, ruler } from "./card-fixture.ts";
import { faults, textsOf, written } from "./legibility.ts";
import { withPdf } from "./rasterise.ts";
import { rigGuide } from "./rig-fixture.ts";

const slip = layoutReportSlip(rigGuide(), ruler);
const sides = [slip.front.face, slip.back.face];
/** What stands in bold: the keys, and the heads of both sides. */
const keys = sides.flatMap((face) =>
  textsOf(face)
    .filter(({ style }) => style.font === "bold")
    .map(({ text }) => text.trim()),
);

describe("the report slip", () => {
  test("has a box for each key of a report, and no other", () => {
    const caught = reportRow.shape.caught.unwrap().element.shape;
    const inFile = [...Object.keys(reportRow.shape), ...Object.keys(caught)];
    expect(
      keys
        .filter(
          (key) =>
            !["Report slip", "What they had eaten", "as\u00a0of\u00a016\u00a0May\u00a02026"].includes(key),
        )
        .sort(),
    ).toEqual(inFile.sort());
  });

  test("names every word that a field allows", () => {
    const words = sides.map(written).join(" ");
    const foods = FOODS.filter((food) => food !== "nothing in particular");
    for (const word of [...ICE_STATES, ...PHASE_WORDS, ...METHODS, ...foods]) expect(words).toContain(word);
  });

  test("asks in the club's units", () => {
    const metric = rigGuide();
    const club = { ...metric.club, units: "metric" as const };
    const words = written(layoutReportSlip({ ...metric, club }, ruler).front.face);
    expect(words).toMatch(/water\s*, degC/);
    expect(words).toMatch(/clarity\s*, m\b/);
    expect(written(slip.front.face)).toMatch(/water\s*, degF/);
  });

  test("is legible, 3 mm from the edge, and nothing runs into anything", () => {
    expect(sides.map((face) => faults(face))).toEqual([[], []]);
    expect([...slip.front.misfits, ...slip.back.misfits]).toEqual([]);
  });

  test("stands beside the throat sample's caution", () => {
    const guide = rigGuide({
      cautions: [{ id: "throat-sample", when: ["always"], short: "Shown how only.", agency: "The agency" }],
    });
    expect(written(layoutReportSlip(guide, ruler).back.face)).toContain("Shown how only. (The agency)");
  });

  test("comes alone and by the sheet", async () => {
    const { files } = await cardsOf(rigGuide());
    const pages = await Promise.all(
      ["report-slip-a6.pdf", "report-slips-a4.pdf", "report-slips-letter.pdf"].map((name) =>
        withPdf(need(files, name), async (pdf) => pdf.getPageCount()),
      ),
    );
    expect(pages).toEqual([2, 2, 2]);
  });
});
