import { inputSchemas, schemaFile } from "../input/json-schemas.ts";
import { slugOf } from "../input/names.ts";
import { dateOfSeasonDay, type Hemisphere } from "../model/calendar.ts";
import {
  clubYaml,
  lakeYaml,
  patternYaml,
  reportsYaml,
  rigsYaml,
  type TripBegun,
  tripYaml,
} from "./scaffold-templates.ts";

/**
 * A workflow that builds the guide and puts it on the host's own web space after every change.
 * @param folder the club folder, inside a copy of this program
 */
const publishYaml = (
  folder: string,
): string => `# Builds the guide and publishes it whenever something changes. To use it, keep the program and this club folder in
# one repository, copy this file to .github/workflows/ at its top, and choose “GitHub Actions” as the source of Pages
# in the repository's settings. The host tells the guide's address; for one of your own, write it behind --base-url.

name: Publish the guide
on:
  push:
    branches: [main]
  workflow_dispatch:
permissions:
  contents: read
  pages: write
  id-token: write
concurrency:
  group: pages
jobs:
  publish:
    runs-on: ubuntu-latest
    environment:
      name: github-pages
      url: \${{ steps.published.outputs.page_url }}
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with: { node-version: 20, cache: npm }
      - run: npm ci
      - id: pages
        uses: actions/configure-pages@v5
      - run: npm run guide -- --data ${folder} --base-url "\${{ steps.pages.outputs.base_url }}/"
      - uses: actions/upload-pages-artifact@v3
        with: { path: site }
      - id: published
        uses: actions/deploy-pages@v4
`;

/** What `npm run new` can begin. */
export const SCAFFOLD_KINDS = ["lake", "pattern", "trip", "club"] as const;
export type ScaffoldKind = (typeof SCAFFOLD_KINDS)[number];

export interface ScaffoldFile {
  /** Relative to the club folder; for a club, to the folder it is made in. With forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** The club something new is begun for. */
export interface ScaffoldClub {
  readonly season: number;
  readonly side: Hemisphere;
  /** Slugs of the lakes it has already. */
  readonly lakes: readonly string[];
}

const FIRST_LAKE = "Our First Lake";
const FIRST_PATTERN = "Our First Pattern";
/** First and last day of a trip until somebody sets them, days of the season: 29 to 31 May in the north. */
const TRIP_DAYS = [149, 151] as const;

const tripOf = ({ season, side, lakes: [lake] }: ScaffoldClub): TripBegun => ({
  from: dateOfSeasonDay(TRIP_DAYS[0], season, side),
  to: dateOfSeasonDay(TRIP_DAYS[1], season, side),
  lake,
});

/**
 * Ready-to-edit files with comments, which can be built as they are; none when the name holds no letter or digit that a
 * file name can have.
 */
export function scaffold(kind: ScaffoldKind, name: string, club: ScaffoldClub): ScaffoldFile[] {
  const slug = slugOf(name);
  if (slug === "") return [];
  switch (kind) {
    case "lake":
      return [{ path: `lakes/${slug}.yaml`, text: lakeYaml(name, club.season) }];
    case "pattern":
      return [{ path: `patterns/${slug}.yaml`, text: patternYaml(name) }];
    case "trip":
      return [{ path: `trips/${slug}.yaml`, text: tripYaml(name, tripOf(club)) }];
    case "club":
      return clubFolder(name, slug, club.season).map((file) => ({ ...file, path: `${slug}/${file.path}` }));
  }
}

function clubFolder(name: string, folder: string, season: number): ScaffoldFile[] {
  const lake = slugOf(FIRST_LAKE);
  const club: ScaffoldClub = { season, side: "north", lakes: [lake] };
  return [
    { path: "club.yaml", text: clubYaml(name, season) },
    ...scaffold("lake", FIRST_LAKE, club),
    ...scaffold("pattern", FIRST_PATTERN, club),
    ...scaffold("trip", "Our First Trip", club),
    { path: `reports/${season}.yaml`, text: reportsYaml(season, lake, slugOf(FIRST_PATTERN)) },
    { path: "rigs.yaml", text: rigsYaml() },
    { path: ".github/workflows/publish.yml", text: publishYaml(folder) },
  ];
}

/** The schemas by which an editor completes and explains the keys; relative to the club folder. The program's, not the club's: written anew each time. */
export const editorSchemas = (): ScaffoldFile[] =>
  Object.entries(inputSchemas()).map(([kind, schema]) => ({
    path: schemaFile(kind),
    text: `${JSON.stringify(schema, null, 2)}\n`,
  }));
