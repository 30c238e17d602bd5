import { beforeAll, describe, expect, test } from "vitest";
import { layoutTripCard } from "../../build/cards/trip/trip-card.ts";
import type { Guide, GuideTrip } from "../../build/guide/guide-schema.ts";
import { addDays, daysFromTo } from "../../build/model/calendar.ts";
import { LEGIBLE } from "../reference/paper.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { ruler } from "./card-fixture.ts";
import { faults, textsOf, written, xHeight_mm } from "./legibility.ts";

let guide: Guide;
let trip: GuideTrip;
beforeAll(async () => {
  guide = await demoGuide();
  const found = guide.trips.find(({ slug }) => slug === "late-may-weekend");
  if (found === undefined) throw new Error("no such trip");
  trip = found;
});

const cardOf = (change: Partial<GuideTrip> = {}) => {
  const { faces, misfits } = layoutTripCard(guide, { ...trip, ...change }, ruler);
  return { faces, misfits, words: faces.map((face) => written(face).replaceAll("\u00a0", " ")) };
};

describe("a trip's card", () => {
  test("every trip's lettering is large enough, 3 mm from the edge, and clear of other lettering", () => {
    for (const one of guide.trips) {
      const { faces, misfits } = layoutTripCard(guide, one, ruler);
      expect([one.slug, misfits, faces.flatMap((face) => faults(face))]).toEqual([one.slug, [], []]);
    }
  });

  test("the front has the pick, the fallback, each day's odds and its light", () => {
    const { faces, words } = cardOf();
    const [front = ""] = words;
    const [face] = faces;
    if (face === undefined) throw new Error("no front");
    const large = textsOf(face).filter((piece) => xHeight_mm(piece) >= LEGIBLE.glance_mm);
    const glanced = large.map(({ text }) => text.trim().replaceAll("\u00a0", " ")).join(" ");
    expect(glanced).toContain(trip.pick?.name);
    expect(glanced).toContain(trip.pick?.fallback?.name);
    for (const { firstLight, lastLight } of trip.light)
      expect(front).toContain(`${firstLight?.slice(11, 16)}–${lastLight?.slice(11, 16)}`);
    for (const day of ["Fri 29 May", "Sat 30 May", "Sun 31 May"]) expect(front).toContain(day);
  });

  test("the sides after it have every caution of the trip, whom to tell and every count", () => {
    const rest = cardOf().words.slice(1).join(" ");
    for (const id of trip.cautions)
      expect(rest).toContain(guide.cautions.find((caution) => caution.id === id)?.short);
    for (const label of ["Phone", "Vehicle, plate", "Launch", "Due back", "If not back by", "then call"])
      expect(rest).toContain(label);
    for (const { count, item } of trip.packing.flatMap(({ items }) => items))
      expect(rest).toContain(`${count} ${item}`);
  });

  test("a long trip takes more sides and fails nothing", () => {
    const dates = daysFromTo(trip.from, addDays(trip.from, 59));
    const [first] = trip.days;
    const [light] = trip.light;
    if (first === undefined || light === undefined) throw new Error("a trip without days");
    const long = cardOf({
      days: dates.map((date) => ({ ...first, date })),
      light: dates.map((date) => ({ ...light, date })),
    });
    expect(long.misfits).toEqual([]);
    expect(long.faces.length).toBeGreaterThan(cardOf().faces.length);
    expect(long.faces.flatMap((face) => faults(face))).toEqual([]);
  });

  test("a trip that can go nowhere still has its cautions and whom to tell", () => {
    const { words, misfits } = cardOf({ pick: null, light: [], people: [], boats: [], packing: [] });
    expect(misfits).toEqual([]);
    expect(words[0]).toContain("No lake can be reached on these days.");
    expect(words.slice(1).join(" ")).toContain("Who to tell");
  });
});
