import { expect, test } from "vitest";
import { monthScale } from "../../build/draw/strip/month-scale.tsx";
import { day } from "../lake-fixture.ts";

test("each month begins at its share of the window's days, and the last name is left out where it would be cut", () => {
  // 16 April to 3 July are 15 + 31 + 30 + 3 = 79 days.
  const svg = monthScale({ from: day("2026-04-16"), to: day("2026-07-03") });
  const ticks = [...svg.matchAll(/<line x1="([\d.]+)%"/g)].map(([, x]) => Number(x));
  expect(ticks).toEqual([15, 46, 76].map((days) => Number(((100 * days) / 79).toFixed(2))));
  expect([...svg.matchAll(/>([A-Z][a-z]{2})</g)].map(([, name]) => name)).toEqual(["May", "Jun"]);
});
