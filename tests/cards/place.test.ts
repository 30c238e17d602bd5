import { describe, expect, test } from "vitest";
import { fetchText, lightText } from "../../build/cards/card-words.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { day, guideOf } from "../lake-fixture.ts";
import { mappedLake } from "../mapped-lake.ts";
import { AS_OF, ember, kettle, layoutOf } from "./card-fixture.ts";
import { written } from "./legibility.ts";

const { lake: full } = mappedLake(-106.3);
describe("a full back", () => {
  const back = written(layoutOf(full).back);

  test("at least four cautions stay", () => {
    const said = guideOf([full], AS_OF).cautions.filter(({ short }) => back.includes(short));
    expect(said.length).toBeGreaterThanOrEqual(4);
    expect(layoutOf(full).problems).toEqual([]);
  });

  test("says how far the wind can blow over the water", () => {
    expect(back.replaceAll("\u00a0", " ")).toContain(
      "Longest fetch 2 mi, WSW–ENE: waves to 1.5–2 ft at force 5.",
    );
  });
});

test("a lake without a shape says nothing of map or fetch", () => {
  expect(written(layoutOf(kettle).back)).not.toMatch(/Map|fetch/);
  expect(fetchText(kettle, "metric")).toBeNull();
});

describe("the day's light", () => {
  const plain = (text: string | null) => text?.replaceAll("\u00a0", " ");
  const date = day("2026-06-21");
  const lit = (change: Partial<GuideLake["place"]["light"][number]>): GuideLake => {
    const light = {
      date,
      firstLight: "2026-06-21T02:10+01:00",
      sunrise: "2026-06-21T04:03+01:00",
      sunset: "2026-06-22T00:04+01:00",
      lastLight: "2026-06-22T01:50+01:00",
      sun: "day and night" as const,
      words: null,
      moon: { phase: "first quarter" as const, lit: 0.5 },
    };
    return { ...ember, place: { ...ember.place, light: [{ ...light, ...change }] } };
  };

  test("stands on the front with its date", () => {
    expect(written(layoutOf(ember).front)).toMatch(
      /16.May first.light.\d\d:\d\d, sunrise.\d\d:\d\d, sunset.\d\d:\d\d, last.light.\d\d:\d\d\./,
    );
  });

  test("is told by the clock of the place; what does not happen is left out, and why is said", () => {
    expect(plain(lightText(lit({}), date))).toBe(
      "first light 02:10, sunrise 04:03, sunset 00:04, last light 01:50.",
    );
    const bright = lit({
      firstLight: null,
      lastLight: null,
      sun: "no night",
      words: "It does not get dark.",
    });
    expect(plain(lightText(bright, date))).toBe("sunrise 04:03, sunset 00:04. It does not get dark.");
    expect(lightText(lit({}), AS_OF)).toBeNull();
  });

  test("never makes a front too long that would fit without it", () => {
    const seen = new Set<string>();
    for (let lines = 0; lines <= 8; lines++) {
      const leader = Array(1 + lines * 5)
        .fill("Board")
        .join(" ");
      const plan = ember.plan.map((phase, i) =>
        i > 0 ? phase : { ...phase, rigs: phase.rigs.map((rig) => ({ ...rig, leader })) },
      );
      const lake = { ...ember, plan };
      const { front, problems } = layoutOf(lake);
      const dark = layoutOf({ ...lake, place: { ...lake.place, light: [] } });
      expect([lines, problems]).toEqual([lines, dark.problems]);
      if (problems.length > 0) seen.add("too long");
      else seen.add(written(front).includes("sunset") ? "with light" : "without");
    }
    expect(seen).toEqual(new Set(["with light", "without", "too long"]));
  });
});
