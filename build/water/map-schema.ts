import { z } from "zod";
import { MARK_KINDS } from "../model/lake-shape.ts";

const lonLatSchema = z.tuple([z.number(), z.number()]);

/** GeoJSON coordinates of a line. */
export const lineSchema = z.array(lonLatSchema);
export type Line = z.infer<typeof lineSchema>;

/** GeoJSON coordinates of a MultiPolygon: outer rings counter-clockwise, islands clockwise. */
export const multiPolygonSchema = z.array(z.array(lineSchema));
export type MultiPolygon = z.infer<typeof multiPolygonSchema>;

/** What can be drawn of a lake. */
export const lakeMapSchema = z
  .strictObject({
    shoreline: multiPolygonSchema,
    contours: z
      .array(z.strictObject({ depth_m: z.number(), lines: z.array(lineSchema) }))
      .meta({ description: "Lines of equal depth, shallow first." }),
    contoursBy: z
      .enum(["club", "soundings"])
      .nullable()
      .meta({ description: "Drawn by the club, or worked out from its soundings; null without depths." }),
    marks: z.array(
      z.strictObject({
        mark: z.enum(MARK_KINDS),
        name: z.string().nullable(),
        lon: z.number(),
        lat: z.number(),
      }),
    ),
  })
  .meta({
    description:
      "Simplified for drawing; coordinates as in GeoJSON (RFC 7946), longitude first, except that a lake across the antimeridian is not cut: it goes on past 180 or before -180.",
  });
export type LakeMap = z.infer<typeof lakeMapSchema>;
