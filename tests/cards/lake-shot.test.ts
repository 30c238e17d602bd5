import { expect, test } from "vitest";
import { layoutBack } from "../../build/cards/lake/back.ts";
import { lakeShot } from "../../build/cards/lake/shot-table.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { ruler } from "./card-fixture.ts";
import { piecesOf } from "./legibility.ts";

const WIDTH_PT = 275;

test("one depth in one drift is no table; two of either are", async () => {
  const guide = await demoGuide();
  const tables = guide.lakes.flatMap((lake) =>
    [1, 2, 3].map((most) => lakeShot(guide, lake, most, WIDTH_PT)),
  );
  const cells = tables.flatMap((table) => (table === null ? [] : [table.rows.length * table.drifts.length]));
  expect(cells.length).toBeGreaterThan(0);
  expect(Math.min(...cells)).toBeGreaterThanOrEqual(2);
  const quern = guide.lakes.find(({ slug }) => slug === "quern");
  if (quern === undefined) throw new Error("no such lake");
  // The deepest row of its best weeks holds in one drift alone.
  expect(lakeShot(guide, quern, 1, WIDTH_PT)).toBeNull();
});

test("the table's words stand on a line of their own, and lead has its caution with or without them", async () => {
  const guide = await demoGuide();
  const lead = guide.cautions.find(({ id }) => id === "lead")?.short ?? "no such caution";
  let tables = 0;
  for (const lake of guide.lakes) {
    const paragraphs = layoutBack(guide, lake, ruler).face.parts.map((part) =>
      piecesOf(part)
        .map((piece) => (piece.kind === "text" ? piece.text : ""))
        .join(" "),
    );
    const shot = paragraphs.filter((words) => /\bShot {2}/.test(words));
    tables += shot.length;
    for (const words of shot) {
      expect([lake.slug, words.startsWith("Shot ")]).toEqual([lake.slug, true]);
      expect([lake.slug, paragraphs.some((other) => other.startsWith(lead))]).toEqual([lake.slug, true]);
    }
  }
  expect(tables).toBeGreaterThan(0);
});
