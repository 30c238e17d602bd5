import { writeFile } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { loadClub } from "../../build/input/load-club.ts";
import { QUANTITY_KINDS } from "../../build/model/units.ts";
import { nodeAt } from "../../build/water/bathymetric-grid.ts";
import type { Point } from "../../build/water/plane.ts";
import { roundedLine } from "../../build/water/plane.ts";
import { seeded } from "../seeded-random.ts";
import { DEMO_LOOKS } from "./demo-looks.ts";
import { type LakeLike, lakeLike } from "./invented-lake.ts";
import { contoursOf, geojsonOf, inFeet } from "./lake-geojson.ts";

const DEMO_DIR = "demo-data";
const NOTICE = "Invented, like everything in this folder. Drawn by tests/bench/demo-shapes.ts.";
const HECTARE_M2 = 10_000;

/** Rows of a table of soundings: the deepest place, then places spread over the lake, each the farthest of twenty from the rest. */
function soundingsOf({ bottom, rings, plane }: LakeLike, count: number, random: () => number): string[] {
  if (bottom === undefined) return [];
  const { grid, field } = bottom;
  const placeOf = (node: number): Point => ({
    x: grid.corner.x + (node % grid.columns) * grid.cell_m,
    y: grid.corner.y + Math.floor(node / grid.columns) * grid.cell_m,
  });
  const wet = [...field.keys()].filter((node) => grid.water[node] === 1);
  const deepest = wet.reduce((best, node) => ((field[node] ?? 0) > (field[best] ?? 0) ? node : best));
  const taken: Point[] = [placeOf(deepest)];
  const shore = rings.flat();
  const room = (point: Point): number =>
    Math.min(
      ...taken.map(({ x, y }) => Math.hypot(x - point.x, y - point.y)),
      ...shore.map(({ x, y }) => 1.5 * Math.hypot(x - point.x, y - point.y)),
    );
  while (taken.length < count) {
    const tried = Array.from({ length: 20 }, () =>
      placeOf(wet[Math.floor(random() * wet.length)] ?? deepest),
    );
    taken.push(tried.reduce((best, point) => (room(point) > room(best) ? point : best)));
  }
  return taken.map((point) => {
    const [[lon, lat] = [0, 0]] = roundedLine([plane.toLonLat(point)]);
    return `${lat},${lon},${inFeet(field[nodeAt(grid, point)] ?? 0)}`;
  });
}

function csvOf(lake: LakeLike, count: number, walked: boolean, random: () => number): string {
  const [outer = []] = lake.rings;
  const shore = roundedLine(outer.slice(0, -1).map(lake.plane.toLonLat)).map(
    ([lon, lat]) => `${lat},${lon},0`,
  );
  return [
    `# ${NOTICE}`,
    ...(walked ? ["# Rows of depth 0 are the shore, in the order it was walked."] : []),
    `lat,lon,depth (${QUANTITY_KINDS.length.allowed[1]})`,
    ...(walked ? shore.filter((_, i) => i % 2 === 0) : []),
    ...soundingsOf(lake, count, random),
    "",
  ].join("\n");
}

/** The shape files of the demo club, by their place in the project. */
export async function demoShapes(): Promise<Map<string, string>> {
  const { club } = await loadClub(DEMO_DIR);
  const files = new Map<string, string>();
  for (const lake of club?.lakes ?? []) {
    const look = DEMO_LOOKS[lake.slug];
    if (look === undefined || lake.area_ha === undefined) continue;
    const random = seeded(look.seed);
    const like = lakeLike(
      look,
      {
        position: lake.position,
        area_m2: lake.area_ha * HECTARE_M2,
        ...(lake.maxDepth_m === undefined ? {} : { maxDepth_m: lake.maxDepth_m }),
        ...(lake.meanDepth_m === undefined ? {} : { meanDepth_m: lake.meanDepth_m }),
      },
      random,
    );
    const place = (ending: string): string => path.posix.join(DEMO_DIR, "lakes", `${lake.slug}${ending}`);
    const contours = look.soundings === undefined ? contoursOf(like, lake.maxDepth_m ?? 0) : [];
    if (look.soundings?.walked !== true)
      files.set(place(".geojson"), geojsonOf(like, contours, look.marks, NOTICE));
    if (look.soundings !== undefined)
      files.set(place(".csv"), csvOf(like, look.soundings.count, look.soundings.walked, random));
  }
  return files;
}

/** Run by itself it writes the files: `npm run demo-shapes`. */
if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  for (const [file, text] of await demoShapes()) await writeFile(file, text);
