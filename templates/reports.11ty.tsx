import { hasReports } from "../build/guide/guide-contents.ts";
import type { Guide, GuideLake } from "../build/guide/guide-schema.ts";
import { REPORT_SLIP } from "../build/guide/print-files.ts";
import { reportsText } from "../build/guide/report-words.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { PrintList, Section } from "./_includes/parts.tsx";
import { CatchNote, SeasonsTable } from "./_includes/reports/report-tables.tsx";

/** A lake, and how many reports it has. */
const reportedLake = ({ slug, name, reports }: GuideLake) => ({ slug, name, reports: reports.length });
type ReportedLake = ReturnType<typeof reportedLake>;

/** The lakes with reports, each with a link to all of them. */
function Lakes({ all, sheet }: { all: readonly ReportedLake[]; sheet: PageContext }) {
  const lakes = all
    .filter(({ reports }) => reports > 0)
    .toSorted((a, b) => a.name.localeCompare(b.name, "en"));
  return (
    <Section title="By lake" id="by-lake">
      <ul>
        {lakes.map(({ slug, name, reports }) => (
          <li>
            <a href={sheet.to(ADDRESS.lakeReports(slug))}>{name}</a>{" "}
            <span class="small">{reportsText(reports)}</span>
          </li>
        ))}
      </ul>
    </Section>
  );
}

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: ({ guide }: Data) => hasReports(guide) && ADDRESS.reports,
  inputs: ({ guide }: Data) => ({ seasons: guide.reportSeasons, lakes: guide.lakes.map(reportedLake) }),
} as const;

/** What members reported, season by season and lake by lake. */
export const render = ({ seasons, lakes, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title="Reports"
    description="What members saw and caught, season by season, days without a fish included."
  >
    <h1>Reports</h1>
    <Section title="Seasons" id="seasons">
      <SeasonsTable
        label="Catch season by season"
        seasons={seasons}
        hrefOf={(season) => sheet.to(ADDRESS.reportSeason(season))}
      />
      <CatchNote />
    </Section>
    <Section title="What helps the forecast most" id="still-iced">
      <p>
        Report lakes that are still iced, too. One look at a lake, still iced or not, helps more than another
        opening; a report from the road will do. Stay off the ice.
      </p>
    </Section>
    <Lakes all={lakes} sheet={sheet} />
    <PrintList files={[REPORT_SLIP]} sheet={sheet} />
    <Section title="To follow" id="take">
      <p>
        <a href={sheet.to(ADDRESS.reportsFeed)}>New reports as a feed</a> (Atom), for a feed reader.
      </p>
    </Section>
  </Page>
);
