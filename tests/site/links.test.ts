import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { type BuiltSite, buildSite } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";
import { bareGuide, siteGuide } from "./site-fixture.ts";

/** Files that stand beside the pages but are written elsewhere: cards, calendars, maps and marks, the data, the feed. */
const WRITTEN_ELSEWHERE =
  /^(cards\/[a-z0-9-]+\.pdf|lakes\/[a-z0-9-]+\/(season\.ics|marks\.gpx|map\.geojson)|trips\/[a-z0-9-]+\/trip\.ics|guide\.json|reports\/feed\.xml)$/;

interface Link {
  readonly page: string;
  readonly target: string;
}

const linksIn = (site: BuiltSite): Link[] =>
  [...site.pages].flatMap(([page, html]) =>
    [...html.matchAll(/\s(?:href|src)="([^"]*)"/g)].map(([, target = ""]) => ({
      page,
      target: target.replaceAll("&amp;", "&"),
    })),
  );

/** Where a relative link leads: an address of the site and a fragment. */
function resolved({ page, target }: Link): { readonly address: string; readonly fragment: string } {
  const [file = "", fragment = ""] = target.split("#");
  const address = file === "" ? page : path.posix.join(path.posix.dirname(page), decodeURI(file));
  return { address, fragment };
}

function broken(site: BuiltSite): string[] {
  return linksIn(site)
    .filter(({ target }) => !target.startsWith("geo:"))
    .filter((link) => {
      const { address, fragment } = resolved(link);
      if (WRITTEN_ELSEWHERE.test(address)) return false;
      if (!site.files.has(address)) return true;
      return fragment !== "" && !site.pages.get(address)?.includes(` id="${fragment}"`);
    })
    .map(({ page, target }) => `${page} -> ${target}`);
}

const SCHEME = /^([a-z][a-z0-9+.-]*:|\/)/i;

describe.each([
  ["a guide with everything", siteGuide],
  ["a guide with places and dates alone", bareGuide],
  ["the demonstration club", demoGuide],
])("links of %s", (_, make) => {
  let site: BuiltSite;
  let guide: Guide;
  beforeAll(async () => {
    guide = await make();
    site = await buildSite(guide);
  });
  afterAll(() => site.remove());

  test("lead to a file and a fragment that exist", () => {
    expect(broken(site)).toEqual([]);
  });

  test("are relative, but for positions", () => {
    const absolute = linksIn(site).filter(({ target }) => SCHEME.test(target) && !target.startsWith("geo:"));
    expect(absolute).toEqual([]);
  });

  test("name nobody else's address", () => {
    const addresses = [...site.files]
      .filter(([name]) => /\.(html|css|js)$/.test(name))
      .flatMap(([name, bytes]) =>
        [...bytes.toString("utf8").matchAll(/\bhttps?:\/\/[^\s"'<>)]+/g)].map(([url]) => `${name}: ${url}`),
      )
      .filter((line) => !line.endsWith("http://www.w3.org/2000/svg"));
    expect(addresses).toEqual([]);
  });

  test("reach every page but the unlisted trips, from the board on", () => {
    const reached = new Set(["index.html"]);
    const links = linksIn(site);
    for (const address of reached)
      for (const link of links)
        if (link.page === address) {
          const target = resolved(link).address;
          if (site.pages.has(target)) reached.add(target);
        }
    const unreached = [...site.pages.keys()].filter((address) => !reached.has(address));
    const unlisted = guide.trips
      .filter((trip) => trip.unlisted)
      .map(({ slug }) => `trips/${slug}/index.html`);
    expect(unreached).toEqual(["404.html", ...unlisted]);
  });
});

describe("a guide with an address of its own", () => {
  let site: BuiltSite;
  beforeAll(async () => {
    site = await buildSite(siteGuide({ baseUrl: "https://guide.example/spring/" }));
  });
  afterAll(() => site.remove());

  test("says it in link previews, page by page", () => {
    const lake = site.pages.get("lakes/ember/index.html") ?? "";
    expect(lake).toContain(
      '<meta property="og:url" content="https://guide.example/spring/lakes/ember/index.html"',
    );
    expect(lake).toContain('<meta property="og:title" content="Ember Lake"');
  });

  test("shows a picture of the lake or of the board, PNG of 1200 by 630 pixels, the same on a second build", async () => {
    const pictures = [...site.files].filter(([name]) => name.endsWith(".png"));
    expect(pictures.map(([name]) => name)).toEqual(
      ["lakes/cinder", "lakes/ember", "lakes/high", "lakes/kettle", "lakes/larch", "lakes/willow"]
        .map((lake) => `${lake}/link.png`)
        .concat("link.png"),
    );
    for (const [name, bytes] of pictures) {
      // PNG, third edition: signature, then width and height in the IHDR chunk.
      expect(bytes.subarray(1, 4).toString(), name).toBe("PNG");
      expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)], name).toEqual([1200, 630]);
    }
    expect(new Set(pictures.map(([, bytes]) => bytes.toString("base64"))).size).toBe(pictures.length);
    for (const [page, picture] of [
      ["lakes/ember/index.html", "lakes/ember/link.png"],
      ["rigs/index.html", "link.png"],
    ] as const)
      expect(site.pages.get(page)).toContain(
        `<meta property="og:image" content="https://guide.example/spring/${picture}"`,
      );
    const again = await buildSite(siteGuide({ baseUrl: "https://guide.example/spring/" }));
    expect(pictures.filter(([name, bytes]) => !again.files.get(name)?.equals(bytes))).toEqual([]);
    await again.remove();
  });

  test("gives its page for missing addresses the folder that its links start from", () => {
    expect(site.pages.get("404.html")).toContain('<base href="/spring/"');
  });

  test("gives unlisted trips no preview", () => {
    expect(site.pages.get("trips/quiet-trip/index.html")).not.toContain("og:");
  });
});
