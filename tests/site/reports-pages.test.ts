import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { searchEntries } from "../../templates/_includes/search-entries.ts";
import { type BuiltSite, buildSite, pageOf } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";
import { bareGuide, siteGuide } from "./site-fixture.ts";

/** Cells of the first table of a page, row by row, without markup. */
const cellsOf = (html: string): string[][] =>
  [...(/<tbody>(.*?)<\/tbody>/s.exec(html)?.[1] ?? "").matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row = ""]) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell = ""]) => cell.replaceAll(/<[^>]*>/g, "")),
  );
/** Reports listed on a page. */
const listedOn = (html: string): string[] =>
  [...html.matchAll(/<div id="([a-z0-9-]+-\d{4}-\d{2}-\d{2}(?:-\d+)?)">/g)].map(([, id = ""]) => id);

describe("pages of reports of the demonstration club", () => {
  let guide: Guide;
  let site: BuiltSite;
  beforeAll(async () => {
    guide = await demoGuide();
    site = await buildSite(guide);
  });
  afterAll(() => site.remove());

  test("count what the guide holds, season by season", () => {
    const rows = cellsOf(pageOf(site, "reports/index.html"));
    expect(rows.map(([season, reports, fish]) => [season, reports, fish])).toEqual(
      guide.reportSeasons.map(({ season, reports, fish }) => [season, reports, fish].map(String)),
    );
    for (const { season, reports, lakes } of guide.reportSeasons) {
      const html = pageOf(site, `reports/${season}/index.html`);
      expect(listedOn(html)).toHaveLength(reports);
      expect(new Set(listedOn(html)).size).toBe(reports);
      expect(cellsOf(html).map(([name, count]) => [name, count])).toEqual(
        lakes.map((lake) => [lake.name, String(lake.reports)]),
      );
    }
  });

  test("each lake with reports has all of them on a page of its own, linked from its first page", () => {
    for (const { slug, reports } of guide.lakes) {
      const html = site.pages.get(`lakes/${slug}/reports/index.html`);
      const link = `href="../../lakes/${slug}/reports/index.html"`;
      expect(listedOn(html ?? "")).toHaveLength(reports.length);
      expect(html === undefined).toBe(reports.length === 0);
      expect(pageOf(site, `lakes/${slug}/index.html`).includes(link)).toBe(reports.length > 0);
    }
  });

  test("tell of visits without a fish", () => {
    const blank = guide.lakes.find(({ slug }) => slug === "wickstone");
    expect(blank?.reported.seasons[0]).toMatchObject({ told: 1, fish: 0 });
    const html = pageOf(site, "lakes/wickstone/reports/index.html");
    expect(cellsOf(html)[0]?.slice(0, 4)).toEqual(["2026", "1", "0", "2"]);
    expect(html).toContain("No fish in 2 rod-hours");
  });

  test("say which row of ice-off to write, and to wait with that of a running season", () => {
    const html = pageOf(site, "lakes/tallow/reports/index.html");
    expect(html).toContain("- { season: 2026, after: 2026-04-10, by: 2026-04-16 }");
    expect(html).toContain("Add the row of 2026 when the season is over");
    expect(pageOf(site, "lakes/wickstone/reports/index.html")).not.toContain('id="record"');
  });

  test("are found by search: each lake's and each season's, by fly and by food", () => {
    const pages = [...site.pages.keys()].filter((address) => /(^|\/)reports\/./.test(address));
    const entries = searchEntries(guide);
    expect(entries.map(({ address }) => address)).toEqual(
      expect.arrayContaining(pages.filter((address) => address !== "reports/index.html")),
    );
    const chalkhen = entries.find(({ address }) => address === "lakes/chalkhen/reports/index.html");
    expect(chalkhen?.text.split(" ")).toEqual(expect.arrayContaining(["bloodworm", "daphnia"]));
  });

  test("are announced to feed readers on the board and beside the reports", () => {
    const announced = [...site.pages]
      .filter(([, html]) => /<link rel="alternate" type="application\/atom\+xml"[^>]*feed\.xml"/.test(html))
      .map(([address]) => address);
    expect(announced).toEqual([
      "index.html",
      ...["2024/", "2025/", "2026/", ""].map((season) => `reports/${season}index.html`),
    ]);
  });
});

test("a lake's first page shows the newest reports of this season only", async () => {
  const site = await buildSite(siteGuide());
  try {
    const html = pageOf(site, "lakes/ember/index.html");
    expect(html).toContain("<dt>Thu 14 May</dt>");
    expect(html).toContain("5 fish in 8 rod-hours");
    expect(html).toContain("All 3 reports");
    expect(html).not.toContain("<dt>Fri 23 May</dt>");
    expect(pageOf(site, "lakes/ember/reports/index.html")).toContain("<dt>Fri 23 May</dt>");
  } finally {
    await site.remove();
  }
});

test("a club without reports has no page of them and no word of them", async () => {
  const site = await buildSite(bareGuide());
  try {
    expect([...site.pages.keys()].filter((address) => address.includes("reports"))).toEqual([]);
    for (const [address, html] of site.pages) expect(html, address).not.toMatch(/reports\/|>Reports</);
  } finally {
    await site.remove();
  }
});
