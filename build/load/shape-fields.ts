import type { z } from "zod";
import type { LonLat } from "../model/lake-shape.ts";
import { DEEPEST } from "./lake-schema.ts";
import { type Fault, isFault } from "./problem.ts";
import { quantity } from "./quantity.ts";
import { REFUSALS } from "./written.ts";

const LIMITS = { example: "10 ft", most: DEEPEST };
const contourDepth = quantity("length", { description: "Depth of a contour.", above: "0 m", ...LIMITS });
const soundingDepth = quantity("length", { description: "Depth of a sounding.", least: "0 m", ...LIMITS });

function readDepth(raw: unknown, schema: z.ZodType<number>): number | Fault {
  if (typeof raw === "number" && raw < 0) return aboveWater(String(raw));
  if (typeof raw === "string" && raw.trim().startsWith("-")) return aboveWater(raw.trim());
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  const [issue] = result.error.issues;
  const { fault } = (issue?.code === "custom" ? issue.params : undefined) ?? {};
  if (isFault(fault)) return fault;
  return (
    REFUSALS.get(schema)?.refuse(raw) ?? {
      code: "not-a-quantity",
      message: "this is not a depth",
      hint: `write it like ${LIMITS.example}`,
    }
  );
}

const aboveWater = (written: string): Fault => ({
  code: "depth-above-water",
  message: `${written} lies above the water`,
  hint: `depths count downwards: write ${written.replace(/^-\s*/, "")}`,
});

/** A contour's depth in metres, or what is wrong with it. */
export const readContourDepth = (raw: unknown): number | Fault =>
  raw === undefined
    ? {
        code: "missing-key",
        message: "this contour has no depth",
        hint: `add “"depth": "${LIMITS.example}"” to its properties`,
      }
    : readDepth(raw, contourDepth);

/** A sounding's depth in metres, 0 on the shore, or what is wrong with it. */
export const readSoundingDepth = (raw: unknown): number | Fault => readDepth(raw, soundingDepth);

/** A GeoJSON position; undefined when it is none. A third number, height, is passed over. */
export function readPosition(raw: unknown): LonLat | undefined {
  if (!Array.isArray(raw)) return undefined;
  const [lon, lat]: readonly unknown[] = raw;
  return typeof lon === "number" && typeof lat === "number" && Number.isFinite(lon) && Number.isFinite(lat)
    ? [lon, lat]
    : undefined;
}
