import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import { elsewhereThan } from "../../build/guide/elsewhere.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { addDays } from "../../build/model/calendar.ts";
import { DAY_STATES, PHASES, phaseName } from "../../build/model/phase.ts";
import { Glance } from "../../templates/_includes/lake/glance.tsx";
import { pageContextAt, pageGuide } from "../../templates/_includes/page-context.ts";
import { siteGuide } from "./site-fixture.ts";

const guide = siteGuide();
const sheet = pageContextAt(pageGuide(guide), "lakes/ember/index.html");

const seen = (html: string): string =>
  html
    .replace(/<[^>]*>/g, " ")
    .replaceAll(/&nbsp;|\u00a0/g, " ")
    .replace(/\s+/g, " ");

/** The head of a lake's page for every lake, state, next phase and road. */
const heads = guide.lakes.flatMap((lake) =>
  DAY_STATES.flatMap((state) =>
    [null, ...lake.phases].flatMap((next) =>
      [null, addDays(guide.asOf, -3), addDays(guide.asOf, 20)].flatMap((opens) =>
        [0.4, 0.999].map((chance) => {
          const made: GuideLake = {
            ...lake,
            now: { state, chance },
            next,
            access: { text: "Gated.", opens, travel_h: null },
          };
          const elsewhere = elsewhereThan(lake.slug, guide.when.occasions);
          const html = renderToString(<Glance lake={made} elsewhere={elsewhere} sheet={sheet} />);
          return { lake: made, html, words: seen(html) };
        }),
      ),
    ),
  ),
);

describe("the head of a lake's page, in hundreds of made-up states", () => {
  test("says no depth before its phase is named", () => {
    expect(heads.length).toBeGreaterThan(300);
    let depths = 0;
    for (const { words } of heads)
      for (const { index } of words.matchAll(/\bset [\d.]+[–-]?[\d.]* ?(ft|m)\b/g)) {
        depths++;
        const before = words.slice(Math.max(0, index - 40), index);
        expect(PHASES.some((phase) => before.includes(`${phaseName(phase)}, `))).toBe(true);
      }
    expect(depths).toBeGreaterThan(50);
  });

  test("sends nobody away without a lake by name", () => {
    let sent = 0;
    for (const { lake, html, words } of heads) {
      if (!/Not yet|Leave it alone|Stay off the ice/.test(words)) continue;
      sent++;
      const others = guide.lakes.filter(
        ({ slug }) => slug !== lake.slug && html.includes(`href="../../lakes/${slug}/index.html"`),
      );
      expect([lake.slug, words.includes("Elsewhere"), others.length > 0]).toEqual([lake.slug, true, true]);
    }
    expect(sent).toBeGreaterThan(100);
  });

  test("says go to no lake whose road is shut", () => {
    for (const { lake, words } of heads)
      if ((lake.access?.opens ?? "") > guide.asOf) expect(words).not.toMatch(/\bGo[: ]/);
  });
});
