import { afterAll, beforeAll, expect, test } from "vitest";
import { day, fullLake } from "../lake-fixture.ts";
import { type BuiltSite, buildSite, pageOf } from "./built-site.ts";
import { siteGuide } from "./site-fixture.ts";

let site: BuiltSite;
beforeAll(async () => {
  const guide = siteGuide();
  const ember = fullLake("ember", "Ember Lake", day("2026-05-12"), guide.asOf);
  const [plan] = ember.plan;
  if (plan === undefined) throw new Error("the lake has no plan");
  const warm = {
    ...ember,
    heat: [{ date: day("2026-07-04"), takeCare: 0.37, stop: 0.08 }],
    plan: [
      ...ember.plan.filter(({ phase }) => phase !== "later-weeks"),
      { ...plan, phase: "later-weeks" as const },
    ],
  };
  site = await buildSite(
    { ...guide, lakes: guide.lakes.map((lake) => (lake.slug === "ember" ? warm : lake)) },
    "ember",
  );
});
afterAll(() => site.remove());

test("a lake's page says how likely water too warm for trout is, and its later weeks name the limits", () => {
  const html = pageOf(site, "lakes/ember/launch/index.html");
  // the lake lies at 2,580 m
  expect(html).toContain(
    "Take care at 64 °F and over: at least 1 in 10 from 4 Jul; highest on 4 Jul, at least 37 %.",
  );
  expect(html).toContain("Stop at 68 °F and over: highest on 4 Jul, at least 8 %.");
  const lake = pageOf(site, "lakes/ember/index.html");
  const later = lake.slice(lake.indexOf('id="fish-later-weeks"'));
  expect(later).toContain("Take care at 64 °F and over; stop at 68 °F and over.");
  expect(lake).toContain("cards/ember-launch.pdf");
});
