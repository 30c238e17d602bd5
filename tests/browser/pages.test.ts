import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { buildSite } from "../site/built-site.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { bareGuide, siteGuide } from "../site/site-fixture.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";

const PAGES = [
  "index.html",
  "lakes/ember/index.html",
  "lakes/ember/place/index.html",
  "lakes/ember/launch/index.html",
  "lakes/ember/reports/index.html",
  "lakes/high/index.html",
  "lakes/high/place/index.html",
  "patterns/index.html",
  "patterns/marl-scud/index.html",
  "rigs/index.html",
  "reports/index.html",
  "reports/2026/index.html",
  "when/index.html",
  "trips/index.html",
  "trips/june-weekend/index.html",
  "cautions/index.html",
  "methods/index.html",
  "pages/club-days/index.html",
  "search/index.html",
  "search/index.html?q=ember",
  "404.html",
];
/** A narrow phone, a usual one, a desk; by day, by night, and in the reader's own colours. */
const VIEWS = [
  { width: 360, colorScheme: "light" },
  { width: 1280, colorScheme: "dark" },
  { width: 390, colorScheme: "light", forcedColors: "active" },
] as const;

const AXE_SOURCE = readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What axe finds, a line each; every rule it has, the best practices included. Without loading the styles once more,
 * which a page opened from a disk may not.
 */
async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(await AXE_SOURCE);
  const results = (await page.evaluate(
    "axe.run(document, { preload: false, resultTypes: ['violations'] })",
  )) as AxeResults;
  return results.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

/** How far the page can be pushed sideways. */
const sidewaysScroll_px = (page: Page): Promise<number> =>
  page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");

describe.skipIf(!browserAtHand())("in a browser, opened from a disk", () => {
  const on = openedWith(() => buildSite(siteGuide()));

  test.each(VIEWS)("%o: axe finds nothing, nothing sticks out, nothing fails", async ({ width, ...look }) => {
    const [context, failures] = await on.watched({ ...look, viewport: { width, height: 800 } });
    const page = await context.newPage();
    const faults: Record<string, unknown> = {};
    for (const address of PAGES) {
      await page.goto(on.onDisk(address));
      await page.evaluate("for (const details of document.querySelectorAll('details')) details.open = true");
      const found = await axeFaults(page);
      if (found.length > 0) faults[address] = found;
      const beyond_px = await sidewaysScroll_px(page);
      if (beyond_px > 0) faults[`${address} sideways`] = beyond_px;
    }
    await context.close();
    expect(faults).toEqual({});
    expect(failures).toEqual([]);
  });

  test("axe finds nothing with sun glare on, and the next page remembers it", async () => {
    const [context] = await on.watched({ colorScheme: "dark", viewport: { width: 360, height: 800 } });
    const page = await context.newPage();
    await page.goto(on.onDisk("index.html"));
    await page.getByLabel("Sun glare").check();
    expect(await axeFaults(page)).toEqual([]);
    await page.goto(on.onDisk("lakes/ember/index.html"));
    expect(await page.getByLabel("Sun glare").isChecked()).toBe(true);
    expect(await axeFaults(page)).toEqual([]);
    expect(await sidewaysScroll_px(page)).toBe(0);
    await context.close();
  });

  test.each([360, 390, 1280])(
    "the head is calm at %d px: one line each, all places in the menu",
    async (width) => {
      const [context] = await on.watched({ viewport: { width, height: 800 } });
      const page = await context.newPage();
      await page.clock.setFixedTime(new Date("2026-11-25T18:00:00Z"));
      await page.goto(on.onDisk("index.html"));
      expect(await page.locator(".as-of").textContent()).toContain("193 days ago");
      // One box a line of text.
      const linesOf = `(element) => new Set([...(() => { const range = document.createRange();
      range.selectNodeContents(element); return range.getClientRects(); })()].map(({ bottom }) => Math.round(bottom / 8))).size`;
      expect(await page.evaluate(`(${linesOf})(document.querySelector(".as-of"))`)).toBe(1);
      const places = page.locator(".masthead nav[aria-label=Guide] a");
      const summary = page.locator(".menu summary");
      if (await summary.isVisible()) {
        expect(await places.first().isVisible()).toBe(false);
        expect((await summary.boundingBox())?.height).toBeGreaterThanOrEqual(44);
        await summary.click();
      }
      expect(await places.count()).toBe(8);
      for (const place of await places.all()) {
        expect(await place.isVisible()).toBe(true);
        expect((await place.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      }
      await context.close();
    },
  );

  // WCAG 2.2, 1.4.10 Reflow: 1,280 px at 400 % is 320 px.
  test("nothing sticks out at 320 px, which is 400 % zoom", async () => {
    const [context] = await on.watched({ viewport: { width: 320, height: 256 } });
    const page = await context.newPage();
    const beyond: Record<string, number> = {};
    for (const address of PAGES) {
      await page.goto(on.onDisk(address));
      const beyond_px = await sidewaysScroll_px(page);
      if (beyond_px > 0) beyond[address] = beyond_px;
    }
    await context.close();
    expect(beyond).toEqual({});
  });

  test("the keyboard reaches the page first, then every link, and shows where it is", async () => {
    const [context] = await on.watched({ viewport: { width: 360, height: 800 } });
    const page = await context.newPage();
    await page.goto(on.onDisk("lakes/ember/index.html"));
    await page.keyboard.press("Tab");
    expect(await page.evaluate("document.activeElement.textContent.trim()")).toBe("Skip to the page");
    const reachable = await page.locator(":is(a[href], input, button, summary):visible").count();
    const outlined = new Set<string>();
    for (let i = 0; i < reachable; i++) {
      outlined.add(String(await page.evaluate("getComputedStyle(document.activeElement).outlineStyle")));
      await page.keyboard.press("Tab");
    }
    expect([...outlined]).toEqual(["solid"]);
    await context.close();
  });

  test("reads whole without JavaScript", async () => {
    const [context] = await on.watched({ javaScriptEnabled: false, viewport: { width: 360, height: 800 } });
    const page = await context.newPage();
    await page.goto(on.onDisk("lakes/ember/index.html"));
    await page.getByText("1.5–5.5 ft").first().waitFor();
    await page.getByText("Chances week by week").click();
    expect(await page.locator(".weeks-table").getByText("Sat 16 May").isVisible()).toBe(true);
    await context.close();
  });

  test("a lake's page prints on two sheets of A4 at most", async () => {
    const [context] = await on.watched({});
    const page = await context.newPage();
    await page.goto(on.onDisk("lakes/ember/index.html"));
    const pdf = await page.pdf({ format: "A4", preferCSSPageSize: false });
    await context.close();
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length).toBeLessThanOrEqual(2);
  });

  test("chapters and pages of the demonstration club pass too, at 320 px", { timeout: 180_000 }, async () => {
    const demo = await buildSite(await demoGuide());
    const [context, failures] = await on.watched({ viewport: { width: 320, height: 640 } });
    const page = await context.newPage();
    const faults: Record<string, unknown> = {};
    for (const address of demo.pages.keys()) {
      await page.goto(pathToFileURL(`${demo.dir}/${address}`).href);
      const beyond_px = await sidewaysScroll_px(page);
      if (beyond_px > 0) faults[`${address} sideways`] = beyond_px;
      if (/^(lakes|patterns|trips)\/./.test(address)) continue;
      const found = await axeFaults(page);
      if (found.length > 0) faults[address] = found;
    }
    await context.close();
    await demo.remove();
    expect(faults).toEqual({});
    expect(failures).toEqual([]);
  });

  test("a guide with places and dates alone passes too", async () => {
    const bare = await buildSite(bareGuide());
    const [context, failures] = await on.watched({ viewport: { width: 360, height: 800 } });
    const page = await context.newPage();
    for (const address of bare.pages.keys()) {
      await page.goto(pathToFileURL(`${bare.dir}/${address}`).href);
      expect(await axeFaults(page), address).toEqual([]);
    }
    await context.close();
    await bare.remove();
    expect(failures).toEqual([]);
  });
});
