import type { Guide, GuideLake } from "../build/guide/guide-schema.ts";
import { type ListedLake, listReports } from "../build/guide/report-seasons.ts";
import type { ReportSeason } from "../build/guide/report-seasons-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { capital, Fact, Section } from "./_includes/parts.tsx";
import { CatchNote, CatchTable, ReportList, TotalCells } from "./_includes/reports/report-tables.tsx";

type LakeOfSeason = ReportSeason["lakes"][number];

/** Foods shown; the guide's data hold the rest. */
const SHOWN_FOODS = 3;

/** "Scud in 4 of 6 fish, leech in 1; 1 empty"; null where no throat was looked into. */
function foodsText({ foods, fed, empty }: LakeOfSeason): string | null {
  const [most, ...others] = foods.slice(0, SHOWN_FOODS);
  const nothing = empty === 0 ? [] : [`${empty} empty`];
  if (most === undefined) return nothing[0] ?? null;
  const rest = others.map(({ food, fish }) => `, ${food} in ${fish}`).join("");
  return [`${capital(most.food)} in ${most.fish} of ${fed} fish${rest}`, ...nothing].join("; ");
}

function LakeByLake({ season, sheet }: { season: ReportSeason; sheet: PageContext }) {
  return (
    <Section title="Lake by lake" id="by-lake">
      <CatchTable
        label="Catch lake by lake"
        of={["Lake", "Reports"]}
        foot={
          season.lakes.length > 1 ? (
            <tr>
              <th scope="row">All lakes</th>
              <TotalCells totals={season} />
            </tr>
          ) : null
        }
      >
        {season.lakes.map((lake) => (
          <tr>
            <th scope="row">
              <a href={sheet.to(ADDRESS.lakeReports(lake.slug))}>{lake.name}</a>
            </th>
            <TotalCells totals={lake} />
          </tr>
        ))}
      </CatchTable>
      <CatchNote />
    </Section>
  );
}

const Eaten = ({ season: { lakes } }: { season: ReportSeason }) =>
  lakes.every(({ fed, empty }) => fed + empty === 0) ? null : (
    <Section title="Eaten" id="eaten">
      <dl>
        {lakes.map((lake) => (
          <Fact name={lake.name}>{foodsText(lake)}</Fact>
        ))}
      </dl>
    </Section>
  );

interface Data {
  readonly guide: Guide;
  readonly season: ReportSeason;
}

/** What the page shows of a lake. */
const listedLake = ({ slug, name, position, reports }: GuideLake): ListedLake => ({
  slug,
  name,
  position,
  reports,
});

export const data = {
  pagination: { data: "guide.reportSeasons", size: 1, alias: "season" },
  permalink: ({ season }: Data) => ADDRESS.reportSeason(season.season),
  inputs: ({ guide, season }: Data) => ({
    season,
    lakes: guide.lakes.filter(({ reports }) => reports.length > 0).map(listedLake),
  }),
} as const;

/** All reports of one season. */
export const render = ({ season, lakes, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title={`Reports of ${season.season}`}
    description={`What members saw and caught in season ${season.season}, lake by lake and day by day.`}
  >
    <h1>Reports of {season.season}</h1>
    <p>
      <a href={sheet.to(ADDRESS.reports)}>All seasons</a>
    </p>
    <LakeByLake season={season} sheet={sheet} />
    <Eaten season={season} />
    <Section title="Newest first" id="reports">
      <ReportList
        reports={listReports(lakes).filter((one) => one.season === season.season)}
        sheet={sheet}
        nameLakes
      />
    </Section>
  </Page>
);
