import type { Lake } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { FigureName, LakeShape } from "../model/lake-shape.ts";
import { areaText, depthText, type UnitSystem } from "../model/units.ts";

/** How far a lake's own figure may stand from its shape. */
const TOLERATED = 0.15;

export interface ShapeFigures {
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
export function figureProblems(
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
