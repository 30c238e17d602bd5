import { describe, expect, test } from "vitest";
import { METHODS } from "../../build/model/club.ts";
import { usualRigs } from "../../build/rigs/lake-rigs.ts";
import { box } from "./box-fixture.ts";

describe("every way a pattern may be fished has its rig", () => {
  const rigs = usualRigs(box, "imperial");
  test("each once, in the club's order", () => expect(rigs.map(({ rig }) => rig.way)).toEqual([...METHODS]));

  test.each(rigs.map((usual) => [usual.rig.way, usual] as const))(
    "%s: how deep, on what line, and how to know that it is right",
    (_, { rig, band }) => {
      expect(rig.check).toMatch(/\w.*[.]$/);
      expect(rig.line).not.toBeNull();
      const { from_m, to_m } = rig.fly ?? { from_m: Number.NaN, to_m: Number.NaN };
      expect(from_m).toBeGreaterThan(0);
      expect(to_m).toBeGreaterThanOrEqual(from_m);
      expect(to_m).toBeLessThan(band.to_m);
    },
  );

  test("a leader off a floating line reaches no deeper than it is long", () => {
    const short = {
      ...box,
      leaders: box.leaders.slice(0, 1).map((one) => ({
        ...one,
        taper: { length_m: 0.9, size: 3 },
        middle: { length_m: 0, size: 4 },
        tippet: { length_m: 0.3, size: 5 },
      })),
    };
    const floating = usualRigs(short, "imperial").find(({ rig }) => rig.way === "floating line");
    expect(floating?.rig.fly?.to_m).toBeLessThan(1.2);
    expect(floating?.rig.fly?.to_m).toBeGreaterThan(1.1);
  });
});
