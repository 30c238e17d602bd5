import { createHash } from "node:crypto";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { unzipSync } from "fflate";
import { SaxesParser } from "saxes";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { writeData } from "../../build/feeds/write-data.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { writeOfflineListAndSitemap } from "../../build/site/offline-and-sitemap.ts";
import { zipGuide } from "../../build/site/zip.ts";
import { type BuiltSite, buildSite } from "./built-site.ts";
import { siteGuide } from "./site-fixture.ts";

const BASE = "https://guide.example/spring/";

/** What the offline worker would read. */
async function listOf(
  dir: string,
): Promise<{ asOf: string; asOfWords: string; files: Record<string, string> }> {
  const script = await readFile(path.join(dir, "offline-files.js"), "utf8");
  return JSON.parse(/^self\.guideFiles = (.*);\n$/.exec(script)?.[1] ?? "");
}

describe("a guide that has been written", () => {
  let guide: Guide;
  let site: BuiltSite;
  let work: string;
  beforeAll(async () => {
    work = await mkdtemp(path.join(tmpdir(), "lake-season-finish-"));
    guide = siteGuide({ baseUrl: BASE });
    site = await buildSite(guide);
    await writeData(guide, {}, site.dir);
    await writeOfflineListAndSitemap(guide, site.outputs, site.dir);
  });
  afterAll(async () => {
    await site.remove();
    await rm(work, { recursive: true, force: true });
  });

  test("lists for the phone every page but the unlisted, with what pages load, and nothing for programs", async () => {
    const { files, asOfWords } = await listOf(site.dir);
    expect(asOfWords).toBe("16 May 2026");
    const pages = [...site.pages.keys()].filter((address) => !address.includes("quiet-trip"));
    expect(Object.keys(files).filter((address) => address.endsWith(".html"))).toEqual(pages);
    const assets = [...site.files.keys()].filter((address) => address.startsWith("assets/"));
    expect(Object.keys(files)).toEqual(expect.arrayContaining([...assets, "manifest.webmanifest"]));
    expect(JSON.stringify(files)).not.toMatch(/quiet-trip|guide\.json|geojson|feed\.xml/);
  });

  test("lists the SHA-256 of every file (recomputed here), so a changed file changes the list", async () => {
    const before = await listOf(site.dir);
    for (const [address, hash] of Object.entries(before.files)) {
      const bytes = await readFile(path.join(site.dir, address));
      expect(hash, address).toBe(createHash("sha256").update(bytes).digest("base64"));
    }
    const about = path.join(site.dir, "about/index.html");
    const text = await readFile(about, "utf8");
    await writeFile(about, `${text}<!-- -->`);
    await writeOfflineListAndSitemap(guide, site.outputs, site.dir);
    const after = await listOf(site.dir);
    await writeFile(about, text);
    const changed = Object.keys(after.files).filter((name) => after.files[name] !== before.files[name]);
    expect(changed).toEqual(["about/index.html"]);
  });

  test("has a site map of full addresses, without the unlisted and the page for missing ones", async () => {
    const parser = new SaxesParser({ xmlns: true });
    const urls: string[] = [];
    let inside = "";
    parser.on("opentag", ({ name, uri }) => {
      expect(uri).toBe("http://www.sitemaps.org/schemas/sitemap/0.9");
      inside = name;
    });
    parser.on("text", (text) => {
      if (inside === "loc" && text.trim() !== "") urls.push(text);
    });
    parser.write(await readFile(path.join(site.dir, "sitemap.xml"), "utf8")).close();
    const pages = [...site.pages.keys()].filter(
      (address) => !address.includes("quiet-trip") && address !== "404.html",
    );
    expect(urls).toEqual(pages.map((address) => BASE + address));
  });

  test("without an address of its own it has no site map and no link pictures", async () => {
    const plain = await buildSite(siteGuide());
    try {
      await writeOfflineListAndSitemap(siteGuide(), plain.outputs, plain.dir);
      await expect(readFile(path.join(plain.dir, "sitemap.xml"))).rejects.toThrow("ENOENT");
      expect([...plain.files.keys()].filter((name) => name.endsWith(".png"))).toEqual([]);
    } finally {
      await plain.remove();
    }
  });

  test("packs the same files twice to the same bytes, dated by the as-of day, without the unlisted", async () => {
    const [first, second] = [path.join(work, "a.zip"), path.join(work, "b/c.zip")];
    await zipGuide(guide, site.dir, first);
    vi.stubEnv("TZ", "Pacific/Auckland");
    await zipGuide(guide, site.dir, second);
    vi.unstubAllEnvs();
    const bytes = await readFile(first);
    expect(bytes.equals(await readFile(second))).toBe(true);
    const files = unzipSync(bytes);
    expect(Object.keys(files).filter((name) => name.includes("quiet-trip"))).toEqual([]);
    expect(Buffer.from(files["guide/index.html"] ?? []).toString()).toBe(site.pages.get("index.html"));
    expect(Object.keys(files)).toEqual(expect.arrayContaining(["guide/assets/site.css", "guide/guide.json"]));
    // Local file header, PKWARE APPNOTE 4.4.6: days, months, and years from 1980 in the two bytes at 12.
    const date = bytes.readUInt16LE(12);
    expect([(date >> 9) + 1980, (date >> 5) & 15, date & 31]).toEqual([2026, 5, 16]);
  });
});
