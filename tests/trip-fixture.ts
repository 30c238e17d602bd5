import type { GuideTrip } from "../build/guide/guide-schema.ts";
import { lightOn } from "../build/water/light.ts";
import { day } from "./lake-fixture.ts";

/** What a trip takes along and whom, beside its dates and lakes. */
export const TRIP_PLAN = {
  people: ["Ines", "Tobin", "Wren"],
  boats: [{ name: "The pram", kind: "pram", seats: 2, aboard: ["Ines", "Tobin"] }],
  ashore: ["Wren"],
  why: ["Of 3 pairs this one most likely holds a good lake."],
  next: null,
  fishable: [],
  out: [{ slug: "high", name: "High Lake", why: "its road opens on Sat 20 Jun" }],
  light: [lightOn(day("2026-06-05"), { lat: 41.312, lon: -106.291 }, "America/Denver")],
  packing: [
    {
      group: "Safety",
      items: [
        {
          id: "life-jacket",
          item: "Life jacket",
          count: 3,
          how: "1 for each of 3 people",
          why: "Wear it, fastened.",
        },
        { id: "whistle", item: "Whistle", count: 3, how: "1 for each of 3 people", why: null },
      ],
    },
    {
      group: "Leaders",
      items: [{ id: "tippet 4X", item: "Tippet 4X, spools", count: 1, how: "20 m", why: null }],
    },
  ],
  cautions: ["cold-water", "life-jacket", "wind"],
  ice: ["Ember Lake, 21 %: ice still on; stay off what is left."],
} satisfies Partial<GuideTrip>;
