import { expect, test } from "vitest";
import { lakePositionWarnings } from "../../build/input/checks/position-checks.ts";
import { readLake } from "../../build/input/lake-file.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { ZONE_PLACES } from "../reference/time-zones.ts";
import { CLUB_YAML, folderOf } from "./club-folder.ts";

type Place = readonly [lat: number, lon: number];

/** What is doubted of lakes at these places, `CODE FILE` each. */
function doubtsOf(timezone: string, places: readonly Place[]): string[] {
  const drafts = places.map(([lat, lon], i) =>
    readLake(
      { file: `${i}.yaml`, slug: `${i}`, text: `name: L${i}\nposition: { lat: ${lat}, lon: ${lon} }\n` },
      [],
    ),
  );
  return lakePositionWarnings(
    drafts.filter((draft) => draft !== undefined),
    timezone,
    2026,
  ).map(({ code, file }) => `${code} ${file}`);
}

test.each(ZONE_PLACES)(
  "a lake at the principal place of $timezone is not doubted",
  ({ timezone, lat, lon }) => {
    expect(doubtsOf(timezone, [[lat, lon]])).toEqual([]);
  },
);

/** Ends of wide zones, degrees from memory of the map. */
test.each<[string, string, Place]>([
  ["the Pamirs on Beijing time", "Asia/Shanghai", [39.4, 73.6]],
  ["Attu, west of 180 degrees, on Adak time", "America/Adak", [52.9, 172.9]],
  ["Thule's west on Nuuk time", "America/Nuuk", [77, -72]],
  ["the Chathams, east of 180 degrees by longitude, on New Zealand time", "Pacific/Auckland", [-44, -176.5]],
  ["anywhere on UTC, which names no place", "Etc/UTC", [41, -106]],
  ["anywhere on UTC by its short name", "UTC", [41, 106]],
])("%s: not doubted", (_, timezone, place) => {
  expect(doubtsOf(timezone, [place])).toEqual([]);
});

test.each<[string, string, Place]>([
  ["a minus forgotten in Colorado", "America/Denver", [41.3, 106.3]],
  ["a minus too many in Japan", "Asia/Tokyo", [43.5, -142.8]],
  ["latitude and longitude swapped in Maine", "America/New_York", [-69.1, 45.2]],
  ["New Zealand written in the Atlantic", "Pacific/Auckland", [-44.1, -17]],
])("%s: doubted", (_, timezone, place) => {
  expect(doubtsOf(timezone, [place])).toEqual(["far-from-time-zone 0.yaml"]);
});

test("a lake with no other within 1,000 km is doubted, and no other for its sake", () => {
  const near: Place[] = [
    [-44.1, 169.9],
    [-44.3, 170.2],
  ];
  // Along the meridian from 44.1 to 33.1 degrees 1,221 km, to 36.1 degrees 888 km: the arc of WGS 84, summed up in steps
  expect(doubtsOf("Pacific/Auckland", [...near, [-44.1, -169.9]])).toEqual(["far-from-other-lakes 2.yaml"]);
  expect(doubtsOf("Pacific/Auckland", [...near, [-33.1, 169.9]])).toEqual(["far-from-other-lakes 2.yaml"]);
  expect(doubtsOf("Pacific/Auckland", [...near, [-36.1, 169.9]])).toEqual([]);
});

test("lakes on both sides of 180 degrees are near each other", () => {
  expect(
    doubtsOf("Pacific/Fiji", [
      [-17, 179.9],
      [-17, -179.9],
    ]),
  ).toEqual([]);
});

test("a lake that the time zone doubts is no neighbour to doubt others by", () => {
  expect(
    doubtsOf("America/Denver", [
      [41.3, -106.3],
      [41.3, 106.3],
    ]),
  ).toEqual(["far-from-time-zone 1.yaml"]);
});

/** From 4.4 to 41.4 degrees of latitude 4,098.46 km: the meridian of WGS 84, summed up in steps. */
test("the message stands at the number and says which slip would explain it", async () => {
  const dir = await folderOf({
    "club.yaml": CLUB_YAML,
    "lakes/ember.yaml": "name: Ember Lake\nposition: { lat: 41.312, lon: 106.291 }\n",
    "lakes/quern.yaml": "name: Quern\nposition: { lat: -69.1, lon: 45.2 }\n",
    "lakes/tarn.yaml": "name: Tarn\nposition: { lat: 5, lon: 5 }\n",
    "lakes/upper.yaml": "name: Upper\nposition: { lat: 41.4, lon: -106.3 }\n",
    "lakes/wrong.yaml": "name: Wrong\nposition: { lat: 4.4, lon: -106.3 }\n",
  });
  const { problems } = await loadClub(dir);
  expect(problems.map(formatDiagnostic).join("\n")).toBe(`\
lakes/ember.yaml:2:31 warning far-from-time-zone position.lon: 106.291 is far from the club's time zone America/Denver, which lies about longitude -105
    is a minus missing? West is negative: lon: -106.291; or correct “timezone” in club.yaml; if both are right, leave it
lakes/quern.yaml:2:30 warning far-from-time-zone position.lon: 45.2 is far from the club's time zone America/Denver, which lies about longitude -105
    are they swapped? Then write lat: 45.2, lon: -69.1; or correct “timezone” in club.yaml; if both are right, leave it
lakes/tarn.yaml:2:26 warning far-from-time-zone position.lon: 5 is far from the club's time zone America/Denver, which lies about longitude -105
    correct the position; or correct “timezone” in club.yaml; if both are right, leave it
lakes/upper.yaml:2:11 warning far-from-other-lakes position: this is 4,098 km from Wrong, the nearest other lake of the club
    correct it: south and west are negative, lat is how far north and lon how far east; if it is right, leave it
lakes/wrong.yaml:2:11 warning far-from-other-lakes position: this is 4,098 km from Upper, the nearest other lake of the club
    correct it: south and west are negative, lat is how far north and lon how far east; if it is right, leave it`);
});
