import { describe, expect, test } from "vitest";
import { buildSite } from "../site/built-site.ts";
import { siteGuide } from "../site/site-fixture.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";

describe.skipIf(!browserAtHand())("the packing list, opened from a disk", () => {
  const on = openedWith(() => buildSite(siteGuide()));
  const urlOf = (slug: string): string => on.onDisk(`trips/${slug}/index.html`);

  test("counts what is packed, remembers it by trip and item, and clears it when that is confirmed", async () => {
    const context = await on.browser.newContext();
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
    const context = await on.browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(
      "Object.defineProperty(window, 'localStorage', { get() { throw new Error('switched off'); } })",
    );
    await page.goto(urlOf("june-weekend"));
    await page.getByLabel("Whistle").check();
    expect(await page.locator("#packed output").textContent()).toBe("1 of 3 packed");
    await context.close();
    const plain = await on.browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(urlOf("june-weekend"));
    expect(await still.locator("#packed").isVisible()).toBe(false);
    expect(await still.locator(".packing input").count()).toBe(3);
    await plain.close();
  });
});
