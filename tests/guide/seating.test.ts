import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seatPeople } from "../../build/guide/trips.ts";

const people = ["Ines", "Tobin", "Wren", "Ossian", "Linnet"];
const boat = (seats: number) => ({ name: `${seats} seats`, kind: "pram" as const, seats });
const aboard = (count: number, ...seats: number[]): string[][] =>
  seatPeople({ people: people.slice(0, count), boats: seats.map(boat) }).boats.map((one) => one.aboard);

describe("who sits where, by hand", () => {
  test("boat by boat in the order they are named, evenly", () => {
    expect(aboard(4, 2, 3)).toEqual([
      ["Ines", "Tobin"],
      ["Wren", "Ossian"],
    ]);
    expect(aboard(5, 2, 3)).toEqual([
      ["Ines", "Tobin"],
      ["Wren", "Ossian", "Linnet"],
    ]);
    expect(aboard(3, 1, 4)).toEqual([["Ines"], ["Tobin", "Wren"]]);
  });

  test("whoever has no seat is named; on foot nobody lacks one", () => {
    expect(seatPeople({ people, boats: [boat(2), boat(1)] }).ashore).toEqual(["Ossian", "Linnet"]);
    expect(seatPeople({ people, boats: [] })).toEqual({ boats: [], ashore: [] });
  });
});

test("everybody has one place, and no boat is overfull", () => {
  const boats = fc.array(fc.integer({ min: 1, max: 5 }).map(boat), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 12 }), boats, (count, fleet) => {
      const names = Array.from({ length: count }, (_, i) => `p${i}`);
      const { boats: seated, ashore } = seatPeople({ people: names, boats: fleet });
      expect([...seated.flatMap((one) => one.aboard), ...ashore]).toEqual(names);
      for (const one of seated) expect(one.aboard.length).toBeLessThanOrEqual(one.seats);
      const seats = fleet.reduce((sum, one) => sum + one.seats, 0);
      expect(ashore.length).toBe(Math.max(0, count - seats));
    }),
  );
});
