import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { Packing } from "../../build/guide/packing.ts";
import { type PackingInputs, packingList } from "../../build/guide/packing.ts";
import { packingInputs, tripGear } from "../../build/guide/trip-gear.ts";
import { seatsTaken } from "../../build/guide/trips.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { addDays } from "../../build/model/calendar.ts";
import { partySize, type Trip } from "../../build/model/club.ts";
import type { PackingRule, StandingContent } from "../../build/model/content.ts";
import { plumbTable } from "../../build/rigs/tables/rig-tables.ts";
import { day, fullLake } from "../lake-fixture.ts";
import { box } from "../rigs/box-fixture.ts";

const asOf = day("2026-05-16");
const ember = fullLake("ember", "Ember Lake", day("2026-05-12"), asOf);

const tripOf = (change: Partial<Trip> = {}): Trip => ({
  slug: "june",
  name: "June",
  from: day("2026-06-05"),
  to: day("2026-06-06"),
  rods: 2,
  people: [],
  boats: [{ name: "Pram", kind: "pram", seats: 2 }],
  lakes: ["ember"],
  unlisted: false,
  ...change,
});

let content: StandingContent;
beforeAll(async () => {
  content = await loadContent();
});

const PLUMB = plumbTable(box, "imperial");

function listFor(trip: Trip): Packing {
  const gear = tripGear(trip, [ember], box, "imperial");
  const inputs = packingInputs(trip, {
    gear,
    states: new Set(["postTurnover"]),
    box,
    plumb: PLUMB,
    units: "imperial",
    aboard: seatsTaken(partySize(trip), trip.boats),
  });
  return packingList(content.packing, inputs, new Map());
}
const itemsOf = (list: Packing) => list.flatMap(({ items }) => items);
const countsOf = (list: Packing) => new Map(itemsOf(list).map(({ id, count }) => [id, count]));

describe("the packing rules that come with the program", () => {
  const trips = fc.record({
    rods: fc.integer({ min: 1, max: 12 }),
    people: fc.array(fc.constant("Ines"), { maxLength: 14 }),
    boats: fc.array(fc.constant({ name: "Pram", kind: "pram" as const, seats: 2 }), { maxLength: 5 }),
    days: fc.integer({ min: 1, max: 9 }),
  });
  const make = ({ days, ...rest }: { days: number } & Partial<Trip>): Trip =>
    tripOf({ ...rest, to: addDays(day("2026-06-05"), days - 1) });

  test("give every line a whole number, one or more, and every line an id of its own", () => {
    fc.assert(
      fc.property(trips, (trip) => {
        const items = itemsOf(listFor(make(trip)));
        expect(items.length).toBeGreaterThan(20);
        for (const { count } of items) expect(Number.isInteger(count) && count > 0).toBe(true);
        expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
      }),
    );
  });

  test.each([
    ["rod", (trip: { rods: number }) => ({ ...trip, rods: trip.rods + 1 })],
    ["person", (trip: { people: string[] }) => ({ ...trip, people: [...trip.people, "Wren"] })],
    ["day", (trip: { days: number }) => ({ ...trip, days: trip.days + 1 })],
    [
      "boat",
      (trip: { boats: object[] }) => ({
        ...trip,
        boats: [...trip.boats, { name: "Tub", kind: "pram", seats: 1 }],
      }),
    ],
  ])("never pack less for one more %s", (_, add) => {
    fc.assert(
      fc.property(trips, (trip) => {
        const before = countsOf(listFor(make(trip)));
        const after = countsOf(listFor(make(add(trip as never) as never)));
        for (const [id, count] of before) expect([id, (after.get(id) ?? 0) >= count]).toEqual([id, true]);
      }),
    );
  });

  test("have a life jacket and dry clothes for each person, also those who do not fish", () => {
    const counts = countsOf(listFor(tripOf({ rods: 2, people: ["Ines", "Tobin", "Wren"] })));
    expect([counts.get("life-jacket"), counts.get("dry-clothes"), counts.get("rod")]).toEqual([3, 3, 2]);
    expect(countsOf(listFor(tripOf({ rods: 4, people: ["Ines"] }))).get("life-jacket")).toBe(4);
  });

  test("name only cautions that exist", () => {
    const known = content.cautions.map(({ id }) => id);
    for (const { caution } of content.packing) if (caution !== undefined) expect(known).toContain(caution);
  });

  test("on foot leave the boats' gear at home, but not the throw line", () => {
    const counts = countsOf(listFor(tripOf({ boats: [] })));
    expect(counts.has("anchors")).toBe(false);
    expect(counts.get("throw-line")).toBe(1);
  });
});

describe("counts, by hand", () => {
  const needs: PackingInputs = {
    once: { trip: 1, rod: 3, person: 4, rodDay: 6, personDay: 8, leader: 9 },
    each: {
      board: [],
      tippetMetre: [
        { name: "4X", units: 27, how: "27 m" },
        { name: "5X", units: 28, how: "28 m" },
      ],
      indicator: [],
      shot: [],
      line: [],
    },
    states: new Set(["iceOff"]),
    underIndicator: false,
    boats: [],
    rope: null,
  };
  const count = (rule: Partial<PackingRule>): (number | string)[][] =>
    packingList([{ id: "thing", group: "G", item: "Thing {name}", per: "rod", ...rule }], needs, new Map())
      .flatMap(({ items }) => items)
      .map((item) => [item.item, item.count]);

  test.each<[Partial<PackingRule>, (number | string)[][]]>([
    [{ item: "Net", number: 2 }, [["Net", 6]]],
    [{ item: "Net", every: 2 }, [["Net", 2]]],
    [{ item: "Net", every: 3 }, [["Net", 1]]],
    [{ item: "Net", number: 0.1 }, [["Net", 1]]],
    [{ item: "Water", per: "personDay", number: 3 }, [["Water", 24]]],
    [{ item: "Rope", per: "boat", number: 1 }, []],
    [{ item: "Rope", per: "boat", number: 1, least: 1 }, [["Rope", 1]]],
    [{ item: "Rope", number: 1, only: "boats" }, []],
    [{ item: "Paste", number: 1, states: ["iced", "iceOff"] }, [["Paste", 3]]],
    [{ item: "Paste", number: 1, states: ["laterWeeks"] }, []],
    [{ item: "Pegs", number: 4, only: "indicator" }, []],
    [
      { item: "Tippet {name}", per: "tippetMetre", every: 27 },
      [
        ["Tippet 4X", 1],
        ["Tippet 5X", 2],
      ],
    ],
  ])("%j", (rule, expected) => {
    expect(count(rule)).toEqual(expected);
  });

  test("a caution stands beside its line, and once beside several", () => {
    const cautions = new Map([["lead", "Carry tin."]]);
    const rule: PackingRule = {
      id: "tippet",
      group: "G",
      item: "{name}",
      per: "tippetMetre",
      every: 27,
      caution: "lead",
    };
    expect(itemsOf(packingList([rule], needs, cautions)).map(({ why }) => why)).toEqual(["Carry tin.", null]);
  });
});

test("tippet spools are of the X sizes that the trip's leaders are made of", () => {
  const trip = tripOf();
  const gear = tripGear(trip, [ember], box, "imperial");
  const sizes = gear.boards.boards.flatMap(({ leader }) =>
    leader.sections.filter(({ part }) => part !== "taper").map(({ size }) => size),
  );
  const named = gear.lakes.flatMap(({ phases }) =>
    phases.flatMap(({ rigs }) => rigs.flatMap((rig) => rig.leader ?? [])),
  );
  const others = box.leaders
    .filter(({ name }) => named.includes(name))
    .flatMap(({ middle, tippet }) => [`${middle.size}X`, `${tippet.size}X`]);
  const spools = [...countsOf(listFor(trip)).keys()].filter((id) => id.startsWith("tippet "));
  expect(sizes.length + others.length).toBeGreaterThan(0);
  expect(spools.sort()).toEqual([...new Set([...sizes, ...others])].map((size) => `tippet ${size}`).sort());
});

describe("three anglers in two boats and a tube: what each kind needs", () => {
  const trip = tripOf({
    rods: 3,
    people: ["Ines", "Tobin", "Wren"],
    boats: [
      { name: "The pram", kind: "pram", seats: 2 },
      { name: "The canoe", kind: "canoe", seats: 2 },
      { name: "The tube", kind: "float tube", seats: 1 },
    ],
  });
  test("each sits in one: one in the pram, one in the canoe, one in the tube", () =>
    expect(seatsTaken(3, trip.boats)).toEqual([1, 1, 1]));
  test.each([
    ["paddles", 1], // oars for the pram
    ["canoe-paddles", 1], // for the one person in the canoe
    ["fins", 1], // for the one in the tube
    ["waders", 1],
    ["pump", 1],
    ["seats", 2], // one in the pram, one in the canoe
    ["anchors", 2], // two for the pram
    ["small-anchor", 1], // one for the canoe, none for the tube
    ["bailer", 2],
    ["throw-line", 3],
  ])("%s: %d", (id, count) => expect(countsOf(listFor(trip)).get(id)).toBe(count));
  test("no motor, and from the shore only waders", () => {
    expect(countsOf(listFor(trip)).has("motor")).toBe(false);
    const ashore = countsOf(listFor({ ...trip, boats: [{ name: "The bank", kind: "shore", seats: 3 }] }));
    expect(ashore.get("waders")).toBe(3);
    for (const id of ["paddles", "anchors", "fins", "seats", "bailer"])
      expect(ashore.has(id), id).toBe(false);
  });
  test("the anchor's rope is the rig box's own scope, 7 x (5.5 m + 2 ft) in chop, up to 5 ft: 145 ft", () => {
    const anchor = itemsOf(listFor(trip)).find(({ id }) => id === "anchors");
    expect(anchor?.item).toContain("145 ft");
  });
});

test("every line says how its count comes about, and shot is not counted by the hundred", () => {
  const trip = tripOf({ rods: 4, to: day("2026-06-07") });
  const items = itemsOf(listFor(trip));
  for (const { how, item } of items) expect(how, item).toMatch(/\d/);
  const shot = items.filter(({ id }) => id.startsWith("shot "));
  // At most 1 x No. 4 and 2 x BB on a rod, 4 rods, 3 days.
  expect(shot.map(({ id, count }) => `${id}: ${count}`)).toEqual(["shot No. 4: 12", "shot BB: 24"]);
  const boards = items.filter(({ id }) => id.startsWith("leader "));
  expect(boards.reduce((sum, { count }) => sum + count, 0)).toBeLessThan(12);
});
