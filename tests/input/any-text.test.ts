import fc from "fast-check";
import { expect, test } from "vitest";
import { readLake } from "../../build/input/lake-file.ts";
import type { Diagnostic } from "../../build/model/diagnostic.ts";

const GOOD = `name: Ember Lake
position: { lat: 41.312, lon: -106.291 }
depth: { max: 29 ft, mean: "12 ft" }
hazards: [mud, 'wind']
iceOff:
  - { season: 2024, on: 2024-05-09 }
  - season: 2025
    by: 2025-05-01
notes: |
  One.
`;

/** Pieces that mean something in YAML or to us. */
const piece = fc.constantFrom(
  ..."\n|\t|  |: |:|- |-|{|}|[|]|,|\"|'|#|&a |*a|!x |%|@|`|? |>|---\n|...\n|~|null|.nan|0x1f|1e999|__proto__|constructor|<<: |\\|\u0000|\ufeff|\ud800|湖|season".split(
    "|",
  ),
  "|",
);

/** A good file with a few pieces cut out or put in. */
const damaged = fc
  .array(fc.tuple(fc.nat(GOOD.length), fc.nat(6), fc.oneof(piece, fc.string({ maxLength: 4 }))), {
    minLength: 1,
    maxLength: 5,
  })
  .map((edits) =>
    edits.reduce((text, [at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut), GOOD),
  );

test("whatever stands in a file, it is read or refused, at a place that is in it", () => {
  fc.assert(
    fc.property(damaged, (text) => {
      const problems: Diagnostic[] = [];
      readLake({ file: "lakes/ember.yaml", slug: "ember", text }, problems);
      const lines = text.split(/\r\n|\n|\r/);
      for (const { line, column, message, hint } of problems) {
        expect(line).toBeGreaterThanOrEqual(1);
        expect(line).toBeLessThanOrEqual(lines.length);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1);
        expect(`${message}${hint}`).not.toMatch(/[\n\r]|undefined|\[object|Invalid input/);
      }
    }),
    { numRuns: 2000 },
  );
});
