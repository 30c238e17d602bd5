import { describe, expect, test } from "vitest";
import { fetchText, lightText } from "../../build/cards/card-words.ts";
import type { Part, Piece } from "../../build/cards/face.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { day } from "../lake-fixture.ts";
import { mappedLake } from "../mapped-lake.ts";
import { ISO_216_MM, POINT_MM } from "../reference/paper.ts";
import { AS_OF, cardsOf, ember, kettle, layoutOf } from "./card-fixture.ts";
import { faults, textsOf, written } from "./legibility.ts";

const { lake: full, guide, map } = mappedLake(-106.3);
/** The same with little to say, few cautions and no marks to explain: there is room for the map. */
const few = { cautions: guide.cautions.slice(1, 3) };
const sparse: GuideLake = {
  ...full,
  region: null,
  summary: null,
  access: null,
  hazards: [],
  rules: null,
  place: { ...full.place, map: { ...map, marks: [] } },
};

type Drawing = Extract<Piece, { kind: "svg" }>;
const isMap = ({ role, alt }: Part): boolean => role === "Figure" && alt?.startsWith("Map of") === true;
const mapOf = ({ back }: ReturnType<typeof layoutOf>): Drawing | undefined =>
  back.parts
    .filter(isMap)
    .flatMap(({ pieces }) => pieces)
    .find((piece): piece is Drawing => piece.kind === "svg");
const cautionsOn = (lake: GuideLake): number =>
  (layoutOf(lake).back.parts.find(({ role }) => role === "L")?.parts.length ?? 0) - lake.hazards.length;

describe("a back with room to spare", () => {
  const layout = layoutOf(sparse, few);
  const { back, problems } = layout;
  const drawn = mapOf(layout);

  test("holds the map, at least 25 mm high, within the card's margin of 3 mm and clear of all lettering", () => {
    if (drawn === undefined) throw new Error("there is no map");
    const [width, height] = ISO_216_MM.A6;
    const [left, top] = [drawn.x_pt * POINT_MM, drawn.y_pt * POINT_MM];
    const [right, bottom] = [left + drawn.width_pt * POINT_MM, top + drawn.height_pt * POINT_MM];
    expect(bottom - top).toBeGreaterThanOrEqual(25);
    expect(left).toBeGreaterThanOrEqual(3);
    expect(right).toBeLessThanOrEqual(width - 3);
    expect(bottom).toBeLessThanOrEqual(height - 3);
    const within = textsOf(back).filter(
      ({ y_pt, style }) =>
        y_pt > drawn.y_pt + 0.01 && y_pt - style.size_pt * 0.8 < drawn.y_pt + drawn.height_pt - 0.01,
    );
    expect(within.map(({ text }) => text)).toEqual([]);
    expect(faults(back)).toEqual([]);
    expect(problems).toEqual([]);
  });

  test("the map is in the proportion it was drawn in: its lettering keeps its size", () => {
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(drawn?.svg ?? "") ?? [];
    expect([drawn?.width_pt, drawn?.height_pt]).toEqual([Number(width), Number(height)]);
  });

  test("does not send the reader elsewhere for it", () => {
    expect(written(back)).not.toContain("Map: see the page.");
  });

  test("is inked twice to the same bytes", async () => {
    const ink = async () =>
      (await cardsOf({ ...guide, ...few, lakes: [sparse] }, sparse.slug)).files.get("ember.pdf");
    const once = await ink();
    expect(once?.length).toBeGreaterThan(0);
    expect(once?.equals((await ink()) ?? Buffer.alloc(0))).toBe(true);
  });
});

describe("a full back", () => {
  const back = written(layoutOf(full).back);

  test("leaves the map to the page and says so; at least four cautions stay", () => {
    expect(mapOf(layoutOf(full))).toBeUndefined();
    expect(back).toContain("Map: see the page.");
    expect(cautionsOn(full)).toBeGreaterThanOrEqual(4);
    expect(layoutOf(full).problems).toEqual([]);
  });

  test("says how far the wind can blow over the water", () => {
    expect(back.replaceAll("\u00a0", " ")).toContain(
      "Longest fetch 2 mi, WSW–ENE: waves to 1.5–2 ft at force 5.",
    );
  });
});

test("a lake without a shape says nothing of map or fetch", () => {
  expect(written(layoutOf(kettle).back)).not.toMatch(/Map:|fetch/);
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
