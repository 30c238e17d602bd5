import { publishYaml } from "./scaffold-publish.ts";
import { clubYaml, lakeYaml, patternYaml, reportsYaml, rigsYaml, tripYaml } from "./scaffold-texts.ts";
import { slugOf } from "./slug.ts";

/** What `npm run new` can begin. */
export const SCAFFOLD_KINDS = ["lake", "pattern", "trip", "club"] as const;
export type ScaffoldKind = (typeof SCAFFOLD_KINDS)[number];

export interface ScaffoldFile {
  /** Relative to the club folder; for a club, to the folder it is made in. With forward slashes. */
  readonly path: string;
  readonly text: string;
}

const FIRST_LAKE = "Our First Lake";
const FIRST_PATTERN = "Our First Pattern";

/**
 * Ready-to-edit files with comments; none when the name holds no letter or digit that a file name can have.
 * Everything but a trip can be built as it is; a trip waits for the names of its lakes.
 */
export function scaffold(kind: ScaffoldKind, name: string): ScaffoldFile[] {
  const slug = slugOf(name);
  if (slug === "") return [];
  switch (kind) {
    case "lake":
      return [{ path: `lakes/${slug}.yaml`, text: lakeYaml(name) }];
    case "pattern":
      return [{ path: `patterns/${slug}.yaml`, text: patternYaml(name) }];
    case "trip":
      return [{ path: `trips/${slug}.yaml`, text: tripYaml(name, "name-of-a-lake-file") }];
    case "club":
      return clubFolder(name, slug).map((file) => ({ ...file, path: `${slug}/${file.path}` }));
  }
}

function clubFolder(name: string, folder: string): ScaffoldFile[] {
  const lake = slugOf(FIRST_LAKE);
  return [
    { path: "club.yaml", text: clubYaml(name) },
    ...scaffold("lake", FIRST_LAKE),
    ...scaffold("pattern", FIRST_PATTERN),
    { path: "trips/our-first-trip.yaml", text: tripYaml("Our First Trip", lake) },
    { path: "reports/2026.yaml", text: reportsYaml(lake, slugOf(FIRST_PATTERN)) },
    { path: "rigs.yaml", text: rigsYaml() },
    { path: ".github/workflows/publish.yml", text: publishYaml(folder) },
  ];
}
