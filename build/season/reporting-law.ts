import { type CalendarDate, type Hemisphere, seasonDay, seasonOf } from "../model/calendar.ts";
import { power } from "../model/power.ts";
import { iceOffBySeason, isExact } from "./records.ts";
import type { SeasonEvidence, SeasonLake, SeasonReport } from "./season-evidence.ts";

/**
 * How long an opening waits for its first report: a Pareto law of the second kind (Lomax), survival `(1 + g / theta_d)^-shape`. It is an
 * exponential delay whose rate is Gamma-distributed, so observed delays update it in closed form.
 */
export interface DelayLaw {
  readonly shape: number;
  readonly theta_d: number;
}

/** Before any delay is known. Judgement: at 2, 4 and 8 days lakes without a report scored 1.63, 1.69 and 2.00 days CRPS. */
export const USUAL_DELAY: DelayLaw = { shape: 1, theta_d: 4 };

/** Delays weigh in full up to so many, and as so many beyond: the tail stays heavy. Judgement. */
const FULL_WEIGHT_DELAYS = 4;

/** Days beyond which a longer delay is no less likely. */
const LONGEST_DELAY_D = 40;

/** The law after observed delays, whole days; a report before the recorded opening counts as no delay. */
export function learntDelay(delays_d: readonly number[]): DelayLaw {
  const weight = Math.min(1, FULL_WEIGHT_DELAYS / delays_d.length);
  const sum = delays_d.reduce((all, delay) => all + Math.max(0, delay), 0);
  return delays_d.length === 0
    ? USUAL_DELAY
    : {
        shape: USUAL_DELAY.shape + weight * delays_d.length,
        theta_d: USUAL_DELAY.theta_d + weight * sum,
      };
}

/** Chance that an opening is still unreported so many days later. */
export const delaySurvival = ({ shape, theta_d }: DelayLaw, delay_d: number): number =>
  power(1 + Math.min(delay_d, LONGEST_DELAY_D) / theta_d, -shape);

/** Density of the delay in proportion to that of no delay. */
export const delayDensityRatio = ({ shape, theta_d }: DelayLaw, delay_d: number): number =>
  power(1 + Math.min(delay_d, LONGEST_DELAY_D) / theta_d, -(shape + 1));

/** Beta prior of the chance that an opening of a lake would be reported. Judgement. */
const VISITED = { yes: 1.2, no: 0.8 };
/** What an owner's word is worth: `watched: yes` and `no`. */
const WATCHED_CHANCE = { yes: 0.95, no: 0 };

/**
 * Chance that somebody looks at a lake and would report its opening.
 * @param springs past springs with reports of ice; `visited` of them had one of this lake
 * @param seenThisSpring true when it was reported iced or partly open this spring
 */
export const watchChance = (springs: number, visited: number, seenThisSpring: boolean): number => {
  const seen = seenThisSpring ? 1 : 0;
  return (VISITED.yes + visited + seen) / (VISITED.yes + VISITED.no + springs + seen);
};

/** Chance of no report of a lake that opened so many days before the club's latest one. */
export const silenceChance = (watched: number, delay: DelayLaw, days: number): number =>
  1 - watched + watched * delaySurvival(delay, Math.max(0, days));

/** What a club's past springs say of its reporting. */
export interface ReportingLaw {
  readonly delay: DelayLaw;
  /** Days from recorded opening to first report, one for each lake and past spring that has both. */
  readonly delays_d: readonly number[];
  readonly delaySeasons: readonly number[];
  /** The past springs with reports of ice. */
  readonly visitSeasons: readonly number[];
  /** In how many of them each lake had one, by slug. */
  readonly visits: ReadonlyMap<string, number>;
}

/** Past springs that visits are counted over. */
const VISIT_SEASONS = 10;

const inOrder = (seasons: Iterable<number>): number[] => [...new Set(seasons)].sort((a, b) => a - b);

type PastReport = SeasonReport & { readonly season: number };

/** Learns delays and visits from all that was known on the as-of date. */
export function learnReporting(
  { season, asOf, lakes, reports }: Pick<SeasonEvidence, "season" | "asOf" | "lakes" | "reports">,
  hemisphere: Hemisphere,
): ReportingLaw {
  const byLake = new Map<string, PastReport[]>(lakes.map(({ slug }) => [slug, []]));
  for (const report of reports) {
    if (report.ice === undefined || report.date > asOf) continue;
    const year = seasonOf(report.date, hemisphere);
    if (year < season) byLake.get(report.lake)?.push({ ...report, season: year });
  }
  const delays = lakes.flatMap((lake) => delaysOf(lake, byLake.get(lake.slug) ?? [], asOf, hemisphere));
  const visited = [...byLake].map(
    ([slug, own]) =>
      [
        slug,
        inOrder(own.map((report) => report.season).filter((year) => year >= season - VISIT_SEASONS)),
      ] as const,
  );
  return {
    delay: learntDelay(delays.map(({ days }) => days)),
    delays_d: delays.map(({ days }) => days),
    delaySeasons: inOrder(delays.map((delay) => delay.season)),
    visitSeasons: inOrder(visited.flatMap(([, seasons]) => seasons)),
    visits: new Map(visited.map(([slug, seasons]) => [slug, seasons.length])),
  };
}

/** Delays of one lake: in each spring with a recorded day, to its first report of open water, unless it was reported iced before. */
function delaysOf(
  lake: SeasonLake,
  reports: readonly PastReport[],
  asOf: CalendarDate,
  hemisphere: Hemisphere,
): { season: number; days: number }[] {
  if (reports.length === 0) return [];
  return [...iceOffBySeason(lake, hemisphere, asOf)].flatMap(([season, opened]) => {
    const own = reports
      .filter((report) => report.season === season)
      .map(({ ice, date }) => ({ ice, day: seasonDay(date, season, hemisphere) }))
      .sort((a, b) => a.day - b.day);
    const first = own.find(({ ice }) => ice === "off");
    if (first === undefined || !isExact(opened)) return [];
    if (own.some(({ ice, day }) => ice === "on" && day < first.day)) return [];
    return [{ season, days: Math.max(0, Math.round(first.day - opened.from)) }];
  });
}

/** How an owner's word, the visits of past springs and this spring's reports make a lake's {@link watchChance}. */
export function watchChanceOf(
  { slug, watched }: Pick<SeasonLake, "slug" | "watched">,
  { visitSeasons, visits }: ReportingLaw,
  seenThisSpring: boolean,
): number {
  if (watched !== undefined) return WATCHED_CHANCE[watched];
  return watchChance(visitSeasons.length, visits.get(slug) ?? 0, seenThisSpring);
}
