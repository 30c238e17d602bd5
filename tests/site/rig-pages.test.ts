import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { type BuiltSite, buildSite, pageOf } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";

/** What a reader sees of a stretch of HTML. */
const seen = (html: string): string =>
  html
    .replace(/<[^>]*>/g, " ")
    .replace(/&#39;|&apos;/g, "'")
    .replace(/&amp;/g, "&")
    .replace(/\s+/g, " ");

describe("the rigs of the demonstration club", () => {
  let guide: Guide;
  let site: BuiltSite;
  beforeAll(async () => {
    guide = await demoGuide();
    site = await buildSite(guide);
  });
  afterAll(() => site?.remove());

  test("every way a pattern is fished has its rig, drawn or told, with its depth and its check", () => {
    const page = pageOf(site, "rigs/index.html");
    const ways = new Set(guide.patterns.flatMap((pattern) => pattern.ways));
    expect(ways.size).toBeGreaterThan(4);
    for (const way of ways) {
      const id = `way-${way.replaceAll(" ", "-")}`;
      const part = new RegExp(`<section[^>]*aria-labelledby="${id}".*?</section>`, "s").exec(page)?.[0] ?? "";
      const rig = guide.rigs.ways.find((one) => one.rig.way === way)?.rig;
      expect(seen(part), way).toContain(rig?.check ?? "no such rig");
      expect(seen(part), way).toMatch(/(Set|Fly at) [\d.]+–[\d.]+ ft/);
      expect(part, way).toMatch(/<svg|as drawn/);
    }
  });

  test("every leader an indicator slides on is drawn, with every section in words beside it", () => {
    const page = pageOf(site, "rigs/index.html");
    for (const leader of guide.rigs.leaders) {
      const part =
        new RegExp(`<section[^>]*aria-label="Leader ${leader.name}".*?</section>`, "s").exec(page)?.[0] ?? "";
      expect(part.includes("<svg"), leader.name).toBe(leader.serves !== null);
      for (const { size } of leader.sections)
        expect(seen(part.replace(/<svg.*?<\/svg>/s, "")), leader.name).toContain(size);
    }
  });

  test("every drawing's words stand beside it as text", () => {
    for (const [address, page] of site.pages)
      for (const [, svg = "", words] of page.matchAll(/<figure>(.*?)<figcaption[^>]*>(.*?)<\/figcaption>/gs))
        expect(svg, address).toContain(`<title>${words}</title>`);
  });

  test("the page for the launch draws the rig of the phase at hand", () => {
    for (const { slug, plan } of guide.lakes) {
      const page = pageOf(site, `lakes/${slug}/launch/index.html`);
      const part = /<section aria-labelledby="rig">.*?<\/section>/s.exec(page)?.[0] ?? "";
      expect(part.includes("<figure>"), slug).toBe(plan.length > 0 && part !== "");
      expect(part, slug).toContain("off the bottom.");
    }
  });
});
