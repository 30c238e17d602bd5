import { describe, expect, test } from "vitest";
import { tripGear } from "../../build/guide/trip-gear.ts";
import type { Trip } from "../../build/model/club.ts";
import { bareLake, day, fullLake } from "../lake-fixture.ts";
import { box, leader } from "../rigs/box-fixture.ts";

const asOf = day("2026-05-16");
/** Turns over from 23 May to 3 Jun, best weeks from 4 to 16 Jun, each give or take six days. */
const ember = fullLake("ember", "Ember Lake", day("2026-05-12"), asOf);
/** Nothing is known of it. */
const bare = bareLake("high", "High Lake", day("2026-06-01"), asOf);
const trip = (from: string, to: string): Trip => ({
  slug: "june",
  name: "June",
  from: day(from),
  to: day(to),
  rods: 2,
  people: [],
  boats: [],
  lakes: ["ember", "high"],
  unlisted: false,
});

describe("what a trip takes (the phases by construction of the fixture)", () => {
  test("is rigged for the phases its lakes may well be in on its days, and no other", () => {
    const phases = (from: string, to: string): string[] =>
      tripGear(trip(from, to), [ember, bare], box, "imperial").lakes.flatMap((lake) =>
        lake.phases.map(({ phase }) => phase),
      );
    expect(phases("2026-05-16", "2026-05-17")).toEqual(["ice-off"]);
    expect(phases("2026-06-05", "2026-06-08")).toEqual(["turnover", "post-turnover"]);
    expect(phases("2026-07-10", "2026-07-12")).toEqual([]);
  });

  // Common practice, from memory: one leader on each rod, and a spare for every two days.
  test("ties a leader for each rod and a spare for every 6 rod-days, less those on boards", () => {
    const stocked = { ...box, leaders: [leader("Long", [12, 3], [6, 4], [3, 5], 4)] };
    const band = { from_m: 3.3, to_m: 5.5, source: "club" as const };
    const lake = { ...ember, plan: ember.plan.map((plan) => ({ ...plan, band })) };
    const { boards } = tripGear(trip("2026-06-11", "2026-06-14"), [lake], stocked, "imperial").boards;
    expect(boards.find((board) => board.leader.name === "Long")).toMatchObject({ needed: 4, tie: 0 }); // 2 rods, 8 rod-days: 2 + 2
  });

  test("names each line and fly once", () => {
    const { lines, flies } = tripGear(
      trip("2026-06-05", "2026-06-08"),
      [ember, { ...ember, slug: "twin" }],
      box,
      "imperial",
    );
    expect(lines).toEqual([...new Set(lines)]);
    expect(flies.map(({ pattern }) => pattern)).toEqual(["ash-leech", "cinder-pupa", "marl-scud"]);
  });
});
