import { power } from "../../model/power.ts";

/** How a past season's openings are reported when the forecast is scored. */
export const REPORTING_MODES = ["perfect", "dates4", "delay4", "offonly"] as const;
export type ReportingMode = (typeof REPORTING_MODES)[number];

/** One simulated report of a lake; a dated one names the day of opening itself. */
export interface SimulatedReport {
  readonly ice: "on" | "off" | "dated";
  readonly day: number;
}

/** What a lake's watchers report of one season. */
export interface SimulatedLake {
  /** Day on which the opening becomes known; `undefined` where it never is. */
  readonly reportedOpen: number | undefined;
  /** All that is known by a day. */
  knownBy(today: number): readonly SimulatedReport[];
}

/**
 * FNV-1a hash of a text's UTF-8 bytes, 32 bits.
 * @source G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, The FNV Non-Cryptographic Hash Algorithm, draft-eastlake-fnv
 */
function fnv1a32(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
}

/**
 * Finaliser of MurmurHash3, 32 bits: mixes a hash's bits.
 * @source A. Appleby, MurmurHash3, fmix32; public domain
 */
function fmix32(value: number): number {
  let hash = value;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}

/** A number from 0 to 1 that depends on season, lake and purpose alone: no order of drawing matters. */
export const uniformOf = (season: number, slug: string, purpose: string): number =>
  fmix32(fnv1a32(`${season}|${slug}|${purpose}`)) / power(2, 32);

/** Share of lakes that send no report in a season. */
const SILENT = 0.3;
/** Widest gap between the last visit to ice and the first to open water, days; and mean delay of a report. */
const WIDEST_D = 4;
const MEAN_DELAY_D = 4;
/** Oldest a report of ice is, days. */
const OLDEST_LOOK_D = 8;

/**
 * How one lake's opening on `day` is reported.
 * - perfect: its day, and "still iced" every day until then
 * - dates4: the last look at ice and the first at open water, up to four days apart; three lakes in ten say nothing
 * - delay4: open water some days late, four in the mean; and a look at ice; three in ten say nothing
 * - offonly: open water as in delay4, no look at ice, every lake reports
 */
export function simulatedLake(mode: ReportingMode, season: number, slug: string, day: number): SimulatedLake {
  const u = (purpose: string): number => uniformOf(season, slug, purpose);
  const lastLook = (today: number): SimulatedReport => ({
    ice: "on",
    day: Math.min(today, day - 1) - Math.floor(OLDEST_LOOK_D * u("lag")),
  });
  if (mode === "perfect")
    return {
      reportedOpen: day,
      knownBy: (today) => [today < day ? { ice: "on", day: today } : { ice: "dated", day }],
    };
  if (mode !== "offonly" && u("silent") < SILENT) return { reportedOpen: undefined, knownBy: () => [] };
  if (mode === "dates4") {
    const width = 1 + Math.floor(WIDEST_D * u("width"));
    const iced = day - 1 - Math.floor(width * u("place"));
    const off = iced + width;
    return {
      reportedOpen: off,
      knownBy: (today) =>
        today < off
          ? [lastLook(today)]
          : [
              { ice: "on", day: iced },
              { ice: "off", day: off },
            ],
    };
  }
  const off = day + Math.floor(-MEAN_DELAY_D * Math.log(1 - u("delay")));
  const looks = (today: number): SimulatedReport[] => (mode === "delay4" ? [lastLook(today)] : []);
  return {
    reportedOpen: off,
    knownBy: (today) => [...looks(today), ...(today < off ? [] : [{ ice: "off" as const, day: off }])],
  };
}
