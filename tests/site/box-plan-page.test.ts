import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { type BuiltSite, buildSite } from "./built-site.ts";
import { siteGuide } from "./site-fixture.ts";

const plain = (html: string): string => html.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");

describe("the box on a trip's page", () => {
  let site: BuiltSite;
  let guide: Guide;
  let section: string;
  let box: Guide["trips"][number]["box"];
  beforeAll(async () => {
    guide = siteGuide();
    site = await buildSite(guide);
    const page = site.pages.get("trips/june-weekend/index.html") ?? "";
    section = page.split('<section aria-labelledby="box">')[1]?.split(/<section aria-labelledby=/)[0] ?? "";
    const trip = guide.trips.find(({ slug }) => slug === "june-weekend");
    if (trip === undefined) throw new Error("no such trip");
    box = trip.box;
  });
  afterAll(() => site.remove());

  test("the table's rows are the Guide's: number, fly, how many to carry, to have and to tie", () => {
    const rows = [...section.matchAll(/<tr><th scope="row">(.*?)<\/tr>/g)].map(([, row = ""]) => plain(row));
    expect(rows).toHaveLength(box.rows.length);
    expect(rows.length).toBeGreaterThan(2);
    for (const [i, { row, name, size, colour, carry, have, tie }] of box.rows.entries()) {
      expect(rows[i]).toMatch(new RegExp(`^${row} ${name} ${size} ${colour}\\b`));
      expect(rows[i]?.trim()).toMatch(new RegExp(` ${carry} ${have}${tie === 0 ? "" : ` ${tie}`}$`));
    }
  });

  test("each fly to tie and each material has a box to tick and a mark of its own", () => {
    const marks = [...section.matchAll(/<li data-tick="([^"]+)"><label><input type="checkbox"/g)].map(
      ([, mark]) => mark,
    );
    const wanted = box.tying.flatMap(({ flies }) => flies).length + box.materials.length;
    expect(wanted).toBeGreaterThan(2);
    expect(marks).toHaveLength(wanted);
    expect(new Set(marks).size).toBe(wanted);
    for (const { text } of box.materials) expect(plain(section)).toContain(text);
  });
});
