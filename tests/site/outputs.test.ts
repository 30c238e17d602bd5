import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { inputSchemas } from "../../build/input/json-schemas.ts";
import { makeGuide } from "../../build/pipeline.ts";
import { guideOutputs } from "../../build/site/outputs.ts";
import { loadTemplates, sitePages } from "../../build/site/pages.ts";
import { type BuiltSite, buildSite } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";
import { siteGuide } from "./site-fixture.ts";

/** What a page, and what a style sheet, needs or leads to. */
const LINKS: Readonly<Record<string, RegExp>> = {
  ".html": /\s(?:href|src)="([^"#?]+)/g,
  ".css": /url\("([^"]+)"\)/g,
};
const ELSEWHERE = /^([a-z][a-z0-9+.-]*:|\/)/i;

/** Every address that links lead to from the board and from the page for missing addresses. */
function reached({ files }: BuiltSite): string[] {
  const addresses = new Set(["index.html", "404.html"]);
  for (const address of addresses) {
    const links = LINKS[path.posix.extname(address)];
    if (links === undefined) continue;
    for (const [, link = ""] of `${files.get(address)}`.matchAll(links))
      if (!ELSEWHERE.test(link))
        addresses.add(path.posix.join(path.posix.dirname(address), decodeURI(link.replaceAll("&amp;", "&"))));
  }
  return [...addresses].sort();
}

describe.each([
  ["a guide with everything", async () => siteGuide()],
  ["a guide with an address", async () => siteGuide({ baseUrl: "https://guide.example/spring/" })],
  ["the demonstration club", demoGuide],
])("the outputs of %s", (_, make) => {
  test("are listed exactly where links lead to them", async () => {
    const site = await buildSite(await make());
    try {
      const listed = site.outputs.filter((output) => output.listed).map(({ address }) => address);
      expect(listed.sort()).toEqual(reached(site));
    } finally {
      await site.remove();
    }
  });
});

test("a published guide is its outputs, and each of them once", async () => {
  const work = await mkdtemp(path.join(tmpdir(), "lake-season-outputs-"));
  try {
    const outDir = path.join(work, "site");
    const baseUrl = "https://guide.example/";
    const made = await makeGuide({ dataDir: "demo-data", outDir, version: "0.0.0", baseUrl, cache: false });
    const guide = made.guide ?? (await demoGuide());
    const pages = sitePages(await loadTemplates(), guide);
    const schemas = ["guide", ...Object.keys(inputSchemas())];
    const addresses = guideOutputs(guide, pages, schemas).map(({ address }) => address);
    const entries = await readdir(outDir, { recursive: true, withFileTypes: true });
    const written = entries
      .filter((entry) => entry.isFile())
      .map((entry) =>
        path.relative(outDir, path.join(entry.parentPath, entry.name)).replaceAll(path.sep, "/"),
      );
    expect(addresses.sort()).toEqual(written.sort());
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}, 400_000);
