import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addDays,
  type CalendarDate,
  dateOfSeasonDay,
  dayRange,
  daysBetween,
  daysFromTo,
  parseCalendarDate,
  seasonDay,
  seasonOf,
  weekdayDayMonth,
} from "../../build/model/calendar.ts";

const date = (text: string): CalendarDate => {
  const parsed = parseCalendarDate(text);
  if (parsed === undefined) throw new Error(`${text} is no day`);
  return parsed;
};

describe("only days that the calendar has", () => {
  test.each(["2026-02-30", "2025-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-04-31"])(
    "%s is none",
    (text) => {
      expect(parseCalendarDate(text)).toBeUndefined();
    },
  );
  // Gregorian rule: leap years are divisible by 4, not by 100 unless by 400.
  test.each(["2024-02-29", "2000-02-29", "2026-12-31"])("%s is one", (text) => {
    expect(parseCalendarDate(text)).toBe(text);
  });
  test.each(["2026-5-1", "16 May 2026", "20260516", "2026-05-16T00:00", " 2026-05-16"])(
    "“%s” is another form",
    (text) => {
      expect(parseCalendarDate(text)).toBeUndefined();
    },
  );
});

// Day-of-year tables: 1 May is day 121 of a common year and 122 of a leap year (any almanac).
test("day of season counts from 1 January in the north", () => {
  expect(seasonDay(date("2026-01-01"), 2026, "north")).toBe(1);
  expect(seasonDay(date("2026-05-01"), 2026, "north")).toBe(121);
  expect(seasonDay(date("2024-05-01"), 2024, "north")).toBe(122);
});

test("day of season counts from 1 July in the south, across the new year", () => {
  expect(seasonDay(date("2026-07-01"), 2026, "south")).toBe(1);
  expect(seasonDay(date("2027-01-01"), 2026, "south")).toBe(185);
  expect(seasonOf(date("2027-01-01"), "south")).toBe(2026);
  expect(seasonOf(date("2026-07-01"), "south")).toBe(2026);
  expect(seasonOf(date("2026-06-30"), "south")).toBe(2025);
});

test("day of season and its date are inverse", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1850, max: 2100 }),
      fc.integer({ min: -30, max: 400 }),
      fc.constantFrom("north" as const, "south" as const),
      (season, day, hemisphere) => {
        expect(seasonDay(dateOfSeasonDay(day, season, hemisphere), season, hemisphere)).toBe(day);
      },
    ),
  );
});

// JavaScript's own UTC calendar is the independent reader here.
test("adding days agrees with the platform's calendar", () => {
  fc.assert(
    fc.property(fc.integer({ min: -2000, max: 2000 }), (days) => {
      const platform = new Date(Date.UTC(2024, 1, 29) + days * 86_400_000).toISOString().slice(0, 10);
      expect(addDays(date("2024-02-29"), days)).toBe(platform);
      expect(daysBetween(date("2024-02-29"), date(platform))).toBe(days);
    }),
  );
});

test("days are written the same everywhere", () => {
  expect(weekdayDayMonth(date("2026-05-16"))).toBe("Sat 16 May");
  expect(dayRange(date("2026-05-14"), date("2026-05-21"))).toBe("14–21 May");
  expect(dayRange(date("2026-05-28"), date("2026-06-03"))).toBe("28 May – 3 Jun");
  expect(dayRange(date("2026-05-16"), date("2026-05-16"))).toBe("16 May");
  expect(daysFromTo(date("2026-02-27"), date("2026-03-01"))).toEqual([
    "2026-02-27",
    "2026-02-28",
    "2026-03-01",
  ]);
});
