import fc from "fast-check";
import { expect, test } from "vitest";
import { clubs } from "./cases.ts";
import { runCase } from "./one-case.ts";

/** The same every time; `npm run fuzz` looks at other clubs. */
const SEED = 20260516;

test("no club folder breaks the program, its pages or its feeds, or leaves its folder", async () => {
  const ends = { refused: 0, guide: 0 };
  await fc.assert(
    fc.asyncProperty(clubs(false), async (club) => {
      const { end, faults } = await runCase(club);
      ends[end]++;
      expect(faults).toEqual([]);
    }),
    { numRuns: 200, seed: SEED },
  );
  // A fuzzer whose every club is refused looks at no page.
  expect(ends.guide).toBeGreaterThan(20);
}, 900_000);
