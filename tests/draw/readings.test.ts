import { expect, test } from "vitest";
import type { Drawing } from "../../build/draw/drawing.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { readings } from "../../build/draw/readings.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { day } from "../lake-fixture.ts";
import { unshaped } from "./drawn-lakes.ts";
import { lettering, letteringFaults } from "./lettering-boxes.ts";

const OPTIONS = { ink: paperInk, units: "metric", season: 2026, width: 170 } as const;

const read = (
  date: string,
  water_C: number | null,
  clarity_m: number | null,
): GuideLake["reports"][number] => ({
  date: day(date),
  seen: [],
  water_C,
  clarity_m,
  deep: null,
  looks: null,
  oxygen_mgL: null,
  rodHours: null,
  catches: [],
  samples: [],
  notes: null,
});
const lakeWith = (...reports: GuideLake["reports"]): GuideLake => ({ ...unshaped, reports });

test("fewer than two readings of this season are no series", () => {
  expect(readings(lakeWith(), OPTIONS)).toBeNull();
  expect(readings(lakeWith(read("2026-05-01", 5, 3)), OPTIONS)).toBeNull();
  expect(readings(lakeWith(read("2025-05-01", 4, 2), read("2026-05-01", 5, 3)), OPTIONS)).toBeNull();
  expect(readings(lakeWith(read("2026-05-01", 5, null), read("2026-05-08", null, 3)), OPTIONS)).toBeNull();
});

const WARMING = lakeWith(
  read("2026-05-21", 12, null),
  read("2026-05-01", 4, null),
  read("2026-05-11", 8, null),
);

function drawn(lake: GuideLake): Drawing {
  const drawing = readings(lake, OPTIONS);
  if (drawing === null) throw new Error("too few readings");
  return drawing;
}

test("a reading stands at its day and, the warmer, the higher", () => {
  const dots = [...renderSvg(drawn(WARMING)).matchAll(/cx="([\d.]+)" cy="([\d.]+)"/g)].map((match) =>
    match.slice(1).map(Number),
  );
  const [[x0 = 0, y0 = 0] = [], [x1 = 0, y1 = 0] = [], [x2 = 0, y2 = 0] = []] = dots;
  expect(dots).toHaveLength(3);
  // Ten days and ten days; four degrees and four degrees.
  expect(x1 - x0).toBeCloseTo(x2 - x1, 0);
  expect(x1).toBeGreaterThan(x0);
  expect(y0 - y1).toBeCloseTo(y1 - y2, 0);
  expect(y1).toBeLessThan(y0);
});

test("first and last reading are told in numbers and in words", () => {
  const texts = lettering(drawn(WARMING));
  expect(texts).toEqual(expect.arrayContaining(["4 °C", "12 °C", "1–21 May"]));
  expect(drawn(WARMING).title).toBe("Readings of 2026. Water 4 °C on 1 May, 12 °C on 21 May.");
});

test("many readings leave out numbers rather than set one over another", () => {
  const days = Array.from({ length: 25 }, (_, i) =>
    read(`2026-05-${String(i + 1).padStart(2, "0")}`, 4 + (i % 7) * 1.5, 2 + (i % 3)),
  );
  const many = drawn(lakeWith(...days, read("2026-05-26", 13.3, 3.3)));
  expect(letteringFaults(many)).toEqual([]);
  expect(lettering(many)).toEqual(expect.arrayContaining(["13.3 °C"]));
});
