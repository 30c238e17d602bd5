import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { layoutBack } from "../../build/cards/lake/back.ts";
import { layoutRigCard, RIG_CARD_DESIGNS } from "../../build/cards/rig/rig-card.ts";
import { guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { depthGlance } from "../../build/model/units.ts";
import { ruler } from "../cards/card-fixture.ts";
import { piecesOf, written } from "../cards/legibility.ts";
import { type BuiltSite, buildSite, pageOf } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";

let guide: Guide;
let site: BuiltSite;
beforeAll(async () => {
  guide = await demoGuide();
  site = await buildSite(guide);
});
afterAll(() => site?.remove());

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** What a reader sees of a stretch of HTML. */
const seen = (html: string): string =>
  plain(
    html
      .replace(/<[^>]*>/g, " ")
      .replaceAll("&nbsp;", " ")
      .replace(/\s+/g, " "),
  ).trim();

/** The cells of each row of the table under a caption that begins so. */
function tableRows(html: string, caption: string): string[][] {
  const [table = ""] =
    html.match(/<table.*?<\/table>/gs)?.filter((one) => seen(one).startsWith(caption)) ?? [];
  return [...table.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row = ""]) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell = ""]) => seen(cell)),
  );
}

/** Seconds a reader is asked to wait or count beyond this must be called long. */
const LONG_S = 90;

/** Waits and counts in words that are over {@link LONG_S} and not called long behind it or a star. */
const silentlyLong = (words: string): string[] =>
  [...words.matchAll(/(?:wait|count)[^.;]{0,40}?(\d+) ?s\b([^.;]{0,8})/gi)]
    .filter(([, seconds = "", behind = ""]) => Number(seconds) > LONG_S && !/long|\*/.test(behind))
    .map(([found]) => found);

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

  test("the rigs page has one row a depth for each fly, and its cells are those of guide.json", () => {
    const page = pageOf(site, "rigs/index.html");
    const { plumb } = guide.rigs;
    for (const fly of new Set(plumb.depths.flatMap(({ rows }) => rows.map((row) => row.fly)))) {
      const caption = `${fly.charAt(0).toUpperCase()}${fly.slice(1)}: set, board`;
      const [, ...body] = tableRows(page, caption);
      expect(
        body.map((cells) => cells.slice(2, 5)),
        fly,
      ).toEqual(
        plumb.depths.map(({ rows }) =>
          (rows.find((row) => row.fly === fly)?.cells ?? []).map(
            ({ text, hold }) => `${text}${hold ? " hold" : ""}`,
          ),
        ),
      );
    }
  });

  test("the page of every lake names no shot and no wait: it points to that table", () => {
    const shot = new Set(answers().flatMap(({ shot: pieces }) => pieces.map(({ name }) => name)));
    expect(shot.size).toBeGreaterThan(1);
    for (const { slug, plan } of guide.lakes) {
      const page = pageOf(site, `lakes/${slug}/index.html`);
      if (plan.length > 0) expect([slug, page.includes("/rigs/index.html#plumb")]).toEqual([slug, true]);
      for (const name of shot) expect(seen(page), slug).not.toMatch(new RegExp(`\\b${name}\\b`));
      expect(seen(page), slug).not.toMatch(/\bwait \d+/i);
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

  test("what the plumb card, the rig cards and pages print over 90 s is called long", () => {
    const long = guide.rigs.plumb.depths.flatMap(({ rows }) =>
      rows.flatMap(({ fly, wait }) => (fly === guide.rigs.plumb.fly && wait?.long === true ? [wait] : [])),
    );
    expect(long.length).toBeGreaterThan(0);
    const withWaits: string[] = [];
    for (const design of RIG_CARD_DESIGNS) {
      const { front, back } = layoutRigCard(guideFrame(guide), design, ruler);
      const words = plain([front, back].map(({ face }) => written(face)).join(" "));
      expect(silentlyLong(words), design.slug).toEqual([]);
      for (const { from_s, to_s } of long) {
        const printed = [...words.matchAll(new RegExp(`\\b${from_s}[–\\s]+${to_s}\\b(.{0,6})`, "g"))];
        if (printed.length > 0) withWaits.push(design.slug);
        for (const [found, behind = ""] of printed)
          expect([design.slug, found, /^(\*| long)/.test(behind)]).toEqual([design.slug, found, true]);
      }
    }
    expect(withWaits).toEqual(expect.arrayContaining(["plumb-a6", "rig-5x3"]));
    const column = tableRows(pageOf(site, "rigs/index.html"), "Beaded pupa: set, board");
    const waits = column.slice(1).map((cells) => cells.at(-2) ?? "");
    expect(waits.filter((wait) => wait.endsWith(", long"))).toHaveLength(long.length);
    for (const wait of waits)
      expect(wait.endsWith(", long")).toBe(Number(/to (\d+) s/.exec(wait)?.[1]) > LONG_S);
    for (const [address, page] of site.pages)
      expect([address, silentlyLong(seen(page))]).toEqual([address, []]);
  });

  test("nothing in guide.json asks for a wait or a count over 90 s without saying so", () => {
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
