import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** Files of a club folder by their path in it. */
export type ClubFiles = Map<string, string | Uint8Array>;

/** Small enough to be read thousands of times: one lake that was plumbed, one that was drawn, and one of each other kind. */
const LAKES = ["thimblerig", "cairnlight"];
const KEPT = new Set([
  "club.yaml",
  "rigs.yaml",
  "pages/etiquette.md",
  "trips/over-the-pass.yaml",
  "patterns/amber-scud.yaml",
  "patterns/booby.yaml",
  "patterns/micro-leech.yaml",
  "lakes/thimblerig.yaml",
  "lakes/thimblerig.csv",
  "lakes/cairnlight.yaml",
  "lakes/cairnlight.geojson",
  "reports/2024.csv",
  "reports/2026.yaml",
]);

const reportsOfLakes = (text: string): string =>
  text
    .split(/^(?=- lake: )/m)
    .filter((entry) => LAKES.some((lake) => entry.startsWith(`- lake: ${lake}\n`)))
    .join("");

/** The headings of the club's form, and one row for a lake that is kept. */
const formOfLakes = (text: string): string =>
  `${text.split("\n")[0]}\n5/12/2024 21:03:05,Thimblerig Lake,5/11/2024,off,turnover,49,2,2,booby 1 in 2 h,"scud 15; scud 8",Brown.\n`;

/** The shoreline, the marks and every fourth contour. */
function fewerContours(text: string): string {
  const shape = JSON.parse(text) as { features: { properties: { kind: string } }[] };
  return JSON.stringify({
    ...shape,
    features: shape.features.filter(({ properties }, i) => properties.kind !== "contour" || i % 4 === 1),
  });
}

/** The rows of the shore and every fourth of the others. */
const fewerSoundings = (text: string): string =>
  text
    .split("\n")
    .filter((row, i) => !/,[^0,]*[1-9.][^,]*$/.test(row) || i % 4 === 0 || !/^\d/.test(row))
    .join("\n");

const smaller = (file: string, text: string): string => {
  if (file.endsWith(".geojson")) return fewerContours(text);
  if (file === "reports/2024.csv") return formOfLakes(text);
  if (file.endsWith(".csv")) return fewerSoundings(text);
  if (file.startsWith("reports/")) return reportsOfLakes(text);
  if (file.startsWith("trips/"))
    return text.replace(/^lakes: .*$/m, `lakes: [${LAKES.join(", ")}]`).replace(/^unlisted: .*\n/m, "");
  return text;
};

/** The demonstration club, cut down, the files otherwise as they were written. */
export function baseClub(): ClubFiles {
  const files: ClubFiles = new Map();
  for (const name of readdirSync("demo-data", { recursive: true, encoding: "utf8" }).sort()) {
    const file = name.replaceAll(path.sep, "/");
    if (!KEPT.has(file)) continue;
    const text = readFileSync(path.join("demo-data", name), "utf8");
    files.set(file, smaller(file, text));
  }
  return files;
}

/** Which shape files stand beside the lakes. */
export type Shapes = "none" | "plumbed" | "drawn" | "both";

/** The club without the shape files that are not asked for. */
export const withShapeFiles = (files: ClubFiles, shapes: Shapes): ClubFiles =>
  new Map(
    [...files].filter(
      ([name]) =>
        (!/^lakes.*\.csv$/.test(name) || shapes === "plumbed" || shapes === "both") &&
        (!name.endsWith(".geojson") || shapes === "drawn" || shapes === "both"),
    ),
  );
