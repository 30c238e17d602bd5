import ical, { type VEvent } from "node-ical";
import { describe, expect, test } from "vitest";
import { seasonCalendar } from "../../build/feeds/icalendar.ts";
import { addDays } from "../../build/model/calendar.ts";
import { guideFixture } from "../guide-fixture.ts";

const guide = guideFixture();
const [lake] = guide.lakes;
if (lake === undefined) throw new Error("the fixture has no lake");
const text = seasonCalendar(guide, lake);

const localDay = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((n) => String(n).padStart(2, "0")).join("-");

describe("a lake's calendar, read back by another library", () => {
  const events = Object.values(ical.sync.parseICS(text)).filter(
    (entry): entry is VEvent => entry?.type === "VEVENT",
  );

  test("one all-day event a phase, from its middle first day to its middle last day", () => {
    expect(events.slice(0, -1)).toHaveLength(lake.phases.length);
    for (const [i, { from, to }] of lake.phases.entries()) {
      const { datetype, start, end } = events[i] as VEvent;
      expect(datetype).toBe("date");
      expect(localDay(start)).toBe(from.p50);
      // RFC 5545, 3.6.1: the end of an all-day event is exclusive, the day after its last.
      expect(localDay(end as Date)).toBe(addDays(to.p50, 1));
    }
  });

  test("the later weeks by the day they begin", () => {
    const last = events.at(-1) as VEvent;
    expect(lake.laterWeeks).not.toBeNull();
    expect(localDay(last.start)).toBe(lake.laterWeeks?.p50);
    expect(localDay(last.end as Date)).toBe(addDays(lake.laterWeeks?.p50 ?? guide.asOf, 1));
    expect(last.summary).toMatch(/: later weeks begin$/);
  });

  test("each says its spread and that it is no word about the ice", () => {
    for (const event of events)
      expect(String(event.description)).toMatch(/ to .*never a statement about safe ice/s);
  });
});

// RFC 5545, 3.1: lines end in CRLF and hold at most 75 octets.
test("lines are folded at 75 octets and end in CRLF", () => {
  const lines = text.split("\r\n");
  expect(text).not.toMatch(/[^\r]\n/);
  expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
});

// RFC 5545, 3.1: CONTROL is every control character but the tab, and no text may hold one.
test("a name's controls stay out, and its line breaks inject no property", () => {
  const odd = { ...lake, name: "Ember\u0007\u001b[2J\nATTENDEE:mailto:x@club.example" };
  const said = seasonCalendar(guide, odd);
  expect(said.replaceAll("\r\n", "")).not.toMatch(/\p{Cc}/u);
  expect(said).not.toMatch(/^ATTENDEE/m);
});
