import type { Lake } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type FigureName, type LakeShape, measureRing } from "../model/lake-shape.ts";
import { areaText, depthText, type UnitSystem } from "../model/units.ts";

/** What a shoreline measures, on the ellipsoid. */
export interface Outline {
  /** Water without its islands. */
  readonly area_m2: number;
  /** All shores, islands too. */
  readonly shoreline_m: number;
  /** The outer shores alone and what they enclose, islands too. */
  readonly outerShoreline_m: number;
  readonly enclosed_m2: number;
  readonly islands: number;
}

/** Measures a shoreline. Karney (2013), J. Geodesy 87:43. */
export function measureOutline({ shoreline }: Pick<LakeShape, "shoreline">): Outline {
  const rings = shoreline.flatMap((polygon) =>
    polygon.map((ring, i) => ({ isOuter: i === 0, ...measureRing(ring) })),
  );
  const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);
  const outer = rings.filter(({ isOuter }) => isOuter);
  return {
    // Islands run clockwise: their area is negative.
    area_m2: sum(rings.map(({ area_m2 }) => area_m2)),
    shoreline_m: sum(rings.map(({ length_m }) => length_m)),
    outerShoreline_m: sum(outer.map(({ length_m }) => length_m)),
    enclosed_m2: sum(outer.map(({ area_m2 }) => area_m2)),
    islands: rings.length - outer.length,
  };
}

/**
 * Shoreline development: the outer shore's length by that of a circle of the same area, 1 for a round lake.
 * Hutchinson (1957), A Treatise on Limnology I.
 */
export const shorelineDevelopment = (shoreline_m: number, area_m2: number): number =>
  shoreline_m / (2 * Math.sqrt(Math.PI * area_m2));

/** Mean depth in metres by the square root of the area in square kilometres. Osgood (1988), Hydrobiologia 157:69. */
export const osgoodIndex = (meanDepth_m: number, area_km2: number): number =>
  meanDepth_m / Math.sqrt(area_km2);

/**
 * What the index says of how a lake mixes, as a tendency. Bands differ from author to author: below about 4 and above
 * about 9 most agree (Osgood 1988 and state lake reports, from memory).
 */
export function mixingWords(osgood: number): string {
  if (osgood < 4) return "tends to be mixed to the bottom by wind, again and again";
  return osgood <= 9
    ? "in between: strong winds may mix it, calm weeks let it settle in layers"
    : "tends to stay in layers once it has settled";
}

/** How far a lake's own figure may stand from its shape. */
const TOLERATED = 0.15;

interface ShapeFigures {
  readonly area_ha: number;
  /** Deepest place the shape itself knows. */
  readonly deepest_m?: number;
  /** Contours never show how far the bottom goes on below the last of them; soundings do. */
  readonly isSounded: boolean;
  readonly meanDepth_m?: number;
}

interface Pair {
  readonly name: FigureName;
  readonly label: string;
  readonly written: number | undefined;
  readonly measured: number | undefined;
  readonly text: (value: number) => string;
  readonly says: string;
}

/** Warnings where a lake's own figures and its shape are more than 15 % apart, both named. */
export function figureDiagnostics(
  lake: Pick<Lake, "area_ha" | "maxDepth_m" | "meanDepth_m">,
  shape: Pick<LakeShape, "where" | "figures">,
  figures: ShapeFigures,
  units: UnitSystem,
): Diagnostic[] {
  const depth = (value: number): string => depthText(value, units);
  const pairs: readonly Pair[] = [
    {
      name: "area",
      label: "area",
      written: lake.area_ha,
      measured: figures.area_ha,
      text: (value) => areaText(value, units),
      says: "the shoreline encloses",
    },
    {
      name: "maxDepth",
      label: "depth.max",
      written: lake.maxDepth_m,
      measured: figures.deepest_m,
      text: depth,
      says: "the deepest sounding or contour is",
    },
    {
      name: "meanDepth",
      label: "depth.mean",
      written: lake.meanDepth_m,
      measured: figures.meanDepth_m,
      text: depth,
      says: "contours and soundings make it",
    },
  ];
  return pairs.flatMap(({ name, label, written, measured, text, says }): Diagnostic[] => {
    if (written === undefined || measured === undefined) return [];
    const excess = measured / written - 1;
    const isApart =
      name === "maxDepth" && !figures.isSounded ? excess > TOLERATED : Math.abs(excess) > TOLERATED;
    if (!isApart) return [];
    const where = shape.figures[name] ?? shape.where;
    return [
      {
        ...where,
        severity: "warning",
        code: "figure-against-shape",
        message: `${label} is ${text(written)} here, but by ${shape.where.file} ${says} ${text(measured)}`,
        hint: "find out which is right and correct the other",
      },
    ];
  });
}
