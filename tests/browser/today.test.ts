import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { buildSite } from "../site/built-site.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { browserAtHand } from "./browser.ts";
import { openedWith } from "./opened.ts";

/** The state names and what they say to do, as a reader knows them; restated here, not taken from the program. */
const NAMES = {
  iced: ["Iced", "Not yet: iced"],
  iceOff: ["Ice-off", "Go: ice-off"],
  turnover: ["Turnover", "Not yet: turnover"],
  postTurnover: ["Best weeks", "Go: best weeks"],
  laterWeeks: ["Later weeks", "Fish deeper: later weeks"],
} as const;

/** What guide.json says is likeliest on a day, in the page's words. */
function likeliestState(guide: Guide, slug: string, date: string): { name: string; verdict: string } {
  const day = guide.lakes.find((lake) => lake.slug === slug)?.daily.find((row) => row.date === date);
  if (day === undefined) throw new Error(`no ${slug} on ${date}`);
  const [state, chance] = Object.keys(NAMES)
    .map((name) => [name as keyof typeof NAMES, day[name as keyof typeof NAMES]] as const)
    .reduce((a, b) => (b[1] > a[1] ? b : a));
  const [name, words] = NAMES[state];
  return { name, verdict: `${words} ${chance > 0.99 ? "over 99" : Math.round(chance * 100)} %` };
}
const likeliest = (guide: Guide, slug: string, date: string): string =>
  likeliestState(guide, slug, date).verdict;

/** Where the strip's line stands, as a share of its width. */
const lineAt = (page: Page): Promise<number> =>
  page.evaluate(`(() => { const marker = document.querySelector(".strip [data-day]");
    return Number(/^M([\\d.]+)/.exec(marker.querySelector("path").getAttribute("d"))[1]) / marker.dataset.day; })()`);

describe.skipIf(!browserAtHand())("on the reader's own day", () => {
  let guide: Guide;
  const on = openedWith(async () => {
    const demo = await demoGuide();
    guide = { ...demo, club: { ...demo.club, example: false } };
    return buildSite(guide);
  });

  async function openOn(instant: string, address: string, javaScriptEnabled = true): Promise<Page> {
    const [context, faults] = await on.watched({ timezoneId: "America/Denver", javaScriptEnabled });
    const page = await context.newPage();
    page.on("close", () => expect(faults).toEqual([]));
    if (javaScriptEnabled) await page.clock.setFixedTime(new Date(instant));
    await page.goto(on.onDisk(address));
    return page;
  }
  const now = (page: Page): Promise<string> =>
    page
      .locator(".glance dd .big")
      .first()
      .textContent()
      .then((text) => (text ?? "").replace(/\s+/g, " ").trim());
  const LAKE = "lakes/quern/index.html";

  test("the as-of day stands as now where no script runs, and on the as-of day itself", async () => {
    for (const page of [
      await openOn("", LAKE, false),
      await openOn("2026-05-16T18:00:00Z", LAKE),
      await openOn("2026-05-01T18:00:00Z", LAKE),
    ]) {
      expect(await now(page)).toBe(likeliest(guide, "quern", "2026-05-16"));
      expect(await page.locator(".glance dt").first().textContent()).toBe("Now");
      expect(await page.locator(".strip text", { hasText: "as of 16 May" }).count()).toBe(1);
      await page.context().close();
    }
  });

  test("later, state and line move to today by the reader's own calendar, within the forecast", async () => {
    const before = await openOn("2026-05-16T18:00:00Z", LAKE);
    const asOf_days = await lineAt(before);
    await before.context().close();
    // Four in the morning of the 23rd in Greenwich is still the 22nd in Denver.
    const page = await openOn("2026-05-23T04:00:00Z", LAKE);
    const expected = likeliest(guide, "quern", "2026-05-22");
    expect(expected).not.toBe(likeliest(guide, "quern", "2026-05-16"));
    expect(await now(page)).toBe(expected);
    expect((await lineAt(page)) - asOf_days).toBeCloseTo(6, 1);
    expect(await page.locator(".strip text", { hasText: "today, Fri 22 May" }).count()).toBe(1);
    expect(await page.locator(".as-of").textContent()).toContain("Sat 16 May 2026, 6 days ago");
    expect(await page.locator(".phase:has(.now) h3").allInnerTexts()).toEqual([
      `${likeliestState(guide, "quern", "2026-05-22").name} now`,
    ]);
    expect(await page.locator(".old").count()).toBe(0);
    await page.context().close();
  });

  test("cautions follow the state: a lake that has warmed since warns of warm water", async () => {
    const [warm] = guide.cautions.filter(
      ({ when }) => when.includes("laterWeeks") && !when.includes("postTurnover"),
    );
    expect(warm).toBeDefined();
    const slug = guide.lakes.find(({ now: { state } }) => state === "postTurnover")?.slug ?? "";
    const before = await openOn("2026-05-16T18:00:00Z", `lakes/${slug}/index.html`);
    expect(await before.locator(".glance .cautions").textContent()).not.toContain(warm?.short);
    await before.context().close();
    const page = await openOn("2026-06-20T18:00:00Z", `lakes/${slug}/index.html`);
    expect(await now(page)).toBe(likeliest(guide, slug, "2026-06-20"));
    expect(await page.locator(".glance .cautions").textContent()).toContain(warm?.short);
    await page.context().close();
  });

  test("the board turns to the next days off: answer, box and every row’s chance, none where the road is shut", async () => {
    const page = await openOn("2026-05-19T18:00:00Z", "index.html");
    const weekend = guide.when.occasions.find(({ from, name }) => from === "2026-05-23" && name === null);
    const answer = page.locator(".answer:visible");
    expect(await answer.locator("h2").allInnerTexts()).toEqual(["The weekend, 23–24 May"]);
    expect(await answer.locator("a").allInnerTexts()).toEqual([
      weekend?.best?.name,
      weekend?.best?.fallback?.name,
      "Next",
      guide.when.occasions.find(({ from, name }) => from === "2026-05-30" && name === null)?.best?.name,
    ]);
    // Basin Days, 23 to 25 May, stand in the weekend's place.
    expect(await page.locator(".coming-days").textContent()).toBe("23–25 May");
    expect(await page.locator(".chart-columns .coming").getAttribute("data-last")).toBe("2026-05-25");
    const rows = await page.locator("[data-lake]").all();
    expect(rows).toHaveLength(guide.lakes.length);
    let shut = 0;
    for (const row of rows) {
      const slug = await row.getAttribute("data-lake");
      const { daily, access } = guide.lakes.find((one) => one.slug === slug) ?? { daily: [], access: null };
      const opens = access?.opens ?? null;
      const days = daily.filter(({ date }) => date >= "2026-05-23" && date <= "2026-05-25");
      const words = (await row.locator(".state").textContent())?.trim();
      if (opens !== null && opens > "2026-05-25") {
        shut++;
        expect(words).toMatch(/^road \d+ \w+$/);
        continue;
      }
      const good = days.reduce(
        (sum, day) => sum + (opens === null || opens <= day.date ? day.iceOff + day.postTurnover : 0) / 3,
        0,
      );
      expect([slug, words]).toEqual([
        slug,
        `${words?.split(" · ")[0]} · ${good > 0.99 ? ">99" : good < 0.01 ? "<1" : Math.round(100 * good)}`,
      ]);
    }
    expect(shut).toBeGreaterThan(0);
    await page.context().close();
  });

  test("from a week on the guide says how old it is and what to do", async () => {
    const page = await openOn("2026-05-28T18:00:00Z", "patterns/index.html");
    expect(await page.locator(".old").textContent()).toMatch(
      /^This guide is 12 days old\. .*Open it with a signal/,
    );
    await page.context().close();
  });

  test("past the forecast it claims nothing for today", async () => {
    const page = await openOn("2026-08-28T18:00:00Z", LAKE);
    expect(await page.locator(".old").textContent()).toContain("has ended and says nothing about today");
    expect(await page.locator(".glance dt").first().textContent()).toBe("On Sat 16 May");
    expect(await page.locator(".glance dd").first().textContent()).not.toMatch(/Go now|Leave it alone/);
    expect(await page.getByText("These days are past.").count()).toBe(1);
    await page.goto(on.onDisk("index.html"));
    expect(await page.locator(".answer:visible").count()).toBe(0);
    await page.context().close();
  });
});

describe.skipIf(!browserAtHand())("an example", () => {
  const on = openedWith(async () => buildSite(await demoGuide()));

  test("stands on its as-of day whatever day it is: one line says so, no notice of age, the season's first answer", async () => {
    const [context, faults] = await on.watched({ timezoneId: "America/Denver" });
    const page = await context.newPage();
    await page.clock.setFixedTime(new Date("2026-11-29T18:00:00Z"));
    await page.goto(on.onDisk("index.html"));
    expect(await page.locator(".as-of").textContent()).toBe(
      "Example. Club, lakes and reports are invented; the clock stands on Sat 16 May 2026.",
    );
    expect(await page.locator(".old, .notice").count()).toBe(0);
    expect(await page.locator(".answer:visible h2").textContent()).toBe("This weekend, 16–17 May");
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate("document.documentElement.scrollHeight")).toBeLessThan(1300);
    for (const slug of ["gannister", "chalkhen", "cairnlight"]) {
      await page.goto(on.onDisk(`lakes/${slug}/index.html`));
      expect(await page.evaluate("document.documentElement.scrollHeight")).toBeLessThan(3500);
    }
    await context.close();
    expect(faults).toEqual([]);
  });
});
