import { z } from "zod";
import { MARK_KINDS } from "../model/lake-shape.ts";
import { PHASES } from "../model/phase.ts";
import { dateSchema } from "../model/shared-schemas.ts";
import { SIDES, WINDS } from "./compass.ts";

const lonLatSchema = z.tuple([z.number(), z.number()]);

/** GeoJSON coordinates of a line. */
const lineSchema = z.array(lonLatSchema);
export type Line = z.infer<typeof lineSchema>;

/** GeoJSON coordinates of a MultiPolygon: outer rings counter-clockwise, islands clockwise. */
const multiPolygonSchema = z.array(z.array(lineSchema));
export type MultiPolygon = z.infer<typeof multiPolygonSchema>;

/** What can be drawn of a lake. */
const lakeMapSchema = z
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

/** How large a lake is, by its shoreline. */
const lakeSizeSchema = z.strictObject({
  area_ha: z.number().meta({ description: "Water without islands, on the WGS 84 ellipsoid." }),
  shoreline_km: z.number().meta({ description: "All shores, islands too." }),
  islands: z.number().int(),
  development: z.number().meta({
    description: "Shoreline development: outer shore by that of a circle of the same area; 1 is round.",
  }),
});

const bandSchema = z.strictObject({ from_m: z.number(), to_m: z.number() });

/** How deep a lake is, by its contours or soundings. */
const lakeDepthsSchema = z.strictObject({
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
const zoneSchema = bandSchema.extend({
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

const SUN_DAYS = ["day and night", "no night", "no sunset", "no sunrise", "no daylight"] as const;
export const MOON_PHASES = [
  "new moon",
  "waxing crescent",
  "first quarter",
  "waxing gibbous",
  "full moon",
  "waning gibbous",
  "last quarter",
  "waning crescent",
] as const;

const minuteSchema = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d[+-]\d\d:\d\d$/)
  .nullable();

/** The light of one day at the lake. */
export const lightSchema = z
  .strictObject({
    date: dateSchema,
    firstLight: minuteSchema.meta({ description: "Civil dawn: the sun 6 degrees below the horizon." }),
    sunrise: minuteSchema,
    sunset: minuteSchema,
    lastLight: minuteSchema.meta({ description: "Civil dusk." }),
    sun: z.enum(SUN_DAYS).meta({ description: "Whether it gets dark, and whether the sun rises and sets." }),
    words: z
      .string()
      .nullable()
      .meta({ description: "What to say on a day without night, sunset or sunrise." }),
    moon: z.strictObject({
      phase: z.enum(MOON_PHASES).meta({
        description: "New, quarters and full on the day they fall on, in the club's time zone.",
      }),
      lit: z.number().min(0).max(1).meta({ description: "Lit share of the moon's disc at noon." }),
    }),
  })
  .meta({
    description:
      "From one midnight sun to the next, so that a sunset past midnight belongs to the evening before. Local time with its offset; a level horizon, as almanacs do: hills bring sunset forward. Null where it does not happen.",
  });
export type Light = z.infer<typeof lightSchema>;

const shoreSchema = z.strictObject({
  sides: z.array(z.enum(SIDES)).meta({ description: "Sides of the lake where most of the shore is so." }),
  stretches: z
    .array(z.strictObject({ ring: z.number().int(), from: z.number().int(), to: z.number().int() }))
    .meta({ description: "The shore itself: positions “from” to “to” of shore[ring]." }),
});
export type ShoreParts = z.infer<typeof shoreSchema>;

const directionSchema = z.strictObject({
  from: z.enum(WINDS).meta({ description: "Where the wind blows from." }),
  rods: z.enum(WINDS).meta({
    description:
      "Where the rods of a boat at anchor point in this wind: downwind. On one anchor its bow lies to the wind. Common practice, no source.",
  }),
  fetch_m: z.number().meta({ description: "Longest straight stretch of open water along this wind." }),
  launchFetch_m: z.array(z.number()).meta({
    description: "Open water upwind of each launch, in their order; 0 where the wind comes off the land.",
  }),
  heights_m: z.array(z.number()).meta({
    description: "Significant wave height at the end of that fetch at forces 3, 4, 5 and 6.",
  }),
  sheltered: shoreSchema.meta({
    description: "Shore with at most a tenth of the lake's longest fetch upwind.",
  }),
  washed: shoreSchema.meta({ description: "Shore with at least half of the lake's longest fetch upwind." }),
});
export type WindDirection = z.infer<typeof directionSchema>;

const forceSchema = z.strictObject({
  force: z.number().int(),
  name: z.string(),
  least_mps: z.number(),
  most_mps: z.number(),
  sign: z.string().meta({ description: "What the shore shows of it." }),
  height_m: z.strictObject({ from: z.number(), to: z.number() }).meta({
    description:
      "Significant wave height along the lake's longest fetch at the top of the force: by the Coastal Engineering Manual (2002) and, higher, by the Shore Protection Manual (1984). Single waves reach nearly twice that.",
  }),
  period_s: z.number().meta({ description: "Peak period, Shore Protection Manual (1984)." }),
  growth_min: z.number().meta({ description: "How long such a wind takes to raise these waves." }),
  boats: z.string().meta({
    description:
      "What small craft should do; common practice, careful rather than bold. It never says that going out is safe.",
  }),
});
export type WindForce = z.infer<typeof forceSchema>;

/** What wind does to a lake of this shape. */
const lakeWindSchema = z
  .strictObject({
    longest: z.strictObject({
      fetch_m: z.number(),
      along: z
        .tuple([z.enum(WINDS), z.enum(WINDS)])
        .meta({ description: "The two winds that blow along it." }),
    }),
    shore: z
      .array(lineSchema)
      .meta({ description: "Closed rings of shore, in short stretches of equal length." }),
    directions: z.array(directionSchema).length(WINDS.length),
    forces: z.array(forceSchema),
  })
  .meta({
    description:
      "Straight-line fetch over water; waves by deep-water formulas, so shallow water makes them lower. Hills and trees are not known: they shelter some shores and funnel the wind on others.",
  });
export type LakeWind = z.infer<typeof lakeWindSchema>;

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
