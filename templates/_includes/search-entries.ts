import { listedTrips } from "../../build/guide/guide-contents.ts";
import type { Guide, GuideLake, GuidePage, GuidePattern, GuideTrip } from "../../build/guide/guide-schema.ts";
import type { ReportSeason } from "../../build/guide/report-seasons-schema.ts";
import { reportsText } from "../../build/guide/report-words.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { dayRange } from "../../build/model/calendar.ts";
import { phaseName } from "../../build/model/phase.ts";

/** One page that search can find. */
export interface SearchEntry {
  readonly name: string;
  readonly kind: "Lake" | "Pattern" | "Trip" | "Reports" | "Chapter" | "Club page";
  /** Told beside the name. */
  readonly about: string;
  readonly address: string;
  /** Whatever else it can be found by. */
  readonly text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"' };

/** The text of HTML made from Markdown. */
const wordsOf = (html: string | null): string =>
  (html ?? "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&(\w+);/g, (entity, name: string) => ENTITIES[name] ?? entity)
    .replace(/\s+/g, " ")
    .trim();

/** Each word of the texts once. */
const joined = (texts: readonly (string | null | undefined)[]): string =>
  [
    ...new Set(
      texts
        .join(" ")
        .toLowerCase()
        .match(/[\p{L}\p{M}\p{N}]+/gu),
    ),
  ].join(" ");

const lakeEntry = (lake: GuideLake): SearchEntry => ({
  name: lake.name,
  kind: "Lake",
  about: lake.region ?? "",
  address: ADDRESS.lake(lake.slug),
  text: joined([
    lake.summary,
    lake.region,
    lake.water,
    lake.access?.text,
    lake.rules?.text,
    ...lake.hazards,
    wordsOf(lake.notes),
  ]),
});

const patternEntry = (pattern: GuidePattern): SearchEntry => ({
  name: pattern.name,
  kind: "Pattern",
  about: pattern.imitates,
  address: ADDRESS.pattern(pattern.slug),
  text: joined([
    pattern.imitates,
    ...pattern.colours,
    ...pattern.ways,
    ...pattern.waters,
    ...pattern.phases.map(phaseName),
    ...pattern.dressing.map(({ material }) => material),
    wordsOf(pattern.notes),
  ]),
});

const tripEntry = (trip: GuideTrip): SearchEntry => ({
  name: trip.name,
  kind: "Trip",
  about: dayRange(trip.from, trip.to),
  address: ADDRESS.trip(trip.slug),
  text: joined([...(trip.days[0]?.lakes.map(({ name }) => name) ?? []), wordsOf(trip.notes)]),
});

const lakeReportsEntry = ({ slug, name, reports }: GuideLake): SearchEntry => ({
  name: `${name}: reports`,
  kind: "Reports",
  about: reportsText(reports.length),
  address: ADDRESS.lakeReports(slug),
  text: joined(
    reports.flatMap(({ notes, catches, samples }) => [
      notes,
      ...catches.map((row) => row.name),
      ...samples.flat().map(({ food }) => food),
    ]),
  ),
});

const seasonReportsEntry = ({ season, reports }: ReportSeason): SearchEntry => ({
  name: `Reports of ${season}`,
  kind: "Reports",
  about: reportsText(reports),
  address: ADDRESS.reportSeason(season),
  text: "",
});

const pageEntry = (page: GuidePage, kind: "Chapter" | "Club page", address: string): SearchEntry => ({
  name: page.title,
  kind,
  about: "",
  address,
  text: joined([wordsOf(page.html)]),
});

const FOLD = new Intl.Collator("en", { sensitivity: "base", numeric: true });

/** Everything that search finds, from A to Z; unlisted trips are not in it. */
export const searchEntries = (guide: Guide): SearchEntry[] =>
  [
    ...guide.lakes.map(lakeEntry),
    ...guide.patterns.map(patternEntry),
    ...listedTrips(guide).map(tripEntry),
    ...guide.lakes.filter(({ reports }) => reports.length > 0).map(lakeReportsEntry),
    ...guide.reportSeasons.map(seasonReportsEntry),
    ...guide.chapters.map((page) => pageEntry(page, "Chapter", ADDRESS.chapter(page.slug))),
    ...guide.pages.map((page) => pageEntry(page, "Club page", ADDRESS.clubPage(page.slug))),
  ].sort((a, b) => FOLD.compare(a.name, b.name) || (a.address < b.address ? -1 : 1));
