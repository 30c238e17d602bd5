import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cardSearch, layoutSearchBack, layoutSearchFront } from "../../build/cards/lake/search-card.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { searchOfPhase } from "../../build/guide/search.ts";
import { elapsedText } from "../../build/model/units.ts";
import { fullLake, guideOf } from "../lake-fixture.ts";
import { ISO_216_MM } from "../reference/paper.ts";
import { AS_OF, ruler } from "./card-fixture.ts";
import { faults, written } from "./legibility.ts";

type Search = GuideLake["search"][number];

const PLACES = ["Drop-off", "Weed edge", "Mid basin"];
const FLIES = ["Cinder Pupa", "Ash Leech", "Marl Scud"];
const METHOD = "indicator still" as const;

/** A search of places, depths and flies with these chances, the cells of a place together. Invented. */
function searchOf(chances: readonly (readonly number[])[], phase: Search["phase"] = "post-turnover"): Search {
  const places = chances.map((cells, p) => ({
    name: PLACES[p] ?? `Place ${p}`,
    cells: cells.map((chance, c) => ({
      chance,
      depth_m: 1.5 + c,
      pattern: "fly",
      name: FLIES[c % FLIES.length] ?? "",
      method: METHOD,
    })),
  }));
  return searchOfPhase(phase, places);
}

const lake: GuideLake = { ...fullLake("ember", "Ember Lake", "2026-05-12" as typeof AS_OF, AS_OF) };

function cardOf(search: Search, ofLake = lake) {
  const guide = guideOf([ofLake], AS_OF);
  const sides = [layoutSearchFront, layoutSearchBack].map((layout) => layout(guide, ofLake, search, ruler));
  return {
    words: sides.map(({ face }) => written(face).replaceAll("\u00a0", " ")),
    misfits: sides.flatMap(({ misfits }) => misfits),
    faults: sides.flatMap(({ face }) => faults(face, ISO_216_MM.A6)),
  };
}

const WORKED = searchOf([
  [0.24, 0.16, 0.1],
  [0.1, 0.07],
  [0.06, 0.04],
]);

describe("the search card", () => {
  test("holds any plan of up to three places and four depths, legible and clear of other lettering", () => {
    const cells = fc.array(fc.double({ min: 0.02, max: 0.3, noNaN: true }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(cells, { minLength: 1, maxLength: 3 }), (chances) => {
        const card = cardOf(searchOf(chances));
        expect([card.misfits, card.faults]).toEqual([[], []]);
      }),
      { numRuns: 20 },
    );
  });

  test("names every turn with its depth, its fly and the time to leave it", () => {
    const [front = "", back = ""] = cardOf(WORKED).words;
    for (const { rods, steps } of WORKED.byRods)
      for (const { name, until_min } of steps)
        for (const word of [name, `until ${elapsedText(until_min)}`])
          expect(rods === 2 ? front : back, `${rods} rods: ${word}`).toContain(word);
  });

  test("says to stay at a take and copy the rod, and that local rules come first; prints no chance", () => {
    const { words } = cardOf(WORKED);
    for (const side of words) {
      expect(side).toContain("A take: stay, and copy that rod.");
      expect(side).not.toContain("%");
    }
    expect(words.join(" ")).toContain("Local rules and licensed instruction come first.");
  });
});

test("the card is of the phase at hand, else of the best weeks", () => {
  const [best, turnover] = [searchOf([[0.2]]), searchOf([[0.2]], "turnover")];
  expect(cardSearch({ ...lake, search: [] })).toBeUndefined();
  expect(cardSearch({ ...lake, search: [turnover] })).toBe(turnover);
  expect(cardSearch({ ...lake, search: [turnover, best] })).toBe(best);
});
