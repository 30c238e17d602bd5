/** What the sun does: civil dawn and dusk with its centre 6 degrees below the horizon; rise and set by the upper limb, -0.8333. */
type SunEvent = "firstLight" | "sunrise" | "sunset" | "lastLight";

export interface SunRow {
  readonly event: SunEvent;
  readonly lat: number;
  readonly lon: number;
  readonly timezone: string;
  /** Day at the lake. */
  readonly date: string;
  /** UTC; null where it does not happen on that day. */
  readonly utc: string | null;
}

/**
 * Solved with astropy 5.2 (ERFA); PyEphem 4.1.4 agrees within seconds. Days of clock changes on both halves of the earth, a
 * zone without them, the equator, and latitudes without night, sunset or sunrise (there PyEphem alone).
 */
export const SUN_ASTROPY: readonly SunRow[] = [
  {
    event: "sunset",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-03-09",
    utc: "2025-03-10T01:56:51Z",
  },
  {
    event: "lastLight",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-03-09",
    utc: "2025-03-10T02:29:33Z",
  },
  {
    event: "firstLight",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-11-02",
    utc: "2025-11-02T14:20:31Z",
  },
  {
    event: "sunrise",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-11-02",
    utc: "2025-11-02T14:55:13Z",
  },
  {
    event: "sunset",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-11-02",
    utc: "2025-11-03T00:33:37Z",
  },
  {
    event: "lastLight",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-11-02",
    utc: "2025-11-03T01:08:17Z",
  },
  {
    event: "firstLight",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-06-21",
    utc: "2025-06-21T11:02:16Z",
  },
  {
    event: "sunrise",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-06-21",
    utc: "2025-06-21T11:48:19Z",
  },
  {
    event: "sunset",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-06-21",
    utc: "2025-06-22T04:17:55Z",
  },
  {
    event: "lastLight",
    lat: 50.7,
    lon: -120.3,
    timezone: "America/Vancouver",
    date: "2025-06-21",
    utc: "2025-06-22T05:03:56Z",
  },
  {
    event: "firstLight",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-03-09",
    utc: "2025-03-09T12:06:50Z",
  },
  {
    event: "sunrise",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-03-09",
    utc: "2025-03-09T12:36:04Z",
  },
  {
    event: "sunset",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-03-09",
    utc: "2025-03-10T00:11:49Z",
  },
  {
    event: "sunrise",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-12-21",
    utc: "2025-12-21T13:48:32Z",
  },
  {
    event: "sunset",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-12-21",
    utc: "2025-12-21T22:34:29Z",
  },
  {
    event: "lastLight",
    lat: 45.0,
    lon: -93.3,
    timezone: "America/Chicago",
    date: "2025-12-21",
    utc: "2025-12-21T23:08:22Z",
  },
  {
    event: "firstLight",
    lat: 39.6,
    lon: -106.0,
    timezone: "America/Denver",
    date: "2025-05-15",
    utc: "2025-05-15T11:18:57Z",
  },
  {
    event: "sunset",
    lat: 39.6,
    lon: -106.0,
    timezone: "America/Denver",
    date: "2025-05-15",
    utc: "2025-05-16T02:11:50Z",
  },
  {
    event: "lastLight",
    lat: 39.6,
    lon: -106.0,
    timezone: "America/Denver",
    date: "2025-05-15",
    utc: "2025-05-16T02:42:21Z",
  },
  {
    event: "firstLight",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-03-30",
    utc: "2025-03-30T05:12:59Z",
  },
  {
    event: "sunset",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-03-30",
    utc: "2025-03-30T18:45:25Z",
  },
  {
    event: "firstLight",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-10-26",
    utc: "2025-10-26T06:25:42Z",
  },
  {
    event: "sunrise",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-10-26",
    utc: "2025-10-26T07:02:59Z",
  },
  {
    event: "sunset",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-10-26",
    utc: "2025-10-26T16:48:52Z",
  },
  {
    event: "lastLight",
    lat: 54.5,
    lon: -3.1,
    timezone: "Europe/London",
    date: "2025-10-26",
    utc: "2025-10-26T17:26:06Z",
  },
  { event: "firstLight", lat: 62.0, lon: 25.7, timezone: "Europe/Helsinki", date: "2025-06-21", utc: null },
  {
    event: "sunrise",
    lat: 62.0,
    lon: 25.7,
    timezone: "Europe/Helsinki",
    date: "2025-06-21",
    utc: "2025-06-21T00:26:31Z",
  },
  {
    event: "sunset",
    lat: 62.0,
    lon: 25.7,
    timezone: "Europe/Helsinki",
    date: "2025-06-21",
    utc: "2025-06-21T20:11:31Z",
  },
  { event: "lastLight", lat: 62.0, lon: 25.7, timezone: "Europe/Helsinki", date: "2025-06-21", utc: null },
  { event: "firstLight", lat: 69.65, lon: 18.96, timezone: "Europe/Oslo", date: "2025-06-21", utc: null },
  { event: "sunrise", lat: 69.65, lon: 18.96, timezone: "Europe/Oslo", date: "2025-06-21", utc: null },
  { event: "sunrise", lat: 69.65, lon: 18.96, timezone: "Europe/Oslo", date: "2025-12-21", utc: null },
  { event: "sunset", lat: 69.65, lon: 18.96, timezone: "Europe/Oslo", date: "2025-12-21", utc: null },
  {
    event: "sunrise",
    lat: 64.8,
    lon: -147.7,
    timezone: "America/Anchorage",
    date: "2025-06-21",
    utc: "2025-06-21T10:58:58Z",
  },
  {
    event: "lastLight",
    lat: 64.8,
    lon: -147.7,
    timezone: "America/Anchorage",
    date: "2025-06-21",
    utc: null,
  },
  { event: "firstLight", lat: 66.6, lon: 25.7, timezone: "Europe/Helsinki", date: "2025-06-06", utc: null },
  { event: "sunrise", lat: 66.6, lon: 25.7, timezone: "Europe/Helsinki", date: "2025-06-06", utc: null },
  { event: "sunset", lat: 66.6, lon: 25.7, timezone: "Europe/Helsinki", date: "2025-06-06", utc: null },
  {
    event: "firstLight",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-04-06",
    utc: "2025-04-05T18:07:45Z",
  },
  {
    event: "lastLight",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-04-06",
    utc: "2025-04-06T06:27:44Z",
  },
  {
    event: "firstLight",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-09-28",
    utc: "2025-09-27T17:29:22Z",
  },
  {
    event: "sunrise",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-09-28",
    utc: "2025-09-27T17:55:56Z",
  },
  {
    event: "sunset",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-09-28",
    utc: "2025-09-28T06:17:23Z",
  },
  {
    event: "lastLight",
    lat: -38.7,
    lon: 176.1,
    timezone: "Pacific/Auckland",
    date: "2025-09-28",
    utc: "2025-09-28T06:44:00Z",
  },
  {
    event: "sunrise",
    lat: 0.0,
    lon: 36.1,
    timezone: "Africa/Nairobi",
    date: "2025-03-20",
    utc: "2025-03-20T03:39:44Z",
  },
  {
    event: "sunset",
    lat: 0.0,
    lon: 36.1,
    timezone: "Africa/Nairobi",
    date: "2025-03-20",
    utc: "2025-03-20T15:46:14Z",
  },
  {
    event: "firstLight",
    lat: 60.0,
    lon: 0.0,
    timezone: "UTC",
    date: "2025-06-21",
    utc: "2025-06-21T00:49:10Z",
  },
  { event: "sunset", lat: 60.0, lon: 0.0, timezone: "UTC", date: "2025-06-21", utc: "2025-06-21T21:27:52Z" },
  {
    event: "lastLight",
    lat: 60.0,
    lon: 0.0,
    timezone: "UTC",
    date: "2025-06-21",
    utc: "2025-06-21T23:14:25Z",
  },
  {
    event: "sunrise",
    lat: 52.0,
    lon: -110.0,
    timezone: "America/Regina",
    date: "2025-07-04",
    utc: "2025-07-04T11:07:04Z",
  },
  {
    event: "sunset",
    lat: 52.0,
    lon: -110.0,
    timezone: "America/Regina",
    date: "2025-07-04",
    utc: "2025-07-05T03:41:34Z",
  },
];

/**
 * US Naval Observatory, one-year tables, whole minutes, as stored with the open library astronomy
 * (generate/riseset/riseset.txt); the day and zone are ours: mean solar time of the place.
 */
export const SUN_USNO: readonly SunRow[] = [
  { event: "sunrise", lat: 60, lon: 0, timezone: "UTC", date: "2019-12-14", utc: "2019-12-14T08:56Z" },
  { event: "sunset", lat: 60, lon: 0, timezone: "UTC", date: "2019-09-24", utc: "2019-09-24T17:55Z" },
  { event: "sunset", lat: 60, lon: 0, timezone: "UTC", date: "2019-03-29", utc: "2019-03-29T18:36Z" },
  { event: "sunset", lat: 60, lon: 0, timezone: "UTC", date: "2019-07-17", utc: "2019-07-17T21:04Z" },
  { event: "sunrise", lat: 60, lon: 0, timezone: "UTC", date: "2019-06-22", utc: "2019-06-22T02:36Z" },
  { event: "sunrise", lat: 60, lon: 0, timezone: "UTC", date: "2019-07-27", utc: "2019-07-27T03:28Z" },
  { event: "sunset", lat: 29, lon: -81, timezone: "Etc/GMT+5", date: "2019-12-22", utc: "2019-12-22T22:31Z" },
  { event: "sunset", lat: 29, lon: -81, timezone: "Etc/GMT+5", date: "2019-07-11", utc: "2019-07-12T00:26Z" },
  {
    event: "sunrise",
    lat: 29,
    lon: -81,
    timezone: "Etc/GMT+5",
    date: "2019-11-25",
    utc: "2019-11-25T11:55Z",
  },
  {
    event: "sunrise",
    lat: 29,
    lon: -81,
    timezone: "Etc/GMT+5",
    date: "2019-10-22",
    utc: "2019-10-22T11:29Z",
  },
  {
    event: "sunset",
    lat: -60,
    lon: -150,
    timezone: "Etc/GMT+10",
    date: "2019-06-15",
    utc: "2019-06-16T00:58Z",
  },
  {
    event: "sunrise",
    lat: -60,
    lon: -150,
    timezone: "Etc/GMT+10",
    date: "2019-10-14",
    utc: "2019-10-14T14:41Z",
  },
  {
    event: "sunrise",
    lat: -60,
    lon: -150,
    timezone: "Etc/GMT+10",
    date: "2019-04-30",
    utc: "2019-04-30T17:39Z",
  },
  {
    event: "sunset",
    lat: -60,
    lon: -150,
    timezone: "Etc/GMT+10",
    date: "2019-11-26",
    utc: "2019-11-27T06:45Z",
  },
];

/** Civil twilight of the same library's generate/riseset/twilight.txt; its origin is not stated there. */
export const SUN_TWILIGHT: readonly SunRow[] = [
  {
    event: "firstLight",
    lat: 28.538,
    lon: -81.379,
    timezone: "America/New_York",
    date: "2021-11-07",
    utc: "2021-11-07T11:17Z",
  },
  {
    event: "lastLight",
    lat: 28.538,
    lon: -81.379,
    timezone: "America/New_York",
    date: "2021-11-07",
    utc: "2021-11-07T23:00Z",
  },
  {
    event: "firstLight",
    lat: 28.538,
    lon: -81.379,
    timezone: "America/New_York",
    date: "2022-06-20",
    utc: "2022-06-20T10:01Z",
  },
  {
    event: "lastLight",
    lat: 28.538,
    lon: -81.379,
    timezone: "America/New_York",
    date: "2022-06-20",
    utc: "2022-06-21T00:52Z",
  },
];

/**
 * Reda & Andreas, Solar Position Algorithm, NREL/TP-560-34302 (2008), appendix A.5: Golden, Colorado. The example is for 17
 * October 2003, but it takes its three events from the UT day: 00:20:19 UT on the 17th is the evening of the 16th there.
 */
export const SUN_NREL: readonly SunRow[] = [
  {
    event: "sunrise",
    lat: 39.742476,
    lon: -105.1786,
    timezone: "America/Denver",
    date: "2003-10-17",
    utc: "2003-10-17T13:12:43Z",
  },
  {
    event: "sunset",
    lat: 39.742476,
    lon: -105.1786,
    timezone: "America/Denver",
    date: "2003-10-16",
    utc: "2003-10-17T00:20:19Z",
  },
];

/** Lowest latitudes, at the June solstice: closed form 90 - obliquity + altitude, obliquity 23.436 degrees. */
export const NO_NIGHT_FROM_DEG = 60.56;
export const NO_SUNSET_FROM_DEG = 65.73;

/**
 * Moon's quarters, US Naval Observatory, whole minutes UTC, as stored with the open library astronomy
 * (generate/moonphase/moonphases.txt).
 */
export const MOON_USNO = [
  { phase: "full moon", utc: "2020-11-30T09:30Z" },
  { phase: "last quarter", utc: "2020-12-08T00:36Z" },
  { phase: "new moon", utc: "2020-12-14T16:16Z" },
  { phase: "first quarter", utc: "2020-12-21T23:41Z" },
  { phase: "new moon", utc: "2030-05-02T14:12Z" },
  { phase: "first quarter", utc: "2030-05-10T17:11Z" },
  { phase: "full moon", utc: "2030-05-17T11:19Z" },
  { phase: "last quarter", utc: "2030-05-24T04:57Z" },
  { phase: "new moon", utc: "2030-06-01T06:21Z" },
] as const;
