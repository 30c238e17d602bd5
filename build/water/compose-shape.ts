import type { Lake } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { DrawnShape, LakeShape, ShapeMark } from "../model/lake-shape.ts";
import type { Memoize } from "../model/memoize.ts";
import type { UnitSystem } from "../model/units.ts";
import { type Basin, buildBasin } from "./basin.ts";
import {
  composeDepths,
  composeZones,
  type PhaseBand,
  roundDepths_m,
  sharesOf,
  toMultiPolygon,
} from "./depths.ts";
import { isobathPolygons, type PlanePolygon } from "./isobands.ts";
import { figureDiagnostics, shorelineDevelopment } from "./morphometry.ts";
import { roundedLine, simplifiedLines, toDecimals } from "./plane.ts";
import type { LakeDepths, LakeMap, LakeSize, LakeWater } from "./water-schema.ts";
import { composeWind } from "./wind.ts";

const M2_PER_HECTARE = 10_000;

/** Points drawn at most, for the shoreline and for all contours. */
const SHORE_POINTS = 600;
const CONTOUR_POINTS = 2000;
/** Finer than a printer's dot on a card, as a share of the lake's size. */
const FINEST = 1 / 2000;

/** The lake's own polygons with few enough points to draw. */
function drawnPolygons({ polygons, outline }: Basin): PlanePolygon[] {
  const tolerance_m = Math.sqrt(outline.area_m2) * FINEST;
  const largest = polygons.toSorted((a, b) => (b[0]?.length ?? 0) - (a[0]?.length ?? 0));
  const points = largest.flat().reduce((sum, ring) => sum + ring.length, 0);
  return largest.map((polygon) => {
    const own = polygon.reduce((sum, ring) => sum + ring.length, 0);
    return simplifiedLines(polygon, tolerance_m, Math.ceil((SHORE_POINTS * own) / points));
  });
}

function drawnContours(
  basin: Basin,
  shape: DrawnShape,
  units: UnitSystem,
): Pick<LakeMap, "contours" | "contoursBy"> {
  const { depths, outline, plane } = basin;
  if (shape.contours.length > 0) {
    const points = shape.contours.reduce((sum, { line }) => sum + line.length, 0);
    const levels = [...new Set(shape.contours.map(({ depth_m }) => depth_m))].sort(
      (one, other) => one - other,
    );
    return {
      contours: levels.map((level) => {
        const lines = shape.contours
          .filter(({ depth_m }) => depth_m === level)
          .map(({ line }) => line.map(plane.toPlane));
        const own = lines.reduce((sum, line) => sum + line.length, 0);
        const drawn = simplifiedLines(
          lines,
          Math.sqrt(outline.area_m2) * FINEST,
          Math.ceil((CONTOUR_POINTS * own) / points),
        );
        return {
          depth_m: toDecimals(level, 4),
          lines: drawn.map((line) => roundedLine(line.map(plane.toLonLat))),
        };
      }),
      contoursBy: "club",
    };
  }
  if (depths === undefined) return { contours: [], contoursBy: null };
  return {
    contours: roundDepths_m(depths.deepest_m, units).map((depth_m) => ({
      depth_m: toDecimals(depth_m, 4),
      lines: toMultiPolygon(isobathPolygons(depths.field, depths.grid, depth_m), basin).flat(),
    })),
    contoursBy: "soundings",
  };
}

const drawnMark = ({ mark, name, at: [lon, lat] }: ShapeMark): LakeMap["marks"][number] => ({
  mark,
  name: name ?? null,
  lon,
  lat,
});

const sizeOf = ({ outline }: Basin): LakeSize => ({
  area_ha: toDecimals(outline.area_m2 / M2_PER_HECTARE, 3),
  shoreline_km: toDecimals(outline.shoreline_m / 1000, 3),
  islands: outline.islands,
  development: toDecimals(shorelineDevelopment(outline.outerShoreline_m, outline.enclosed_m2), 2),
});

export interface ShapeOptions {
  readonly units: UnitSystem;
  /** Depths at which fish are looked for, by phase. */
  readonly bands: readonly PhaseBand[];
  readonly memoize: Memoize;
}

/** What the results of `reckonShape` are kept as. */
export const SHAPE = "shape";

/** All that the reckoning of a shape may look at. */
export interface ShapeInputs {
  readonly shape: DrawnShape;
  /** The club's own figure of the greatest depth. */
  readonly greatest_m: number | null;
  readonly units: UnitSystem;
  readonly bands: readonly PhaseBand[];
}

/** What a shape's reckoning may look at, of a lake and of what is asked. */
export const shapeInputs = (
  { maxDepth_m }: Pick<Lake, "maxDepth_m">,
  { figures: _, ...shape }: LakeShape,
  { units, bands }: Pick<ShapeOptions, "units" | "bands">,
): ShapeInputs => ({
  shape,
  greatest_m: maxDepth_m ?? null,
  units,
  bands: bands.map(({ phase, band: { from_m, to_m } }) => ({ phase, band: { from_m, to_m } })),
});

type Shaped = Pick<LakeWater, "map" | "size" | "zones" | "wind"> & {
  readonly size: LakeSize;
  readonly depths: LakeDepths | null;
};

/** What follows from a drawn shape alone. */
export interface ComputedShape {
  readonly shaped: Shaped;
  readonly problems: readonly Diagnostic[];
}

/** The costly part of a lake: tens of milliseconds. */
export function computeShape({ shape, greatest_m, units, bands }: ShapeInputs): ComputedShape {
  const problems: Diagnostic[] = [];
  const basin = buildBasin(shape, greatest_m ?? undefined, problems);
  const drawn = drawnPolygons(basin);
  const { depths: laid } = basin;
  const shares = laid === undefined ? undefined : sharesOf(laid);
  const shaped: Shaped = {
    map: {
      shoreline: toMultiPolygon(drawn, basin),
      ...drawnContours(basin, shape, units),
      marks: shape.marks.map(drawnMark),
    },
    size: sizeOf(basin),
    depths: laid === undefined || shares === undefined ? null : composeDepths(basin, laid, shares, units),
    zones: laid === undefined || shares === undefined ? [] : composeZones(basin, laid, shares, drawn, bands),
    wind: composeWind({
      rings: basin.rings,
      launches: shape.marks.filter(({ mark }) => mark === "launch").map(({ at }) => basin.plane.toPlane(at)),
      area_m2: basin.outline.area_m2,
      plane: basin.plane,
    }),
  };
  return { shaped, problems };
}

/** What a lake's shape tells, and what in it cannot be right. */
export function composeShape(
  lake: Lake,
  shape: LakeShape,
  options: ShapeOptions,
  problems: Diagnostic[],
): Shaped {
  const { units, memoize } = options;
  const { shaped, problems: found } = memoize(SHAPE, shapeInputs(lake, shape, options), computeShape);
  const known_m = [...shape.contours, ...shape.soundings].reduce(
    (most, { depth_m }) => Math.max(most, depth_m),
    0,
  );
  const { size, depths } = shaped;
  problems.push(
    ...found,
    ...figureDiagnostics(
      lake,
      shape,
      {
        area_ha: size.area_ha,
        isSounded: shape.soundings.length > 0,
        ...(depths === null ? {} : { deepest_m: known_m, meanDepth_m: depths.mean_m }),
      },
      units,
    ),
  );
  return shaped;
}
