import { describe, expect, test } from "vitest";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import { lightOn } from "../../build/water/light.ts";
import type { Light } from "../../build/water/water-schema.ts";
import {
  MOON_USNO,
  NO_NIGHT_FROM_DEG,
  NO_SUNSET_FROM_DEG,
  SUN_ASTROPY,
  SUN_NREL,
  SUN_TWILIGHT,
  SUN_USNO,
  type SunRow,
} from "../reference/sun-times.ts";

const light = (date: string, lat: number, lon: number, timezone: string): Light => {
  const day = parseCalendarDate(date);
  if (day === undefined) throw new Error(date);
  return lightOn(day, { lat, lon }, timezone);
};

const SOURCES: readonly (readonly [string, readonly SunRow[]])[] = [
  ["astropy and PyEphem", SUN_ASTROPY],
  ["US Naval Observatory", SUN_USNO],
  ["twilight table", SUN_TWILIGHT],
  ["NREL SPA", SUN_NREL],
];

describe.each(SOURCES)("%s", (_, rows) => {
  test.each(rows)("$event on $date at $lat, $lon ($timezone)", ({ event, lat, lon, timezone, date, utc }) => {
    const written = light(date, lat, lon, timezone)[event];
    if (utc === null) {
      expect(written).toBeNull();
      return;
    }
    expect(written).not.toBeNull();
    expect(Math.abs(Date.parse(written ?? "") - Date.parse(utc))).toBeLessThanOrEqual(60_000);
  });
});

describe("local time", () => {
  test("the offset changes with the clocks: 9 March 2025 in Vancouver is already on summer time", () => {
    const { sunset } = light("2025-03-09", 50.7, -120.3, "America/Vancouver");
    expect(sunset).toBe("2025-03-09T18:57-07:00");
    expect(light("2025-03-08", 50.7, -120.3, "America/Vancouver").sunset).toMatch(/T17:\d\d-08:00$/);
  });

  test("a sunset past midnight belongs to the evening before", () => {
    const { sunrise, sunset, sun } = light("2025-06-21", 64.8, -147.7, "America/Anchorage");
    expect(sunrise).toMatch(/^2025-06-21T02:5\d-08:00$/);
    expect(sunset).toMatch(/^2025-06-22T00:4\d-08:00$/);
    expect(sun).toBe("no night");
  });
});

describe("days without night, sunset or sunrise", () => {
  const solstice = (lat: number): Light => light("2025-06-21", lat, 25, "Europe/Helsinki");

  test.each([
    [NO_NIGHT_FROM_DEG - 0.1, "day and night", null],
    [NO_NIGHT_FROM_DEG + 0.1, "no night", "no night: twilight lasts from sunset to sunrise"],
    [NO_SUNSET_FROM_DEG - 0.1, "no night", "no night: twilight lasts from sunset to sunrise"],
    [NO_SUNSET_FROM_DEG + 0.1, "no sunset", "no sunset: the sun stays up"],
  ])("at the June solstice %f degrees north: %s", (lat, sun, words) => {
    expect(solstice(lat)).toMatchObject({ sun, words });
  });

  test("the polar night has twilight at noon in Tromso and none at 80 degrees", () => {
    const tromso = light("2025-12-21", 69.65, 18.96, "Europe/Oslo");
    expect(tromso).toMatchObject({ sun: "no sunrise", sunrise: null, sunset: null });
    expect(tromso.firstLight).not.toBeNull();
    expect(light("2025-12-21", 80, 18.96, "Europe/Oslo")).toMatchObject({
      sun: "no daylight",
      firstLight: null,
      lastLight: null,
    });
  });
});

describe("moon", () => {
  test.each(MOON_USNO)("US Naval Observatory: $phase at $utc", ({ phase, utc }) => {
    // The day on which it falls in a zone seven hours behind.
    const local = new Date(Date.parse(utc) - 7 * 3_600_000).toISOString().slice(0, 10);
    expect(light(local, 41, -106, "Etc/GMT+7").moon.phase).toBe(phase);
  });

  test("between two quarters it waxes or wanes; its lit share is near 0 when new, near 1 when full", () => {
    expect(light("2030-05-06", 41, -106, "Etc/GMT+7").moon.phase).toBe("waxing crescent");
    expect(light("2030-05-13", 41, -106, "Etc/GMT+7").moon.phase).toBe("waxing gibbous");
    expect(light("2030-05-20", 41, -106, "Etc/GMT+7").moon.phase).toBe("waning gibbous");
    expect(light("2030-05-27", 41, -106, "Etc/GMT+7").moon.phase).toBe("waning crescent");
    expect(light("2030-05-02", 41, -106, "Etc/GMT+7").moon.lit).toBeLessThan(0.01);
    expect(light("2030-05-17", 41, -106, "Etc/GMT+7").moon.lit).toBeGreaterThan(0.99);
    expect(Math.abs(light("2030-05-10", 41, -106, "Etc/GMT+7").moon.lit - 0.5)).toBeLessThan(0.03);
  });
});
