import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type BuiltSite, buildSite } from "../site/built-site.ts";
import { siteGuide } from "../site/site-fixture.ts";
import { browserAtHand, startBrowser } from "./browser.ts";

describe.skipIf(!browserAtHand())("the packing list, opened from a disk", () => {
  let browser: Browser;
  let site: BuiltSite;
  beforeAll(async () => {
    browser = await startBrowser();
    site = await buildSite(siteGuide());
  });
  afterAll(async () => {
    await browser?.close();
    await site?.remove();
  });
  const urlOf = (slug: string): string => pathToFileURL(`${site.dir}/trips/${slug}/index.html`).href;

  test("counts what is packed, remembers it by trip and item, and clears it when that is confirmed", async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(urlOf("june-weekend"));
    const told = page.locator("#packed output");
    expect(await told.textContent()).toBe("0 of 3 packed");
    await page.getByLabel("Whistle").check();
    await page.getByLabel("Life jacket").check();
    expect(await told.textContent()).toBe("2 of 3 packed");
    await page.reload();
    expect(await told.textContent()).toBe("2 of 3 packed");
    expect(await page.getByLabel("Whistle").isChecked()).toBe(true);
    await page.goto(urlOf("quiet-trip"));
    expect(await told.textContent()).toBe("0 of 3 packed");
    await page.goto(urlOf("june-weekend"));
    page.once("dialog", (dialog) => dialog.dismiss());
    await page.getByRole("button", { name: "Clear all ticks" }).click();
    expect(await told.textContent()).toBe("2 of 3 packed");
    page.once("dialog", (dialog) => dialog.accept());
    await page.getByRole("button", { name: "Clear all ticks" }).click();
    expect(await told.textContent()).toBe("0 of 3 packed");
    await page.reload();
    expect(await told.textContent()).toBe("0 of 3 packed");
    await context.close();
  });

  test("without storage it still counts; without script the boxes stand and the count does not", async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(
      "Object.defineProperty(window, 'localStorage', { get() { throw new Error('switched off'); } })",
    );
    await page.goto(urlOf("june-weekend"));
    await page.getByLabel("Whistle").check();
    expect(await page.locator("#packed output").textContent()).toBe("1 of 3 packed");
    await context.close();
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(urlOf("june-weekend"));
    expect(await still.locator("#packed").isVisible()).toBe(false);
    expect(await still.locator(".packing input").count()).toBe(3);
    await plain.close();
  });
});
