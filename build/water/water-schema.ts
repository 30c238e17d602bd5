import { z } from "zod";
import { dateSchema } from "../model/exported.ts";
import { lightSchema } from "./light-schema.ts";
import { lakeMapSchema } from "./map-schema.ts";
import { lakeDepthsSchema, lakeSizeSchema, zoneSchema } from "./shape-schema.ts";
import { lakeWindSchema } from "./wind-schema.ts";

const oxygenSchema = z
  .strictObject({
    pressure_kPa: z.number().meta({ description: "Standard atmosphere at the lake's elevation (ISO 2533)." }),
    saturation: z
      .array(z.strictObject({ water_C: z.number(), oxygen_mgL: z.number() }))
      .meta({ description: "What water in balance with the air holds, 0 to 20 degC." }),
    readings: z
      .array(
        z.strictObject({
          date: dateSchema,
          water_C: z.number(),
          oxygen_mgL: z.number(),
          percent: z.number().meta({ description: "Of saturation; over 100 where weed gives off more." }),
        }),
      )
      .meta({ description: "Reports that give both oxygen and water temperature." }),
  })
  .meta({
    description: "Benson & Krause (1984) with the pressure form of USGS OWQ Technical Memorandum 2011.03.",
  });
export type Oxygen = z.infer<typeof oxygenSchema>;

const warmWaterSchema = z.strictObject({
  care_C: z.number(),
  stop_C: z.number(),
  rule: z.string(),
  latest: z
    .strictObject({ date: dateSchema, water_C: z.number(), words: z.string() })
    .nullable()
    .meta({ description: "The latest reported temperature, if it calls for care." }),
});
export type WarmWater = z.infer<typeof warmWaterSchema>;

/** Everything about one lake as a place. What needs a shoreline is null without one. */
export const lakeWaterSchema = z.strictObject({
  map: lakeMapSchema.nullable(),
  size: lakeSizeSchema.nullable(),
  depths: lakeDepthsSchema.nullable().meta({ description: "Null without contours or soundings." }),
  zones: z
    .array(zoneSchema)
    .meta({ description: "One for each phase with a depth band; empty without depths." }),
  mixing: z
    .strictObject({
      osgood_mpkm: z.number().meta({ description: "Osgood index: mean depth by the root of the area." }),
      by: z.enum(["shape", "club"]).meta({ description: "Whose area and mean depth." }),
      words: z.string(),
    })
    .nullable(),
  wind: lakeWindSchema.nullable(),
  light: z.array(lightSchema).meta({ description: "One row for each day asked for." }),
  oxygen: oxygenSchema.nullable().meta({ description: "Null where the lake's elevation is not known." }),
  warmWater: warmWaterSchema,
});
export type LakeWater = z.infer<typeof lakeWaterSchema>;
