import path from "node:path";
import * as polyclip from "polyclip-ts";
import type { Lake } from "../../model/club.ts";
import type { Diagnostic } from "../../model/diagnostic.ts";
import type { FigureName, LakeShape, LonLat, Ring, Sounding } from "../../model/lake-shape.ts";
import type { Memoize, MemoizeRead } from "../../model/memoize.ts";
import { lengthOf_m, positionFault, unwrapLongitude } from "../checks/position-checks.ts";
import type { ClubFile } from "../club-files.ts";
import type { LakeDraft } from "../lake-file.ts";
import { nearestOrList } from "../names.ts";
import { errorAt, startOf, warningAt } from "../problem.ts";
import { type RawShape, readGeojson } from "./geojson-file.ts";
import type { RawLine } from "./positions-and-depths.ts";
import { areaFault, crossingsOf, isInRing, rewindRing, ringFault } from "./ring-faults.ts";
import { readSoundings, shorelineFromSoundings } from "./soundings-file.ts";

/** The figures of a lake's own file that its shape is held against, and their keys. */
const FIGURES: Readonly<Record<FigureName, readonly string[]>> = {
  area: ["area"],
  maxDepth: ["depth", "max"],
  meanDepth: ["depth", "mean"],
};

const figuresOf = (doc: LakeDraft["doc"]): LakeShape["figures"] =>
  Object.fromEntries(Object.entries(FIGURES).map(([name, path]) => [name, doc.spot(path)]));

const positionText = ([lon, lat]: LonLat): string => `[${lon.toFixed(6)}, ${lat.toFixed(6)}]`;

/** True where two rings go through the same positions. */
function isSameRing(one: RawLine["line"], other: RawLine["line"]): boolean {
  const known = new Set(one.map(String));
  return new Set(other.map(String)).size === known.size && other.every((at) => known.has(String(at)));
}

/** Checks every ring alone and against the others; false, with problems, when one cannot be used. */
function areRingsSound(
  polygons: readonly (readonly RawLine[])[],
  { doc }: RawShape,
  problems: Diagnostic[],
): boolean {
  const before = problems.length;
  const rings = polygons.flat();
  const judge = (faultOf: typeof ringFault): boolean => {
    for (const { line, path } of rings) {
      const fault = faultOf(line);
      if (fault !== undefined) problems.push(errorAt(doc.spot(path), fault));
    }
    return problems.length === before;
  };
  if (!judge(ringFault)) return false;
  for (const { rings: pair, edges, at } of crossingsOf(rings.map(({ line }) => line))) {
    const [one, other] = [rings[pair[0]], rings[pair[1]]];
    problems.push(
      errorAt(doc.spot([...(other?.path ?? []), edges[1]]), {
        code: one === other ? "ring-crosses-itself" : "rings-cross",
        message: `${one === other ? "this ring crosses itself" : "this ring crosses another"} at ${positionText(at)}`,
        hint: "move or remove a position next to it, so that no two lines of the shore cross",
      }),
    );
  }
  if (problems.length > before || !judge(areaFault)) return false;
  for (const [outer, ...islands] of polygons)
    for (const { line, path } of islands) {
      const [start] = line;
      if (outer === undefined || start === undefined || isInRing(start, outer.line)) continue;
      problems.push(
        errorAt(doc.spot(path), {
          code: "island-outside",
          ...(isSameRing(line, outer.line)
            ? {
                message: "this island is the whole lake: it has the lake's own shoreline",
                hint: "remove this ring",
              }
            : {
                message: "this island lies outside its lake",
                hint: "move it, or draw it as a part of the lake of its own in a MultiPolygon",
              }),
        }),
      );
    }
  return problems.length === before;
}

/** Basins that meet at 180 degrees are one lake that was cut there, as RFC 7946 asks. */
function joinAtAntimeridian(polygons: readonly (readonly Ring[])[]): readonly (readonly Ring[])[] {
  const isCut = polygons.length > 1 && polygons.flat(2).some(([lon]) => Math.abs(lon) === 180);
  if (!isCut) return polygons;
  const [first, ...rest] = polygons.map((polygon) =>
    polygon.map((ring) => ring.map(([x, y]): [number, number] => [x, y])),
  );
  return first === undefined ? [] : polyclip.union(first, ...rest);
}

const GEOJSON_ORDER = "[longitude, latitude], longitude first";

/** A GeoJSON shape beside its lake; undefined, with problems, when its shoreline cannot be used. */
function placedShape(
  raw: RawShape,
  position: Lake["position"],
  problems: Diagnostic[],
): Omit<LakeShape, "soundings" | "figures"> | undefined {
  const here: LonLat = [position.lon, position.lat];
  const beside = (line: readonly LonLat[]): LonLat[] => line.map((place) => unwrapLongitude(place, here));
  if (raw.shoreline.length === 0) return undefined;
  const shores = raw.shoreline.flatMap((polygon) => polygon.flatMap(({ line }) => line));
  const fault = positionFault(shores, here, GEOJSON_ORDER);
  if (fault !== undefined) {
    problems.push(errorAt(raw.doc.spot([...(raw.shoreline[0]?.[0]?.path ?? []), 0]), fault));
    return undefined;
  }
  const length_m = lengthOf_m(shores, here);
  for (const { at, where } of raw.marks) {
    const stray = positionFault([at], here, GEOJSON_ORDER, length_m);
    if (stray !== undefined) problems.push(errorAt(where, stray));
  }
  const polygons = raw.shoreline.map((polygon) =>
    polygon.map(({ line, path }) => ({ line: beside(line), path })),
  );
  if (!areRingsSound(polygons, raw, problems)) return undefined;
  return {
    where: startOf(raw.doc.file),
    shoreline: joinAtAntimeridian(
      polygons.map((polygon) => polygon.map(({ line }, i) => rewindRing(line, i === 0))),
    ),
    contours: raw.contours.map(({ depth_m, line, path }) => ({
      depth_m,
      line: beside(line),
      where: raw.doc.roughSpot(path),
    })),
    marks: raw.marks.map((mark) => ({ ...mark, at: unwrapLongitude(mark.at, here) })),
  };
}

/** Soundings beside their lake; none, with a problem, when they lie elsewhere. */
function placedSoundings(
  csv: ClubFile | null,
  position: Lake["position"],
  problems: Diagnostic[],
): Sounding[] {
  const soundings = csv === null ? [] : readSoundings(csv, problems);
  const here: LonLat = [position.lon, position.lat];
  const fault =
    soundings.length === 0
      ? undefined
      : positionFault(
          soundings.map(({ at }) => at),
          here,
          "lat under lat and lon under lon",
        );
  if (fault === undefined)
    return soundings.map((sounding) => ({ ...sounding, at: unwrapLongitude(sounding.at, here) }));
  problems.push(errorAt(soundings[0]?.where ?? startOf(csv?.file ?? ""), fault));
  return [];
}

/** A shape as its files alone tell it. */
type FiledShape = Omit<LakeShape, "figures">;

interface ShapeNeeds {
  readonly geojson: ClubFile | null;
  readonly csv: ClubFile | null;
  readonly position: Lake["position"];
}

/** Reads and checks the files of one lake's shape: long lists of positions, and every line of a shore held against the others. */
function readShape(needs: ShapeNeeds): { shape: FiledShape | undefined; problems: readonly Diagnostic[] } {
  const problems: Diagnostic[] = [];
  return { shape: shapeOf(needs, problems), problems };
}

function shapeOf({ geojson, csv, position }: ShapeNeeds, problems: Diagnostic[]): FiledShape | undefined {
  const soundings = placedSoundings(csv, position, problems);
  if (geojson !== null) {
    const raw = readGeojson(geojson, problems);
    const placed = raw && placedShape(raw, position, problems);
    return placed && { ...placed, soundings: soundings.filter(({ depth_m }) => depth_m > 0) };
  }
  if (csv === null || soundings.length === 0) return undefined;
  const { file } = csv;
  const shore = shorelineFromSoundings(soundings);
  const depths = soundings.filter(({ depth_m }) => depth_m > 0);
  const [crossing] = crossingsOf([shore]);
  if (shore.length > 0 && crossing === undefined && areaFault(shore) === undefined)
    return {
      where: startOf(file),
      shoreline: [[rewindRing(shore, true)]],
      contours: [],
      soundings: depths,
      marks: [],
    };
  problems.push(
    warningAt(startOf(file), {
      code: "soundings-without-shoreline",
      message:
        crossing === undefined
          ? "there is no shoreline for these soundings: they are not used"
          : `the rows of depth 0, in their order, cross at ${positionText(crossing.at)}: they are no shoreline, and the soundings are not used`,
      hint: `draw ${file.replace(/\.csv$/, ".geojson")}, or add rows of depth 0 in the order you walked the shore`,
    }),
  );
  return undefined;
}

/**
 * Gives each lake the shape its club drew (`lakes/NAME.geojson`) or plumbed (`lakes/NAME.csv`).
 * @param files GeoJSON and CSV files of the lakes folder
 * @param drafts the lake files as they were read
 * @param slugs every lake file's slug, also of files that could not be read
 * @param memory keeps what was read of the same files from one run, and from one edit, to the next
 */
export function attachShapes(
  lakes: readonly Lake[],
  files: readonly ClubFile[],
  drafts: readonly LakeDraft[],
  slugs: readonly string[],
  problems: Diagnostic[],
  { memoize, reading }: { readonly memoize: Memoize; readonly reading: MemoizeRead },
): Lake[] {
  const known = new Set(slugs);
  for (const { file, slug } of files)
    if (!known.has(slug))
      problems.push(
        warningAt(startOf(file), {
          code: "shape-without-lake",
          message: `there is no lake file ${slug}.yaml beside it: it is not used`,
          hint: nearestOrList(slug, slugs, "lakes"),
        }),
      );
  const byName = new Map(files.map((one) => [path.posix.basename(one.file), one]));
  const docs = new Map(drafts.map(({ slug, doc }) => [slug, doc]));
  return lakes.map((lake) => {
    const needs = {
      geojson: byName.get(`${lake.slug}.geojson`) ?? null,
      csv: byName.get(`${lake.slug}.csv`) ?? null,
      position: lake.position,
    };
    const doc = docs.get(lake.slug);
    if (doc === undefined || (needs.geojson === null && needs.csv === null)) return lake;
    const from = [lake, doc, needs.geojson?.text, needs.csv?.text];
    const withShape = (found: Diagnostic[]): Lake => {
      const { shape, problems: ofShape } = memoize("files of a shape", needs, readShape);
      for (const problem of ofShape) found.push(problem);
      return shape === undefined ? lake : { ...lake, shape: { ...shape, figures: figuresOf(doc) } };
    };
    return reading(`shape of ${lake.slug}`, from, withShape, problems);
  });
}
