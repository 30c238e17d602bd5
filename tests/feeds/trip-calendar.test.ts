import ical, { type VEvent } from "node-ical";
import { describe, expect, test } from "vitest";
import { tripCalendar } from "../../build/feeds/icalendar.ts";
import { addDays } from "../../build/model/calendar.ts";
import { siteGuide } from "../site/site-fixture.ts";

const guide = siteGuide();
const [trip] = guide.trips;
if (trip === undefined) throw new Error("the fixture has no trip");
const text = tripCalendar(guide, trip);

const localDay = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
const read = (calendar: string): VEvent[] =>
  Object.values(ical.sync.parseICS(calendar)).filter((entry): entry is VEvent => entry?.type === "VEVENT");

describe("a trip's calendar, read back by another library", () => {
  const events = read(text);

  test("one all-day event a day", () => {
    expect(events).toHaveLength(trip.days.length);
    for (const [i, { date }] of trip.days.entries()) {
      const { datetype, start, end, summary } = events[i] as VEvent;
      expect(datetype).toBe("date");
      expect(localDay(start)).toBe(date);
      // RFC 5545, 3.6.1: the end of an all-day event is exclusive.
      expect(localDay(end as Date)).toBe(addDays(date, 1));
      expect(summary).toBe(`June weekend, day ${i + 1} of 4`);
    }
  });

  test("each says pick, fallback and the chances of that day, the first light where it is known", () => {
    const described = events.map(({ description }) => String(description));
    for (const words of described)
      expect(words).toMatch(
        /^Go to: Ember Lake .*% good\. Or else: Larch Reservoir .*% good; one of the two .*%\./,
      );
    expect(described[0]).toContain(`First light ${trip.light[0]?.firstLight?.slice(11, 16)}.`);
    for (const words of described) expect(words).toContain("never a statement about safe ice");
  });

  test("no two events share an identity, nor do two trips'", () => {
    const [, other] = guide.trips;
    const uids = [...events, ...(other === undefined ? [] : read(tripCalendar(guide, other)))].map(
      ({ uid }) => uid,
    );
    expect(new Set(uids).size).toBe(uids.length);
    expect(uids.length).toBe(8);
  });

  test("a trip that can go nowhere says so", () => {
    const nowhere = read(tripCalendar(guide, { ...trip, pick: null, light: [] }));
    expect(String(nowhere[0]?.description)).toMatch(/^No lake can be reached\. As of/);
  });
});

// RFC 5545, 3.1: lines end in CRLF and hold at most 75 octets.
test("lines are folded at 75 octets and end in CRLF", () => {
  expect(text).not.toMatch(/[^\r]\n/);
  const lines = text.split("\r\n").map((line) => Buffer.byteLength(line));
  expect(Math.max(...lines)).toBeLessThanOrEqual(75);
});
