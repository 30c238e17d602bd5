import { beforeAll, describe, expect, test } from "vitest";
import { layoutBack } from "../../build/cards/lake/back.ts";
import { layoutRigCard, RIG_CARD_DESIGNS } from "../../build/cards/rig/rig-card.ts";
import { guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { depthGlance } from "../../build/model/units.ts";
import { ruler } from "../cards/card-fixture.ts";
import { piecesOf, written } from "../cards/legibility.ts";
import { demoGuide } from "./demo-guide.ts";

let guide: Guide;
beforeAll(async () => {
  guide = await demoGuide();
});

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** The cells of guide.json for the table's own fly, by depth and condition. */
const answers = () =>
  guide.rigs.plumb.depths.flatMap(({ depth_m, set_m, board, rows }) =>
    rows
      .filter(({ fly }) => fly === guide.rigs.plumb.fly)
      .flatMap(({ cells }) => cells.map((cell) => ({ depth_m, set_m, board, ...cell }))),
  );

describe("one question has one answer", () => {
  test("every depth and condition has exactly one cell", () => {
    const keys = answers().map(({ depth_m, condition }) => `${depth_m} ${condition}`);
    expect(keys).toHaveLength(8 * 3);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("every card that names shot for a depth names that of guide.json", () => {
    for (const slug of ["plumb-a6", "rig-5x3"]) {
      const design = RIG_CARD_DESIGNS.find((one) => one.slug === slug);
      if (design === undefined) throw new Error(`no ${slug}`);
      const words = plain(written(layoutRigCard(guideFrame(guide), design, ruler).front.face));
      for (const { depth_m, rows } of guide.rigs.plumb.depths) {
        const cells = rows.find(({ fly }) => fly === guide.rigs.plumb.fly)?.cells ?? [];
        const hold = slug === "plumb-a6" ? " hold" : " h";
        expect(words, `${slug}, ${depth_m} m`).toContain(
          cells.map((cell) => `${cell.text}${cell.hold ? hold : ""}`).join(" "),
        );
        expect(words).toContain(depthGlance(depth_m, guide.club.units));
      }
    }
  });

  test("lakes, their plans and their cards name no shot and no wait of their own: they point to the plumb card", () => {
    const shot = answers().flatMap(({ shot: pieces }) => pieces.map(({ name }) => name));
    expect(shot.length).toBeGreaterThan(0);
    for (const lake of guide.lakes) {
      for (const name of new Set(shot)) expect(JSON.stringify(lake.plan)).not.toContain(`"${name}"`);
      const back = layoutBack(guideFrame(guide), lake, ruler).face.parts.flatMap(piecesOf);
      const words = back.map((piece) => (piece.kind === "text" ? piece.text : "")).join(" ");
      expect(plain(words)).toContain("the plumb card");
      expect(plain(words)).not.toContain("× BB");
    }
  });

  test("a lake's leader at the deep end of its band is the plumb table's board for the nearest depth", () => {
    let compared = 0;
    for (const lake of guide.lakes)
      for (const { band, rigs } of lake.plan)
        for (const rig of rigs) {
          const row = guide.rigs.plumb.depths.find(({ depth_m }) => Math.abs(depth_m - band.to_m) < 1e-3);
          if (row === undefined || !rig.way.startsWith("indicator")) continue;
          compared++;
          expect([lake.slug, rig.leader]).toEqual([lake.slug, row.board]);
          expect(Math.abs((rig.setDepth?.to_m ?? 0) - (row.set_m ?? 0))).toBeLessThan(1e-3);
        }
    expect(compared).toBeGreaterThan(0);
  });

  test("nothing asks for a wait or a count over 90 s without saying so", () => {
    for (const { rows } of guide.rigs.plumb.depths)
      for (const { wait } of rows) if (wait !== null) expect(wait.long).toBe(wait.to_s > 90);
    for (const { counts } of guide.rigs.lines)
      for (const { seconds, long } of counts) {
        expect(seconds ?? 0).toBeLessThanOrEqual(90);
        expect(long).toBe((seconds ?? 0) > 60);
      }
    for (const { flies } of guide.rigs.naked.rows)
      for (const { count_s } of flies) expect(count_s ?? 0).toBeLessThanOrEqual(90);
    for (const { plan } of guide.lakes)
      for (const { countdown } of plan.flatMap(({ rigs }) => rigs))
        if (countdown !== null)
          expect(Math.max(countdown.from_s, countdown.to_s ?? 0)).toBeLessThanOrEqual(90);
  });
});
