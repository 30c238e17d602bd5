import { catchRate, pooled } from "../flies/catch-rates.ts";
import { addDays, type CalendarDate, hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { Lake, Report } from "../model/club.ts";
import type { Mark } from "../season/forecast.ts";
import type { GuideLake } from "./guide-schema.ts";
import type { LakeReports, ReportSeason } from "./report-seasons-schema.ts";

type GuideReport = GuideLake["reports"][number];
type Totals = Omit<LakeReports["seasons"][number], "season">;

/** The season a report of the lake belongs to. */
const seasonOfReport = (
  { position }: Pick<GuideLake, "position">,
  { date }: { readonly date: CalendarDate },
): number => seasonOf(date, hemisphereOf(position.lat));

/** Fish of a report; a report without a row of catches tells none. */
export const fishOf = ({ catches }: Pick<GuideReport, "catches">): number =>
  catches.reduce((sum, { fish }) => sum + fish, 0);

function totalsOf(reports: readonly GuideReport[]): Totals {
  const told = reports.filter(({ catches }) => catches.length > 0);
  const timed = told.flatMap((report) =>
    report.rodHours === null ? [] : [{ fish: fishOf(report), rodHours: report.rodHours }],
  );
  return {
    reports: reports.length,
    told: told.length,
    fish: told.reduce((sum, report) => sum + fishOf(report), 0),
    rate: catchRate(pooled(timed)),
  };
}

/** Groups in the order in which their keys first come. */
function groupsBy<Item, Key>(items: readonly Item[], keyOf: (item: Item) => Key): [Key, Item[]][] {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return [...groups];
}

/** A lake's seasons with reports, newest first. */
export const lakeSeasons = (lake: Pick<GuideLake, "position" | "reports">): LakeReports["seasons"] =>
  groupsBy(lake.reports, (report) => seasonOfReport(lake, report))
    .map(([season, reports]) => ({ season, ...totalsOf(reports) }))
    .sort((a, b) => b.season - a.season);

/** Fish and rate of each pattern and way, most fish first; where alike, the one fished longest. */
export function caughtByPattern(reports: readonly GuideReport[]): LakeReports["caught"] {
  const rows = reports.flatMap(({ catches }) => catches);
  return groupsBy(rows, ({ pattern, way }) => `${pattern} ${way ?? ""}`)
    .flatMap(([, [first, ...rest]]) => {
      if (first === undefined) return [];
      const all = [first, ...rest];
      const timed = all.flatMap(({ fish, rodHours }) => (rodHours === null ? [] : [{ fish, rodHours }]));
      return [
        {
          pattern: first.pattern,
          name: first.name,
          way: first.way,
          fish: all.reduce((sum, { fish }) => sum + fish, 0),
          rate: catchRate(pooled(timed)),
        },
      ];
    })
    .sort((a, b) => b.fish - a.fish || (b.rate?.rodHours ?? 0) - (a.rate?.rodHours ?? 0));
}

type LakeOfSeason = ReportSeason["lakes"][number];

function throatTotals(reports: readonly GuideReport[]): Pick<LakeOfSeason, "foods" | "fed" | "empty"> {
  const throats = reports.flatMap(({ samples }) =>
    samples.map((sample) => [...new Set(sample.filter(({ count }) => count > 0).map(({ food }) => food))]),
  );
  const fed = throats.filter((foods) => foods.length > 0).length;
  return {
    foods: groupsBy(throats.flat(), (food) => food)
      .map(([food, found]) => ({ food, fish: found.length }))
      .sort((a, b) => b.fish - a.fish),
    fed,
    empty: throats.length - fed,
  };
}

/** The club's seasons with reports, newest first; their lakes in the order given. */
export function reportSeasons(
  lakes: readonly Pick<GuideLake, "slug" | "name" | "position" | "reports">[],
): ReportSeason[] {
  const all = lakes.flatMap((lake) =>
    lake.reports.map((report) => ({ lake, report, season: seasonOfReport(lake, report) })),
  );
  return groupsBy(all, ({ season }) => season)
    .map(([season, rows]) => ({
      season,
      ...totalsOf(rows.map(({ report }) => report)),
      lakes: groupsBy(rows, ({ lake }) => lake).map(([lake, own]) => {
        const reports = own.map(({ report }) => report);
        return { slug: lake.slug, name: lake.name, ...totalsOf(reports), ...throatTotals(reports) };
      }),
    }))
    .sort((a, b) => b.season - a.season);
}

/** What the list needs of a lake. */
export type ListedLake = Pick<GuideLake, "slug" | "name" | "position" | "reports">;

/** One report with all that is needed to point at it. */
export interface ListedReport {
  readonly lake: ListedLake;
  readonly report: GuideLake["reports"][number];
  readonly season: number;
  /**
   * Unlike any other report's: lake and day, "ember-2026-05-12", and for a second one of that day "ember-2026-05-12-2". It stays while
   * the order of one lake's reports of one day does.
   */
  readonly id: string;
}

/** Every report of these lakes, newest first; those of one day in the order of the lakes. */
export function listReports(lakes: readonly ListedLake[]): ListedReport[] {
  return lakes
    .flatMap((lake) =>
      lake.reports.map((report, place) => {
        const before = lake.reports.slice(0, place).filter(({ date }) => date === report.date).length;
        const id = `${lake.slug}-${report.date}${before === 0 ? "" : `-${before + 1}`}`;
        return { lake, report, season: seasonOfReport(lake, report), id };
      }),
    )
    .sort((a, b) => (a.report.date < b.report.date ? 1 : a.report.date > b.report.date ? -1 : 0));
}

/** The last day a report shows ice to have been whole or in part: on the day itself, or on the one before an ice that goes. */
const icedOn = ({ ice, date }: Report): CalendarDate[] =>
  ice === "on" ? [date] : ice === "part" ? [addDays(date, -1)] : [];

/** Ice off, or a phase that only an open lake can be in. */
const isOpen = ({ ice, phase }: Report): boolean =>
  ice === "off" || (ice === undefined && phase !== undefined);

const latest = (dates: readonly CalendarDate[]): CalendarDate | undefined => dates.toSorted().at(-1);

/**
 * Seasons in which reports saw a lake iced and then open, and no row of its file says when it opened, newest first. The fit of past
 * seasons reads rows only, so what stands in reports alone is lost to next year's forecast.
 * @param reports of the lake, up to the as-of date
 * @param marks of the season in progress: reports that they doubt are left out
 */
export function unrecordedIceOff(
  lake: Pick<Lake, "position" | "iceOff">,
  reports: readonly Report[],
  marks: readonly Mark[],
): LakeReports["unrecorded"] {
  const hemisphere = hemisphereOf(lake.position.lat);
  const doubted = new Set(marks.flatMap((mark) => (mark.doubted ? [mark.date] : [])));
  const trusted = reports.filter(({ date }) => !doubted.has(date));
  const seasons = [...new Set(trusted.map(({ date }) => seasonOf(date, hemisphere)))];
  return seasons
    .filter((season) => lake.iceOff.every((row) => row.season !== season))
    .sort((a, b) => b - a)
    .flatMap((season) => {
      const own = trusted.filter(({ date }) => seasonOf(date, hemisphere) === season);
      const by = own
        .filter(isOpen)
        .map(({ date }) => date)
        .toSorted()[0];
      const after = latest(own.flatMap(icedOn));
      return after === undefined || by === undefined || after >= by ? [] : [{ season, after, by }];
    });
}
