import { describe, expect, test } from "vitest";
import { seasonOf } from "../../build/model/calendar.ts";
import { pastForecasts } from "../../build/season/backtest/past-forecasts.ts";
import { pastForecastSchema } from "../../build/season/forecast.ts";
import open from "../reference/season-open-lakes.json" with { type: "json" };
import { day, lakeOf } from "./club.ts";

const LAKES = open.lakes.map(({ slug, lat, lon, elevation_m, iceOff }) => ({
  ...lakeOf(slug),
  position: { lat, lon },
  elevation_m,
  iceOff: iceOff.map((date) => ({
    season: seasonOf(day(date), "north"),
    on: day(date),
    where: { file: `lakes/${slug}.yaml`, line: 1, column: 1 },
  })),
}));

describe("what the guide would have said in past springs of eight open lakes (NSIDC G01377)", () => {
  const past = pastForecasts(LAKES, 2026);

  test("every lake with five springs or more is told of, each spring once, by the schema", () => {
    expect(past.size).toBeGreaterThan(5);
    for (const seasons of past.values()) {
      expect(seasons.map(({ season }) => season)).toEqual(
        [...new Set(seasons.map(({ season }) => season))].sort(),
      );
      for (const one of seasons) expect(pastForecastSchema.safeParse(one).error?.issues).toBeUndefined();
    }
  });

  test("nothing was known of the lake itself but that it was iced: no bracket begins before the day after", () => {
    for (const { forecast } of [...past.values()].flat())
      if (forecast !== null) expect(forecast.p10 > forecast.from).toBe(true);
  });

  test("a lake that opened on the first day has no bracket, and every other has one", () => {
    const first = new Map<number, string>();
    for (const { season, on } of LAKES.flatMap(({ iceOff }) => iceOff))
      if (on < (first.get(season) ?? "9999")) first.set(season, on);
    for (const { forecast, opened, season } of [...past.values()].flat())
      expect(forecast === null).toBe(opened === first.get(season));
  });

  test("about four brackets in five hold", () => {
    const all = [...past.values()]
      .flat()
      .flatMap(({ forecast, opened }) =>
        forecast === null ? [] : [forecast.p10 <= opened && opened <= forecast.p90],
      );
    const share = all.filter(Boolean).length / all.length;
    // whole days hold a little more than they say; neighbouring lakes err together
    expect(share).toBeGreaterThan(0.65);
    expect(share).toBeLessThan(0.97);
  });

  test("with four springs on record nothing is told", () => {
    expect(
      pastForecasts(
        LAKES.map((lake) => ({ ...lake, iceOff: lake.iceOff.slice(0, 4) })),
        2026,
      ).size,
    ).toBe(0);
  });
});
