import type { Page } from "playwright-core";
import { afterAll, describe, expect, test } from "vitest";
import { writeOfflineListAndSitemap } from "../../build/site/offline-and-sitemap.ts";
import { buildSite } from "../site/built-site.ts";
import { siteGuide } from "../site/site-fixture.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";
import { serve, type WebServer } from "./web-server.ts";

describe.skipIf(!browserAtHand())("search, sharing and the content policy", () => {
  let server: WebServer;
  const on = openedWith(async () => {
    const plain = siteGuide();
    const guide = {
      ...plain,
      lakes: plain.lakes.map((lake) => (lake.slug === "larch" ? { ...lake, name: "Étang Ýmir" } : lake)),
    };
    const site = await buildSite(guide);
    await writeOfflineListAndSitemap(guide, site.outputs, site.dir);
    server = await serve(site.dir);
    return site;
  });
  afterAll(() => server?.cut());

  const found = (page: Page): Promise<string[]> => page.locator("#results a").allInnerTexts();

  test.each(["a disk", "a server"])("from %s: by keyboard alone to a lake, accents or not", async (from) => {
    const [context, faults] = await on.watched({ viewport: { width: 390, height: 844 } });
    const page = await context.newPage();
    const root = from === "a disk" ? on.onDisk("") : server.url;
    await page.goto(`${root}search/index.html`);
    const box = page.getByRole("search").getByRole("searchbox");
    for (let i = 0; i < 20 && (await page.evaluate("document.activeElement.id")) !== "q"; i++)
      await page.keyboard.press("Tab");
    await page.keyboard.type("etan");
    expect(await found(page)).toEqual(["Étang Ýmir"]);
    expect(await page.getByRole("status").textContent()).toBe("1 found.");
    await box.fill("ÉTANG ymir");
    expect(await found(page)).toEqual(["Étang Ýmir"]);
    await page.keyboard.press("Enter");
    await page.waitForURL(/\?q=/);
    expect(await found(page)).toEqual(["Étang Ýmir"]);
    await page.getByRole("link", { name: "Étang Ýmir" }).first().click();
    expect(await page.locator("h1").textContent()).toBe("Étang Ýmir");
    expect(page.url()).toBe(`${root}lakes/larch/index.html`);
    await context.close();
    expect(faults).toEqual([]);
  });

  test("finds lakes, patterns, trips, chapters and the club's pages; never an unlisted trip", async () => {
    const [context] = await on.watched();
    const page = await context.newPage();
    const results: Record<string, string[]> = {};
    for (const words of [
      "ember",
      "marl scud",
      "june",
      "how to read",
      "club days",
      "quiet trip",
      "zzz",
      "  ",
    ]) {
      await page.goto(on.onDisk(`search/index.html?q=${encodeURIComponent(words)}`));
      results[words] = await found(page);
    }
    expect(results).toMatchObject({
      ember: expect.arrayContaining(["Ember Lake", "June weekend"]),
      "marl scud": ["Marl Scud", "Ember Lake: reports"],
      june: ["June weekend"],
      "how to read": ["How to read this guide"],
      "club days": ["Club days"],
      "quiet trip": [],
      zzz: [],
      "  ": [],
    });
    expect(Object.values(results)[0]?.[0]).toBe("Ember Lake");
    expect(await page.getByRole("heading", { name: "All from A to Z" }).isVisible()).toBe(true);
    await page.getByRole("searchbox").fill("zzz");
    expect(await page.getByRole("status").textContent()).toBe("Nothing found. Try fewer or shorter words.");
    await context.close();
  });

  test("without a script there is no box that does nothing, and the list from A to Z", async () => {
    const [context] = await on.watched({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(on.onDisk("search/index.html"));
    expect(await page.getByRole("searchbox").isVisible()).toBe(false);
    const names = await page.locator("#all a").allInnerTexts();
    expect(names).toContain("Ember Lake");
    expect(names).not.toContain("Quiet trip");
    expect(await page.getByRole("button").count()).toBe(0);
    await context.close();
  });

  test("a button copies the page's address", async () => {
    const [context] = await on.watched({ permissions: ["clipboard-read", "clipboard-write"] });
    const page = await context.newPage();
    await page.goto(`${server.url}lakes/ember/index.html#dates`);
    await page.getByRole("button", { name: "Copy link" }).click();
    await page.getByRole("button", { name: "Link copied" }).waitFor();
    expect(await page.evaluate("navigator.clipboard.readText()")).toBe(`${server.url}lakes/ember/index.html`);
    await context.close();
  });

  test("where the device can share, a button hands it title and address", async () => {
    const [context] = await on.watched();
    await context.addInitScript("navigator.share = async (what) => { globalThis.shared = what; }");
    const page = await context.newPage();
    await page.goto(`${server.url}lakes/ember/index.html`);
    await page.getByRole("button", { name: "Share this page" }).click();
    expect(await page.evaluate("shared")).toEqual({
      title: await page.title(),
      url: `${server.url}lakes/ember/index.html`,
    });
    await context.close();
  });

  test("every page asks its own server alone, and breaks its content policy nowhere", async () => {
    const [context, faults] = await on.watched({ viewport: { width: 390, height: 844 } });
    const elsewhere: string[] = [];
    await context.route("**/*", (route) => {
      if (!route.request().url().startsWith(server.url)) elsewhere.push(route.request().url());
      return route.continue();
    });
    await context.addInitScript(
      `addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) => console.error(violatedDirective, blockedURI))`,
    );
    const page = await context.newPage();
    for (const address of on.made.pages.keys()) await page.goto(server.url + address);
    expect(faults).toEqual([]);
    expect(elsewhere).toEqual([]);
    await context.close();
  });

  test("the policy holds: neither a script nor a style written into the page, nor a request elsewhere, gets through", async () => {
    for (const url of [`${server.url}index.html`, on.onDisk("index.html")]) {
      const [context, faults] = await on.watched();
      const page = await context.newPage();
      await page.goto(url);
      await page.evaluate(`(() => {
        const script = document.createElement("script"); script.textContent = "globalThis.ran = true"; document.body.append(script);
        const style = document.createElement("style"); style.textContent = "body { color: red }"; document.body.append(style);
        return fetch("https://elsewhere.example/").catch(() => undefined);
      })()`);
      expect(await page.evaluate("globalThis.ran")).toBeUndefined();
      expect(await page.evaluate("getComputedStyle(document.body).color")).not.toBe("rgb(255, 0, 0)");
      for (const directive of ["script-src", "style-src", "connect-src"])
        expect(faults.join("\n"), url).toContain(directive);
      await context.close();
    }
  });
});
