import { describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import type { Club } from "../../build/model/club.ts";
import { QUANTITY_KINDS, type QuantityKindName, toBase, unitMeant } from "../../build/model/units.ts";
import { clubFolder, LAKE_YAML } from "./club-folder.ts";

/**
 * One of each unit in its kind's base unit, by definition.
 * Lengths and masses: international yard and pound agreement of 1959, 1 yd = 0.9144 m and 1 lb = 0.45359237 kg exactly;
 * 1 in = 1/36 yd, 1 mi = 1760 yd, 1 oz = 1/16 lb, 1 gr = 1/7000 lb. Acre: 4840 square yards.
 * Hectare 10 000 m2, minute, hour, day: SI Brochure, 9th edition, table 8. The rest are SI prefixes.
 */
const YARD_M = 0.9144;
/** The units library carries nine digits for acres and ounces. */
const LIBRARY_PRECISION = 1e-9;
const POUND_G = 453.59237;
const ONE_UNIT: { readonly [K in QuantityKindName]?: Readonly<Record<string, number>> } = {
  length: { m: 1, ft: 0.3048, in: 0.0254, cm: 0.01, mm: 0.001, yd: YARD_M },
  distance: { km: 1, mi: (1760 * YARD_M) / 1000, m: 0.001 },
  area: { ha: 1, acre: (4840 * YARD_M ** 2) / 10_000, km2: 100 },
  mass: { g: 1, mg: 0.001, oz: POUND_G / 16, gr: POUND_G / 7000 },
  density: { "kg/m3": 1, "g/cm3": 1000 },
  sinkRate: { "in/s": 0.0254, "cm/s": 0.01, "m/s": 1, "ft/s": 0.3048 },
  days: { days: 1, day: 1, d: 1, weeks: 7 },
  duration: { h: 1, min: 1 / 60 },
  seconds: { s: 1, min: 60 },
  oxygen: { "mg/L": 1 },
  angle: { deg: 1 },
};

const kinds = Object.keys(QUANTITY_KINDS) as QuantityKindName[];
const rows = kinds
  .filter((kind) => kind !== "temperature")
  .flatMap((kind) =>
    QUANTITY_KINDS[kind].allowed.map((unit) => ({ kind, unit, one: ONE_UNIT[kind]?.[unit] })),
  );

describe("every unit a club may write is converted by its definition", () => {
  test.each(rows)("1 $unit ($kind)", ({ kind, unit, one }) => {
    expect(one, `${unit} is not in the table of definitions`).toBeDefined();
    const definition = one ?? Number.NaN;
    for (const value of [1, 250])
      expect(Math.abs(toBase(value, unit, kind) / (value * definition) - 1)).toBeLessThan(LIBRARY_PRECISION);
  });

  test("feet and inches are exact", () => {
    expect(toBase(1, "ft", "length")).toBe(0.3048);
    expect(toBase(1, "in", "length")).toBe(0.0254);
  });

  // Fahrenheit scale: 32 degF is 0 degC and 212 degF is 100 degC; -40 is the same on both (linear).
  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [50, 10],
  ])("%d degF is %d degC", (fahrenheit, celsius) => {
    expect(toBase(fahrenheit, "degF", "temperature")).toBeCloseTo(celsius, 9);
    expect(toBase(celsius, "degC", "temperature")).toBe(celsius);
  });

  test("whole units stay whole: two weeks are 14 days", () => {
    expect(toBase(2, "weeks", "days")).toBe(14);
    expect(toBase(3, "weeks", "days")).toBe(21);
  });
});

describe("a unit written another way is recognised", () => {
  test.each<[string, QuantityKindName, string | undefined]>([
    ["feet", "length", "ft"],
    ["foot", "length", "ft"],
    ["FT", "length", "ft"],
    ["inches", "length", "in"],
    ["meters", "length", "m"],
    ["metres", "length", "m"],
    ["acres", "area", "acre"],
    ["hectares", "area", "ha"],
    ["°F", "temperature", "degF"],
    ["F", "temperature", "degF"],
    ["° C", "temperature", "degC"],
    ["grams", "mass", "g"],
    ["ounces", "mass", "oz"],
    ["grains", "mass", "gr"],
    ["hours", "duration", "h"],
    ["mg/l", "oxygen", "mg/L"],
    ["fathoms", "length", undefined],
    ["degC", "length", undefined],
    ["", "length", undefined],
    ["m m", "length", undefined],
  ])("“%s” as a %s is %s", (written, kind, meant) => {
    expect(unitMeant(written, kind)).toBe(meant);
  });
});

describe("a quantity in a file arrives in SI units", () => {
  const lakeWith = async (line: string): Promise<Club["lakes"][number] | undefined> =>
    (await loadClub(await clubFolder({ "lakes/ember.yaml": `${LAKE_YAML}${line}\n` }))).club?.lakes[0];

  // 1 ft = 0.3048 m exactly.
  test.each([
    ["elevation: 1000 ft", 304.8],
    ["elevation: 1000ft", 304.8],
    ['elevation: " 1000  ft "', 304.8],
    ["elevation: 2580 m", 2580],
    ["elevation: -430 m", -430],
    ["elevation: +12.5 m", 12.5],
  ])("%s", async (line, metres) => {
    expect((await lakeWith(line))?.elevation_m).toBeCloseTo(metres, 9);
  });

  test.each([
    "elevation: 1000",
    "elevation: 1e3 m",
    "elevation: Infinity m",
    "elevation: 0x10 m",
    "elevation: m",
    "elevation: 1 m 2",
  ])("%s is refused", async (line) => {
    expect(await lakeWith(line)).toBeUndefined();
  });
});
