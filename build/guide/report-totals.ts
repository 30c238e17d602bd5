import { catchRate, pooled } from "../flies/catch-rates.ts";
import { type CalendarDate, hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { GuideLake } from "./guide-schema.ts";
import type { LakeReports, ReportSeason } from "./report-seasons-schema.ts";

type Report = GuideLake["reports"][number];
type Totals = Omit<LakeReports["seasons"][number], "season">;

/** The season a report of the lake belongs to. */
export const seasonOfReport = (
  { position }: Pick<GuideLake, "position">,
  { date }: { readonly date: CalendarDate },
): number => seasonOf(date, hemisphereOf(position.lat));

/** Fish of a report; a report without a row of catches tells none. */
export const fishOf = ({ catches }: Pick<Report, "catches">): number =>
  catches.reduce((sum, { fish }) => sum + fish, 0);

function totalsOf(reports: readonly Report[]): Totals {
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
export function caughtByPattern(reports: readonly Report[]): LakeReports["caught"] {
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

function eaten(reports: readonly Report[]): Pick<LakeOfSeason, "foods" | "fed" | "empty"> {
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
        return { slug: lake.slug, name: lake.name, ...totalsOf(reports), ...eaten(reports) };
      }),
    }))
    .sort((a, b) => b.season - a.season);
}
