import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type BuiltSite, buildSite, pageOf } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";
import { bareGuide, siteGuide } from "./site-fixture.ts";

describe("pages of a guide with everything", () => {
  let site: BuiltSite;
  beforeAll(async () => {
    site = await buildSite(siteGuide());
  });
  afterAll(() => site.remove());

  test("stand where the contract says", () => {
    expect([...site.pages.keys()]).toEqual(
      expect.arrayContaining([
        "index.html",
        "lakes/ember/index.html",
        "patterns/marl-scud/index.html",
        "trips/june-weekend/index.html",
        "404.html",
      ]),
    );
  });

  test("are the same bytes on a second build", async () => {
    const again = await buildSite(siteGuide());
    try {
      expect([...again.files.keys()]).toEqual([...site.files.keys()]);
      const different = [...site.files].filter(([name, bytes]) => !again.files.get(name)?.equals(bytes));
      expect(different.map(([name]) => name)).toEqual([]);
    } finally {
      await again.remove();
    }
  });

  test("carry the club's notice and the as-of date", () => {
    for (const [address, html] of site.pages) {
      expect(html, address).toContain("Everything here is invented.");
      expect(html, address).toContain("As of <strong>Sat 16 May 2026</strong>");
    }
  });

  test("run no inline script and carry no inline style", () => {
    for (const [address, html] of site.pages) {
      expect(html, address).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
      expect(html, address).not.toMatch(/\sstyle=|<style|\son[a-z]+="/);
    }
  });

  // RFC 6928: ten segments of 1,460 bytes in the first round trip.
  test("first view of a lake fits in one round trip: HTML and CSS under 14,600 bytes compressed", async () => {
    const demo = await buildSite(await demoGuide());
    for (const { files, pages } of [site, demo]) {
      const css = files.get("assets/site.css") ?? Buffer.alloc(0);
      expect(css.length).toBeGreaterThan(1000);
      for (const [address, html] of pages)
        if (address.startsWith("lakes/"))
          expect(gzipSync(html).length + gzipSync(css).length, address).toBeLessThan(14_600);
    }
    await demo.remove();
  });

  test("the page about the guide leads to the licence that goes with the fonts, and to all others", () => {
    const about = pageOf(site, "about/index.html");
    for (const [address, words] of [
      ["assets/font-licence.txt", "SIL OPEN FONT LICENSE Version 1.1"],
      ["notices.txt", "Licences of what this program is built from"],
    ] as const) {
      expect(about).toContain(`href="../${address}"`);
      expect(site.files.get(address)?.toString("utf8")).toContain(words);
    }
  });

  test("a lake's page with all it loads is under 100,000 bytes", () => {
    const html = site.files.get("lakes/ember/index.html")?.length ?? Number.NaN;
    const assets = [...site.files].filter(([name]) => name.startsWith("assets/"));
    expect(assets.length).toBeGreaterThan(3);
    expect(assets.reduce((sum, [, bytes]) => sum + bytes.length, html)).toBeLessThan(100_000);
  });

  test("what was caught and eaten stands on its lake's page with its evidence, and on no other", () => {
    const html = pageOf(site, "lakes/ember/index.html");
    const eaten = html.slice(html.indexOf('id="eaten"'), html.indexOf('id="rig"'));
    expect(eaten).toContain("0.6 fish a rod-hour over 8 rod-hours (0.2–1.5)");
    expect(eaten).toContain("9 samples here, 4 at 2 other lakes, 1 empty throat left out.");
    expect(eaten).toMatch(/Scud<\/th><td>7 of 9<\/td><td>62 %<\/td>.*42–68 %/);
    expect(eaten).not.toContain("Water boatman");
    expect(pageOf(site, "lakes/willow/index.html")).not.toContain('id="eaten"');
  });

  test("a lake's page shows what it is, its spread, its set depth, its cautions and the day its rules were read", () => {
    const html = pageOf(site, "lakes/ember/index.html");
    expect(html).toContain("Ice-off");
    expect(html).toContain("4 Jun (30 May to 9 Jun)");
    expect(html).toContain("1.5–5.5 ft");
    expect(html).toContain("Watch the wind: be off the water before whitecaps.");
    expect(html).toContain("As checked on 2 Mar 2026.");
    expect(html).toContain('href="geo:41.312,-106.291"');
    expect(html).toContain('href="../../cards/ember.pdf"');
  });

  test("a lake with a shape has a map, its marks to take along, wind with its cautions, light and water", () => {
    const html = pageOf(site, "lakes/ember/place/index.html");
    for (const heading of ["map", "wind", "light", "water"]) expect(html).toContain(`<h2 id="${heading}">`);
    expect(html).toContain('href="../../../lakes/ember/marks.gpx"');
    expect(html).toContain('href="../../../lakes/ember/map.geojson"');
    expect(html.indexOf("Watch the wind")).toBeLessThan(html.indexOf("gentle breeze"));
    expect(html).toContain("Fresh water is heaviest near 39 °F");
    expect(html).toMatch(/43 °F on 14 May/);
  });

  // At 10 °C and 1 atm 11.29 mg/L (Benson & Krause 1984); at 2,580 m 0.73 atm (ISO 2533): 4.415 / (11.29 * 0.73) = 54 %.
  test("a report's oxygen is shown with its percent of saturation, each mark with a geo: link (RFC 5870)", () => {
    const html = pageOf(site, "lakes/ember/place/index.html");
    expect(html).toMatch(/4\.4 mg\/L<\/td><td>54 %<\/td>/);
    expect(html.match(/href="geo:-?[\d.]+,-?[\d.]+">(Launch|Hazard)/g)).toHaveLength(2);
  });

  test("a lake with a shape tells where its map card is, and how a boat lies in each of the eight winds", () => {
    const html = pageOf(site, "lakes/ember/place/index.html");
    expect(html).toMatch(/The map card, to print, is in\s*<a href="..\/..\/..\/cards\/ember.pdf">/);
    expect(html).toMatch(/bow W, rods E/);
    expect(html.match(/bow [NESW]+, rods [NESW]+/g)).toHaveLength(8);
    expect(html).toContain("Bow to the wind");
  });

  test("a lake without a shape says what is known and no more", () => {
    const html = pageOf(site, "lakes/high/place/index.html");
    expect([...html.matchAll(/<h2 id="([^"]*)">/g)].map(([, id]) => id)).toEqual(["light", "water"]);
    expect(html).not.toMatch(/marks\.gpx|map\.geojson/);
  });

  test("cautions stand where their state is, not elsewhere", () => {
    const warm = "Warm water: land fish fast or leave them alone.";
    expect(pageOf(site, "lakes/cinder/index.html")).toContain(warm);
    expect(pageOf(site, "lakes/ember/index.html")).not.toContain(warm);
  });

  test("methods show the scores and the plot of a scored guide", () => {
    const html = pageOf(site, "methods/index.html");
    expect(html).toMatch(/<strong>3\.5<\/strong>/);
    expect(html).toContain("Chance said against share that came");
  });

  test("rigs show the plumb table, its drifting boat and swing; trips show the leaders to tie", () => {
    const rigs = pageOf(site, "rigs/index.html");
    const { plumb, drifting, swing } = siteGuide().rigs;
    const cell = plumb.depths
      .flatMap(({ rows }) => rows.flatMap(({ cells }) => cells))
      .find(({ shot, hold }) => shot.length > 0 && !hold);
    expect(cell).toBeDefined();
    expect(rigs).toContain(`<td><strong>${cell?.text}</strong></td>`);
    expect(drifting).not.toBeNull();
    expect(rigs).toContain(drifting?.note);
    expect(rigs).toContain(swing.note);
    expect(pageOf(site, "trips/june-weekend/index.html")).toContain(
      "<strong>Tie 2</strong>: 6 needed, 4 on boards.",
    );
  });

  test("unlisted trips have a page that search engines leave out, and no page names them", () => {
    expect(pageOf(site, "trips/quiet-trip/index.html")).toContain('<meta name="robots" content="noindex"');
    const naming = [...site.pages].filter(
      ([address, html]) => address !== "trips/quiet-trip/index.html" && /quiet-trip|Quiet trip/.test(html),
    );
    expect(naming.map(([address]) => address)).toEqual([]);
  });
});

test("a lake's own pages alone are made anew when only that lake is asked for", async () => {
  const site = await buildSite(siteGuide(), "ember");
  try {
    expect([...site.pages.keys()]).toEqual([
      "lakes/ember/index.html",
      "lakes/ember/launch/index.html",
      "lakes/ember/place/index.html",
      "lakes/ember/reports/index.html",
    ]);
  } finally {
    await site.remove();
  }
});

describe("pages of a guide with places and dates alone", () => {
  let site: BuiltSite;
  beforeAll(async () => {
    site = await buildSite(bareGuide());
  });
  afterAll(() => site.remove());

  test("say nothing of what is not known", () => {
    for (const [address, html] of site.pages) {
      expect(html, address).not.toMatch(/\b(null|undefined|NaN)\b|\[object /);
      expect(html, address).not.toMatch(/<(h[1-6]|dt|dd|caption|ul|ol|dl|p|li|summary)(\s[^>]*)?>\s*<\/\1>/);
      expect(html, address).not.toMatch(/<h2[^>]*>[^<]*<\/h2><div class="in"><\/div>/);
    }
  });

  test("have no pages for what is not there", () => {
    expect([...site.pages.keys()].filter((address) => !address.startsWith("lakes/"))).toEqual([
      "404.html",
      "index.html",
      "search/index.html",
      "when/index.html",
    ]);
  });
});

test("a name that looks like HTML is shown, not obeyed", async () => {
  const name = '<script>alert(1)</script> & "x"';
  const guide = siteGuide();
  const site = await buildSite({
    ...guide,
    club: { ...guide.club, name, notice: name },
    lakes: guide.lakes.map((lake) => ({
      ...lake,
      name,
      region: name,
      hazards: [name],
      status: { ...lake.status, next: name, why: [name] },
      access: { text: name, opens: null, travel_h: null },
    })),
    patterns: guide.patterns.map((pattern) => ({ ...pattern, name, colours: [name] })),
    trips: guide.trips.map((trip) => ({ ...trip, name })),
    chapters: guide.chapters.map((chapter) => ({ ...chapter, title: name })),
  });
  try {
    expect(site.pages.size).toBeGreaterThan(15);
    for (const [address, html] of site.pages) {
      expect(html, address).not.toContain("<script>");
      expect(html, address).toContain("&lt;script");
    }
  } finally {
    await site.remove();
  }
});
