import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { buildSite } from "../site/built-site.ts";
import { bareGuide } from "../site/site-fixture.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";

type Channels = readonly [number, number, number];

/** WCAG 2.2, "relative luminance". */
function luminance([red, green, blue]: Channels): number {
  const linear = (channel: number): number =>
    channel / 255 <= 0.04045 ? channel / 255 / 12.92 : ((channel / 255 + 0.055) / 1.055) ** 2.4;
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/** WCAG 2.2, "contrast ratio". */
function contrast(a: Channels, b: Channels): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test("contrast ratio: black on white is 21 to 1, #777777 on white 4.48 to 1 (WebAIM's worked values)", () => {
  expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 6);
  expect(contrast([119, 119, 119], [255, 255, 255])).toBeCloseTo(4.48, 2);
});

const STATES = ["iced", "ice-off", "turnover", "best", "later"];
/** Ink, ground and the least contrast between them: 4.5 for text (WCAG 1.4.3), 3 for drawing (1.4.11). */
const PAIRS: readonly (readonly [string, string, number])[] = [
  ["ink", "paper", 7],
  ["faint", "paper", 4.5],
  ["accent", "paper", 4.5],
  ["hair", "paper", 3],
  ["strip-words", "strip-paper", 4.5],
  ["strip-line", "strip-paper", 3],
  ["strip-accent", "strip-paper", 3],
  ...STATES.map((state) => [`strip-${state}-words`, `strip-${state}`, 4.5] as const),
  // The other two states are told by having no hatching: one solid, one bare.
  ...["iced", "ice-off", "turnover"].map((state) => [`strip-${state}-hatch`, `strip-${state}`, 3] as const),
  ["strip-best", "strip-paper", 3],
  ["strip-best", "strip-turnover", 3],
  ["strip-best", "strip-later", 3],
];

/** What a custom property comes to, as the browser paints it. @throws when the page defines no such property */
async function painted(page: Page, name: string): Promise<Channels> {
  const rgb = String(
    await page.evaluate(
      `(() => { const probe = document.createElement("i"); document.body.append(probe);
        probe.style.color = "var(--${name})"; const style = getComputedStyle(probe);
        const shown = style.getPropertyValue("--${name}") === "" ? "undefined" : style.color; probe.remove(); return shown; })()`,
    ),
  );
  const [red, green, blue] = (rgb.match(/\d+/g) ?? []).map(Number);
  if (red === undefined || green === undefined || blue === undefined) throw new Error(`${name} is ${rgb}`);
  return [red, green, blue];
}

async function tooFaint(page: Page): Promise<string[]> {
  const faint: string[] = [];
  for (const [ink, ground, least] of PAIRS) {
    const ratio = contrast(await painted(page, ink), await painted(page, ground));
    if (ratio < least) faint.push(`${ink} on ${ground}: ${ratio.toFixed(2)}, wants ${least}`);
  }
  return faint;
}

describe.skipIf(!browserAtHand())("inks of the pages stand out", () => {
  const on = openedWith(() => buildSite(bareGuide()));

  test.each([
    { colorScheme: "light", contrast: "no-preference", glare: false },
    { colorScheme: "dark", contrast: "no-preference", glare: false },
    { colorScheme: "light", contrast: "more", glare: false },
    { colorScheme: "dark", contrast: "more", glare: false },
    { colorScheme: "light", contrast: "no-preference", glare: true },
    { colorScheme: "dark", contrast: "no-preference", glare: true },
    { colorScheme: "dark", contrast: "more", glare: true },
  ] as const)("$colorScheme, contrast $contrast, glare $glare", async ({ glare, ...media }) => {
    const page = await on.browser.newPage();
    await page.emulateMedia(media);
    await page.goto(on.onDisk("index.html"));
    if (glare) await page.getByLabel("Sun glare").check();
    expect(await tooFaint(page)).toEqual([]);
    await page.close();
  });

  test("in print, whatever the screen's scheme", async () => {
    const page = await on.browser.newPage();
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    await page.goto(on.onDisk("index.html"));
    expect(await painted(page, "paper")).toEqual([255, 255, 255]);
    expect(await tooFaint(page)).toEqual([]);
    await page.close();
  });
});
