import { z } from "zod";
import { PHASES } from "../model/phase.ts";
import { multiPolygonSchema } from "./map-schema.ts";

/** How large a lake is, by its shoreline. */
export const lakeSizeSchema = z.strictObject({
  area_ha: z.number().meta({ description: "Water without islands, on the WGS 84 ellipsoid." }),
  shoreline_km: z.number().meta({ description: "All shores, islands too." }),
  islands: z.number().int(),
  development: z.number().meta({
    description: "Shoreline development: outer shore by that of a circle of the same area; 1 is round.",
  }),
});

const bandSchema = z.strictObject({ from_m: z.number(), to_m: z.number() });

/** How deep a lake is, by its contours or soundings. */
export const lakeDepthsSchema = z.strictObject({
  deepest_m: z.number().meta({ description: "Deepest sounding, or contour, or the club's own figure." }),
  mean_m: z.number().meta({ description: "Volume by area." }),
  volume_m3: z.number().meta({ description: "By truncated cones under the hypsographic curve." }),
  hypsography: z
    .array(z.strictObject({ depth_m: z.number(), area_ha: z.number() }))
    .meta({ description: "Area of the lake that is at least so deep." }),
  bands: z
    .array(bandSchema.extend({ share: z.number().min(0).max(1) }))
    .meta({ description: "Share of the lake's area in each depth band; they sum to 1." }),
});

/** Where to fish in one phase: the part of the lake between the two depths of its band. */
export const zoneSchema = bandSchema.extend({
  phase: z.enum(PHASES),
  share: z.number().min(0).max(1).meta({ description: "Share of the lake's area." }),
  polygons: multiPolygonSchema.meta({
    description:
      "GeoJSON coordinates, true to half a cell of the depth grid, cut off at the shoreline as it is drawn.",
  }),
});
export type Zone = z.infer<typeof zoneSchema>;
export type LakeSize = z.infer<typeof lakeSizeSchema>;
export type LakeDepths = z.infer<typeof lakeDepthsSchema>;
