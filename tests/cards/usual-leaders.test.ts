import { expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { clubFolder } from "../input/club-folder.ts";
import { cardsOf } from "./card-fixture.ts";

/** A club with a deep band in its best weeks, that writes no leaders of its own. */
const clubIn = (units: string, band: string): Promise<string> =>
  clubFolder({
    "club.yaml": `name: Test Club\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Denver\nunits: ${units}\n`,
    "lakes/ember.yaml": `name: Ember Lake\nposition: { lat: 41.312, lon: -106.291 }\nelevation: 2580 m\niceOff: [{ season: 2025, on: 2025-05-09 }]\ndepthBands:\n  best-weeks: ${band}\n`,
    "patterns/scud.yaml":
      "name: Pale Scud\nimitates: scud\nsizes: [12]\nphases: [best-weeks]\nways: [indicator still]\n",
  });

test.each([
  ["metric", "{ from: 4 m, to: 7 m }", 4, 7],
  ["imperial", "{ from: 12 ft, to: 24 ft }", 3.6576, 7.3152],
])(
  "a club without leaders (%s) fishes %s: every card is made, the labels too",
  async (units, band, from_m, to_m) => {
    const { club, problems } = await loadClub(await clubIn(units, band));
    expect(problems).toEqual([]);
    if (club === undefined) throw new Error("no club");
    const { guide } = composeGuide(club, await loadContent(), { version: "0.0.0" });
    if (guide === undefined) throw new Error("no guide");
    const fished = guide.lakes[0]?.plan.map(({ band }) => band) ?? [];
    expect(fished).toContainEqual(expect.objectContaining({ from_m, to_m }));
    const cards = await cardsOf(guide);
    expect(cards.problems).toEqual([]);
    for (const name of ["labels-a4.pdf", "labels-letter.pdf", "ember.pdf", "plumb-a6.pdf"])
      expect([...cards.files.keys()]).toContain(name);
  },
);
