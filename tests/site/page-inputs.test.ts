import { expect, test } from "vitest";
import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { openInputHash } from "../../build/incremental/input-hash.ts";
import { loadTemplates, sitePages } from "../../build/site/pages.ts";
import { day, fullLake, guideOf } from "../lake-fixture.ts";

const AS_OF = day("2026-05-16");
const ember = fullLake("ember", "Ember Lake", day("2026-05-12"), AS_OF);
const high = fullLake("high", "High Lake", day("2026-06-01"), AS_OF);

const templates = await loadTemplates();

/** The pages that are made of something else than before. */
function redrawn(before: Guide, after: Guide): string[] {
  const digest = openInputHash();
  const made = new Map(
    sitePages(templates, before).map(({ address, inputs }) => [address, digest("page", inputs)]),
  );
  return sitePages(templates, after)
    .filter(({ address, inputs }) => made.get(address) !== digest("page", inputs))
    .map(({ address }) => address);
}

const withEmber = (change: Partial<GuideLake>): Guide => guideOf([{ ...ember, ...change }, high], AS_OF);
const before = withEmber({});

test("a guide composed again of the same is the same", () => {
  expect(redrawn(before, structuredClone(before))).toEqual([]);
});

test("a lake's note is on its own pages alone", () => {
  expect(redrawn(before, withEmber({ notes: "<p>Mind the reeds.</p>" }))).toEqual([
    "lakes/ember/index.html",
    "lakes/ember/launch/index.html",
    "lakes/ember/place/index.html",
  ]);
});

test("a lake's name is on the board and in search as well", () => {
  expect(redrawn(before, withEmber({ name: "Ember Tarn" }))).toEqual([
    "index.html",
    "lakes/ember/index.html",
    "lakes/ember/launch/index.html",
    "lakes/ember/place/index.html",
    "search/index.html",
  ]);
});

test("the as-of date is on every page", () => {
  const all = sitePages(templates, before).map(({ address }) => address);
  expect(redrawn(before, { ...before, asOf: day("2026-05-17") })).toEqual(all);
});
