import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import type { Contour, DrawnShape, LonLat, Sounding } from "../model/lake-shape.ts";
import {
  buildGrid,
  type DepthField,
  depthField,
  type Grid,
  type KnownDepths,
  type Site,
  triangulate,
} from "./bathymetric-grid.ts";
import { measureOutline, type Outline } from "./morphometry.ts";
import { type Plane, type Point, planeAbout, resampleLine } from "./plane.ts";
import { distanceToShore_m, type ScanLines, scanLinesTowards } from "./scan-lines.ts";

/** A lake laid out on its plane. */
export interface Basin {
  readonly outline: Outline;
  readonly plane: Plane;
  /** Closed rings, water on their left. */
  readonly polygons: readonly (readonly (readonly Point[])[])[];
  readonly rings: readonly (readonly Point[])[];
  /** Absent where no depth is known. */
  readonly depths?: {
    readonly grid: Grid;
    readonly field: DepthField;
    /** The deepest place known. */
    readonly deepest_m: number;
  };
}

const isClosed = (line: readonly LonLat[]): boolean =>
  line.length > 3 && line[0]?.[0] === line.at(-1)?.[0] && line[0]?.[1] === line.at(-1)?.[1];

const warning = (where: SourceSpot, code: string, message: string, hint: string): Diagnostic => ({
  ...where,
  severity: "warning",
  code,
  message,
  hint,
});

/** The middle of the frame around places. */
function middleOf(places: readonly LonLat[]): LonLat {
  const frame = places.reduce(
    ({ west, south, east, north }, [lon, lat]) => ({
      west: Math.min(west, lon),
      south: Math.min(south, lat),
      east: Math.max(east, lon),
      north: Math.max(north, lat),
    }),
    { west: 360, south: 90, east: -360, north: -90 },
  );
  return [(frame.west + frame.east) / 2, (frame.south + frame.north) / 2];
}

/** A contour may stray this far over the shoreline, drawn by another hand: metres, and a share of the lake's size. */
const STRAY_M = 5;
const STRAY_SHARE = 0.01;

/** Contour points, those on land left out and reported where they lie far from the water. */
function contourSites(
  contours: readonly Contour[],
  { plane, cell_m, cuts, shore, size_m }: Surroundings,
  problems: Diagnostic[],
): Site[] {
  let nearest: ReturnType<typeof triangulate> | undefined;
  const ashore_m = ({ x, y }: Point): number => {
    nearest ??= triangulate(shore);
    const land = shore[nearest.find(x, y)];
    return land === undefined ? 0 : Math.hypot(land.x - x, land.y - y);
  };
  return contours.flatMap(({ depth_m, line, where }) => {
    const points = resampleLine(line.map(plane.toPlane), cell_m / 2, cell_m);
    const afloat = points.filter((point) => distanceToShore_m(cuts, point) > 0);
    const onLand =
      points.length === afloat.length ? [] : points.filter((point) => distanceToShore_m(cuts, point) === 0);
    const farthest_m = onLand.reduce((most, point) => Math.max(most, ashore_m(point)), 0);
    if (farthest_m > Math.max(STRAY_M, STRAY_SHARE * size_m))
      problems.push(
        warning(
          where,
          "contour-outside-shoreline",
          `this contour runs up to ${Math.round(farthest_m)} m outside the shoreline`,
          "correct one of the two; its part on land is not used",
        ),
      );
    return afloat.map((point) => ({ ...point, depth_m }));
  });
}

/** Soundings on the water; those on land are reported together. */
function soundingSites(
  soundings: readonly Sounding[],
  { plane, cuts }: Surroundings,
  problems: Diagnostic[],
): Site[] {
  const placed = soundings.map(({ at, depth_m, where }) => ({ ...plane.toPlane(at), depth_m, where }));
  const ashore = placed.filter((point) => point.depth_m > 0 && distanceToShore_m(cuts, point) === 0);
  const [first] = ashore;
  if (first !== undefined)
    problems.push(
      warning(
        first.where,
        "sounding-on-land",
        ashore.length === 1
          ? "this sounding lies outside the shoreline"
          : `${ashore.length} soundings lie outside the shoreline; this is the first`,
        "correct their places or the shoreline; they are not used",
      ),
    );
  return placed.flatMap(({ x, y, depth_m }) =>
    depth_m > 0 && distanceToShore_m(cuts, { x, y }) > 0 ? [{ x, y, depth_m }] : [],
  );
}

interface Surroundings {
  readonly plane: Plane;
  readonly cell_m: number;
  readonly cuts: ScanLines;
  readonly shore: readonly Point[];
  readonly size_m: number;
}

/**
 * Lays a lake out on its plane and interpolates its depths.
 * @param greatest_m the club's own figure of the greatest depth
 */
export function buildBasin(shape: DrawnShape, greatest_m: number | undefined, problems: Diagnostic[]): Basin {
  const outline = measureOutline(shape);
  const plane = planeAbout(middleOf(shape.shoreline.flat(2)));
  const polygons = shape.shoreline.map((polygon) => polygon.map((ring) => ring.map(plane.toPlane)));
  const rings = polygons.flat();
  const basin = { outline, plane, polygons, rings };
  if (shape.contours.length === 0 && shape.soundings.length === 0) return basin;

  const grid = buildGrid(rings, outline.area_m2);
  const around: Surroundings = {
    plane,
    cell_m: grid.cell_m,
    cuts: scanLinesTowards(rings, 90),
    shore: rings.flatMap((ring) => resampleLine(ring, grid.cell_m / 2, grid.cell_m)),
    size_m: Math.sqrt(outline.area_m2),
  };
  const sites = [
    ...contourSites(shape.contours, around, problems),
    ...soundingSites(shape.soundings, around, problems),
  ];
  if (sites.length === 0) return basin;
  const known = sites.reduce((most, { depth_m }) => Math.max(most, depth_m), 0);
  const deepest_m = Math.max(known, greatest_m ?? 0);
  const deepestRings = shape.contours
    .filter(({ depth_m, line }) => depth_m === known && isClosed(line))
    .map(({ line }) => line.map(plane.toPlane));
  const tip: KnownDepths["tip"] =
    deepest_m > known && deepestRings.length > 0 ? tipIn(deepestRings, deepest_m) : undefined;
  const field = depthField({ shore: around.shore, sites, ...(tip === undefined ? {} : { tip }) }, grid);
  return { ...basin, depths: { grid, field, deepest_m } };
}

function tipIn(rings: readonly (readonly Point[])[], depth_m: number): NonNullable<KnownDepths["tip"]> {
  const cuts = scanLinesTowards(rings, 90);
  return { depth_m, holds: (point) => distanceToShore_m(cuts, point) > 0 };
}
