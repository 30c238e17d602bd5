import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { writeOfflineListAndSitemap } from "../../build/site/offline-and-sitemap.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";
import { publishDemo } from "./published-guide.ts";
import { serve } from "./web-server.ts";

const UNLISTED = "trips/over-the-pass/index.html";
const isUnlisted = (address: string): boolean => address.includes("over-the-pass");

const savedText = (page: Page): Promise<string | null> => page.locator("#saved").textContent();
const untilSaved = (page: Page): Promise<void> => page.getByText("· saved").waitFor();

describe.skipIf(!browserAtHand())("a guide saved on the phone", () => {
  const on = openedWith(publishDemo);

  test("with the network cut after one visit every page and card opens, the same to the byte", async () => {
    const server = await serve(on.made.dir);
    const [context] = await on.watched();
    const page = await context.newPage();
    await page.goto(server.url);
    await untilSaved(page);
    expect(await savedText(page)).toContain("as of 16 May 2026: all pages and cards open without a signal");
    await server.cut();
    const wanted = on.made.addresses.filter(
      (address) => /\.(html|pdf)$/.test(address) && !isUnlisted(address),
    );
    expect(wanted.length).toBeGreaterThan(60);
    const wrong: string[] = [];
    for (const address of wanted) {
      const bytes = await on.made.read(address);
      // Of each kind of page one is opened too.
      if (
        address.endsWith(".html") &&
        /^[^/]*$|quern|marl-scud|june-weekend|^(when|rigs|search)\//.test(address)
      ) {
        await page.goto(server.url + address);
        const [, title = ""] = /<title>([^<]*)</.exec(bytes.toString()) ?? [];
        if ((await page.title()) !== title) wrong.push(`${address} shows “${await page.title()}”`);
        // The styles are there too.
        if ((await page.evaluate("getComputedStyle(document.body).maxWidth")) === "none")
          wrong.push(`${address} is bare`);
      }
      const digest = await page.evaluate(
        `fetch(${JSON.stringify(server.url + address)}).then((r) => r.arrayBuffer())
          .then((b) => crypto.subtle.digest("SHA-256", b)).then((d) => [...new Uint8Array(d)])`,
      );
      const expected = [...createHash("sha256").update(bytes).digest()];
      if (JSON.stringify(digest) !== JSON.stringify(expected)) wrong.push(`${address} has other bytes`);
    }
    expect(wrong).toEqual([]);
    // A folder's address without its page's name, and one that is not there.
    await page.goto(server.url);
    expect(await page.locator("h1").textContent()).toBe("Spring 2026: where to go");
    await page.goto(`${server.url}lakes/nowhere/index.html`);
    expect(await page.locator("h1").textContent()).toBe("Not here");
    await page.getByRole("link", { name: "season board" }).click();
    expect(await page.locator("h1").textContent()).toBe("Spring 2026: where to go");
    // Search.
    await page.goto(`${server.url}search/index.html?q=quern`);
    await page.locator("#results").getByRole("link", { name: "Quern Lake", exact: true }).click();
    expect(await page.locator("h1").textContent()).toBe("Quern Lake");
    await context.close();
  });

  test("an unlisted trip is on nobody’s phone but theirs who opened it", async () => {
    const server = await serve(on.made.dir);
    const [context] = await on.watched();
    const [stranger] = await on.watched();
    const [page, other] = [await context.newPage(), await stranger.newPage()];
    await other.goto(server.url);
    await untilSaved(other);
    expect(server.asked.filter(isUnlisted)).toEqual([]);
    await page.goto(server.url + UNLISTED);
    await untilSaved(page);
    const own = on.made.addresses.filter((address) => isUnlisted(address) && address !== UNLISTED);
    expect(own.length).toBeGreaterThan(2);
    const saved = `(async () => { const names = (await caches.keys()).filter((name) => name.startsWith("own"));
      return (await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).length))).join(); })()`;
    await expect.poll(() => page.evaluate(saved), { timeout: 20_000 }).toBe(String(own.length + 1));
    await server.cut();
    await page.goto(server.url + UNLISTED);
    expect(await page.locator("h1").textContent()).toBe("Over the pass");
    for (const address of own)
      expect(
        await page.evaluate(
          `fetch(${JSON.stringify(server.url + address)}).then((r) => r.blob()).then((b) => b.size)`,
        ),
      ).toBe((await on.made.read(address)).length);
    await other.goto(server.url + UNLISTED);
    expect(await other.locator("h1").textContent()).toBe("Not here");
    await context.close();
    await stranger.close();
  });

  test("a newer guide is fetched quietly, and of it only what changed", async () => {
    const server = await serve(on.made.dir);
    const [context] = await on.watched();
    const page = await context.newPage();
    await page.goto(server.url);
    await untilSaved(page);
    // Browsers look for a newer worker when a page is opened that the one there answers for.
    await page.evaluate("navigator.serviceWorker.ready.then(() => undefined)");
    const changed = path.join(on.made.dir, "about/index.html");
    const before = await readFile(changed, "utf8");
    try {
      await writeFile(changed, before.replace("</h1>", ", renewed</h1>"));
      await writeOfflineListAndSitemap(on.made.guide, on.made.outputs, on.made.dir);
      server.asked.length = 0;
      await page.reload();
      const about = `fetch(${JSON.stringify(`${server.url}about/index.html`)}).then((r) => r.text())`;
      // Chromium puts the look for a newer worker off while the old one is kept busy: ask seldom.
      await expect.poll(() => page.evaluate(about), { timeout: 40_000, interval: 3000 }).toContain("renewed");
      expect(new Set(server.asked)).toEqual(
        new Set(["offline-worker.js", "offline-files.js", "about/index.html"]),
      );
      await server.cut();
      await page.goto(`${server.url}about/index.html`);
      expect(await page.locator("h1").textContent()).toContain("renewed");
    } finally {
      await writeFile(changed, before);
      await writeOfflineListAndSitemap(on.made.guide, on.made.outputs, on.made.dir);
    }
    await context.close();
  });

  test("while files are missing it says how many, and fetches them when a page is opened again", async () => {
    const server = await serve(on.made.dir);
    const [context] = await on.watched();
    const page = await context.newPage();
    const card = path.join(on.made.dir, "cards/quern.pdf");
    const before = await readFile(card);
    try {
      await writeFile(card, "not what the list says");
      await page.goto(server.url);
      await page.getByText("1 still missing").waitFor();
    } finally {
      await writeFile(card, before);
    }
    await page.reload();
    await untilSaved(page);
    await context.close();
    await server.cut();
  });

  test("opened from a disk it saves nothing and says nothing of it", async () => {
    const [context, faults] = await on.watched();
    const page = await context.newPage();
    await page.goto(on.onDisk("index.html"));
    await page.waitForTimeout(300);
    expect(await page.locator("#saved").count()).toBe(0);
    expect(await page.getByRole("button", { name: "Copy link" }).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
});
