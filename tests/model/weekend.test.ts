import { expect, test } from "vitest";
import { isSaturday, weekendFrom } from "../../build/model/calendar.ts";
import { day } from "../lake-fixture.ts";

// ISO 8601 gives 1 January 2000 as a Saturday; 16 May 2026 is 9,632 days, 1,376 whole weeks, later.
test("16 May 2026 is a Saturday, its neighbours are not", () => {
  expect(["2026-05-15", "2026-05-16", "2026-05-17"].map((text) => isSaturday(day(text)))).toEqual([
    false,
    true,
    false,
  ]);
});

test.each([
  ["2026-05-11", ["2026-05-16", "2026-05-17"]],
  ["2026-05-16", ["2026-05-16", "2026-05-17"]],
  ["2026-05-17", ["2026-05-17"]],
  ["2026-05-18", ["2026-05-23", "2026-05-24"]],
  ["2026-02-28", ["2026-02-28", "2026-03-01"]],
])("the weekend from %s on", (from, days) => {
  expect(weekendFrom(day(from))).toEqual(days);
});
