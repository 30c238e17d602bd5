import { expect, test } from "vitest";
import { layoutRigDrawings } from "../../build/cards/rig/rig-cards.ts";
import { cardsOf, need, ruler } from "./card-fixture.ts";
import { withPdf } from "./rasterise.ts";
import { rigGuide, rigsWith } from "./rig-fixture.ts";

const wordsOf = async (guide = rigGuide()): Promise<string[]> => {
  const { files } = await cardsOf(guide);
  return withPdf(need(files, "rig-drawings-a6.pdf"), async (pdf) => [
    pdf.getPage(0).getText(),
    pdf.getPage(1).getText(),
  ]);
};

test("the drawings fit their card", () => {
  const { front, back } = layoutRigDrawings(rigGuide(), ruler);
  expect([...front.misfits, ...back.misfits]).toEqual([]);
});

test("the front draws a leader's sections, the back the lean and every holder angle's swing", async () => {
  const [front, back] = await wordsOf();
  for (const word of ["taper to", "of 4X", "ring or swivel", "off bottom"]) expect(front).toContain(word);
  for (const { holder_deg } of rigGuide().rigs.swing.rows) expect(back).toContain(`${holder_deg}°`);
  expect(back).toContain("one rod in");
});

test("a box with nothing to draw says so in words", async () => {
  const [front, back] = await wordsOf(rigGuide({ rigs: { ...rigsWith([]), lean: null } }));
  expect(front).toContain("No leader in the box serves a set depth.");
  expect(back).toContain("No rig carried holds its fly down in chop.");
});
