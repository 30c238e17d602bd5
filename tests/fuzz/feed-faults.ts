import ICAL from "ical.js";
import { SaxesParser } from "saxes";
import { reportsFeed } from "../../build/feeds/atom-and-sitemap.ts";
import { mapGeojson, marksGpx } from "../../build/feeds/geojson-gpx.ts";
import { seasonCalendar, tripCalendar } from "../../build/feeds/icalendar.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { dataFiles } from "../../build/site/text-files.ts";

/** The calendar's properties of a guide whose texts hold nothing odd, by component. */
const CALENDAR: Readonly<Record<string, readonly string[]>> = {
  vcalendar: ["version", "prodid"],
  vevent: ["uid", "dtstamp", "dtstart", "dtend", "summary", "description", "geo", "location", "transp"],
};

/** RFC 5545, 3.1 allows no control character but the tab. */
function calendarFaults(text: string): string[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const faults = text
    .split("\r\n")
    .flatMap((line) => [
      ...(Buffer.byteLength(line) > 75 ? ["a line of more than 75 octets"] : []),
      ...(/[\r\n]/.test(line) ? ["a bare line break"] : []),
      ...(/[^\P{Cc}\t\r\n]/u.test(line) ? ["a control character"] : []),
    ]);
  for (const component of [calendar, ...calendar.getAllSubcomponents()]) {
    const allowed = CALENDAR[component.name];
    if (allowed === undefined) faults.push(`an injected ${component.name}`);
    for (const { name } of component.getAllProperties())
      if (allowed?.includes(name) !== true) faults.push(`an injected ${name}`);
  }
  return faults;
}

function xmlFaults(text: string): string[] {
  const faults: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => faults.push(error.message));
  parser.write(text).close();
  return faults;
}

function geojsonFaults(text: string): string[] {
  const { type, features } = JSON.parse(text) as {
    type: string;
    features: { geometry: { coordinates: unknown } }[];
  };
  const numbers = features.flatMap(({ geometry }) => [geometry.coordinates].flat(9));
  return [
    ...(type === "FeatureCollection" ? [] : ["no FeatureCollection"]),
    ...(numbers.every((n) => typeof n === "number" && Math.abs(n) <= 180)
      ? []
      : ["a coordinate that is none"]),
  ];
}

/** Data that a page loads as a script is one constant; what is not a script is JSON. @throws when it is neither */
function checkDataFiles(guide: Guide): string[] {
  return dataFiles(guide).flatMap(({ address, text }) => {
    if (!address.endsWith(".js")) {
      JSON.parse(text);
      return [];
    }
    const [, value = ""] = /^const \w+ = (.*);\n$/.exec(text) ?? [];
    JSON.parse(value);
    return /\n/.test(value) ? [`${address}: more than one line`] : [];
  });
}

/** What is wrong with what programs read of a guide. */
export function feedFaults(guide: Guide): string[] {
  const named = (name: string, faults: readonly string[]): string[] =>
    faults.map((fault) => `${name}: ${fault}`);
  return [
    ...(JSON.stringify(JSON.parse(JSON.stringify(guide))) === JSON.stringify(guide)
      ? []
      : ["guide.json: not read back"]),
    ...checkDataFiles(guide),
    ...named("feed.xml", xmlFaults(reportsFeed(guide) ?? "<none/>")),
    ...guide.trips.flatMap((trip) => named("trip.ics", calendarFaults(tripCalendar(guide, trip)))),
    ...guide.lakes.flatMap((lake) => [
      ...named("season.ics", calendarFaults(seasonCalendar(guide, lake))),
      ...(lake.place.map === null
        ? []
        : [
            ...named("marks.gpx", xmlFaults(marksGpx(guide, lake))),
            ...named("map.geojson", geojsonFaults(mapGeojson(guide, lake, lake.place.map))),
          ]),
    ]),
  ];
}
