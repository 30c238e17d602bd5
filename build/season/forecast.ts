import { z } from "zod";
import { LOOKS } from "../model/club.ts";
import { DAY_STATES, PHASES } from "../model/phase.ts";
import { chanceSchema, dateSchema, spreadSchema } from "../model/shared-schemas.ts";
import { REPORTING_MODES } from "./backtest/simulated-reports.ts";

const dailySchema = z
  .strictObject({
    date: dateSchema,
    iced: chanceSchema,
    iceOff: chanceSchema,
    turnover: chanceSchema,
    postTurnover: chanceSchema,
    laterWeeks: chanceSchema,
  })
  .meta({ description: "Chance of each state on one day; the five sum to 1." });
export type Daily = z.infer<typeof dailySchema>;

const phaseWindowSchema = z.strictObject({ phase: z.enum(PHASES), from: spreadSchema, to: spreadSchema });
export type PhaseWindow = z.infer<typeof phaseWindowSchema>;

const markSchema = z
  .strictObject({
    date: dateSchema,
    seen: z.enum(["ice on", "ice part", "ice off", ...PHASES]),
    doubted: z
      .boolean()
      .meta({ description: "True where the rest of the evidence speaks against this report." }),
  })
  .meta({ description: "What somebody saw on the lake, up to the as-of date." });
export type Mark = z.infer<typeof markSchema>;

const evidenceSchema = z
  .strictObject({
    seasons: z.number().int().min(0).meta({ description: "Seasons of this lake's own records." }),
    firstSeason: z.number().int().nullable(),
    lastSeason: z.number().int().nullable(),
    usualIceOff: dateSchema.meta({ description: "The lake's middle date in a middling spring." }),
    spring: z
      .strictObject({
        days: z
          .number()
          .meta({ description: "How late this spring runs on the lakes seen; negative is early." }),
        lakes: z
          .number()
          .int()
          .min(0)
          .meta({ description: "Lakes whose reports tell an early spring from a late one." }),
      })
      .nullable()
      .meta({ description: "Null while no report tells an early spring from a late one." }),
    movedBy: z
      .array(
        z.strictObject({
          lake: z.string(),
          date: dateSchema,
          seen: z.enum([...markSchema.shape.seen.options, "no report"]).meta({
            description: "The report that decides for this lake; “no report” where its silence does.",
          }),
          reports: z.number().int().min(0).meta({ description: "Reports of this lake taken together." }),
          days: z.number().meta({
            description: "Days by which all that is known of that lake moved the mean ice-off date.",
          }),
        }),
      )
      .meta({ description: "The lakes whose reports moved this lake most, largest first." }),
    wouldSharpen: z
      .strictObject({
        lake: z.string(),
        days: z.number().min(0).meta({ description: "Days it is expected to take off the 80 % width." }),
      })
      .nullable()
      .meta({ description: "The other lake at which a look on the as-of date would narrow this one most." }),
  })
  .meta({ description: "Why the forecast says what it says." });

const heatSchema = z
  .strictObject({ date: dateSchema, takeCare: chanceSchema, stop: chanceSchema })
  .meta({ description: "Chance of surface water at 18 C and more, and at 20 C and more, on one day." });

const readingSchema = z
  .strictObject({
    date: dateSchema,
    surface_C: z.number().nullable(),
    deep: z.strictObject({ at_m: z.number(), water_C: z.number(), layers: z.boolean() }).nullable(),
    secchiRatio: z.number().nullable().meta({ description: "Secchi depth over the lake's usual one." }),
    looks: z.enum(LOOKS).nullable(),
    phase: z.enum(PHASES).nullable(),
    bestWeeks_d: z.number().meta({ description: "Days by which it moved the start of the best weeks." }),
    laterWeeks_d: z.number().meta({ description: "Days by which it moved their end; later is positive." }),
  })
  .meta({ description: "What was read of the water this season, and what it moved." });

const launchCellSchema = z.strictObject({
  surface_C: z.number(),
  heat: z.enum(["take care", "stop"]).nullable(),
  states: z
    .array(z.strictObject({ state: z.enum(DAY_STATES), chance: chanceSchema }))
    .meta({ description: "The likeliest state, and the next where it is near; none under “stop”." }),
  mixedSigns: z.boolean(),
});

/** What readings at the launch say of a lake on the as-of date. */
export const launchSchema = z
  .strictObject({
    counted: z.boolean().meta({
      description: "True where the days since ice-off count too; false where only the readings do.",
    }),
    depth_m: z.number().meta({ description: "Depth of the lower reading." }),
    rows: z.array(
      z.strictObject({
        clarity: z.enum(["murky", "usual"]).nullable(),
        below: z.enum(["same", "colder"]).nullable(),
        cells: z.array(launchCellSchema),
      }),
    ),
  })
  .meta({ description: "State of the lake by surface temperature, clarity and what lies below." });
export type Launch = z.infer<typeof launchSchema>;

/** Everything the season model says about one lake. */
export const lakeForecastSchema = z.strictObject({
  iceOff: spreadSchema.extend({
    status: z
      .enum(["observed", "forecast"])
      .meta({ description: "Observed: somebody saw the lake open, or its date is recorded." }),
    openByNow: chanceSchema.meta({ description: "Chance that the lake is open on the as-of date." }),
  }),
  phases: z.array(phaseWindowSchema),
  laterWeeks: spreadSchema.meta({ description: "The first day of the later weeks." }),
  daily: z.array(dailySchema),
  heat: z.array(heatSchema).meta({ description: "Days of the table on which warm water is a real chance." }),
  readings: z.array(readingSchema),
  now: z
    .strictObject({ state: z.enum(DAY_STATES), chance: chanceSchema })
    .meta({ description: "The likeliest state on the as-of date." }),
  next: phaseWindowSchema
    .nullable()
    .meta({ description: "The next good phase that most likely still lies ahead." }),
  bestDays: z.strictObject({ from: dateSchema, to: dateSchema, chance: chanceSchema }).nullable().meta({
    description: "The days from now on with the best chance of a good phase; chance is their mean.",
  }),
  marks: z.array(markSchema),
  evidence: evidenceSchema,
});
export type LakeForecast = z.infer<typeof lakeForecastSchema>;

/** What is told of a whole region's season. */
export const regionForecastSchema = z.strictObject({
  region: z.string().nullable().meta({ description: "Null for lakes without a region." }),
  scatter: z.number().meta({
    description: "How uneven the lakes run this spring, against past springs: factor on their own errors.",
  }),
  uneven: chanceSchema.meta({ description: "Chance of the largest scatter that is considered." }),
  openingsOnly: z.boolean().meta({
    description: "True where lakes were reported open this spring and not one was reported iced.",
  }),
  mostInformative: z
    .strictObject({
      lake: z.string(),
      days: z.number().min(0).meta({ description: "Days off the 80 % widths of the others, added up." }),
      lakes: z.number().int().min(1).meta({ description: "How many others it is expected to narrow." }),
    })
    .nullable()
    .meta({ description: "The lake at which a look on the as-of date would narrow the others most." }),
  indicators: z
    .strictObject({
      lakes: z.number().int().min(1),
      seasons: z.number().int(),
      anomaly_d: z.number(),
      loading: z.number(),
      error_d: z.number(),
    })
    .nullable()
    .meta({ description: "What lakes outside the list say, until one of the region's own opens." }),
});
export type RegionForecast = z.infer<typeof regionForecastSchema>;

/** What past springs' reports say of the club's reporting. */
export const reportingSchema = z.strictObject({
  delay: z
    .strictObject({
      shape: z.number(),
      theta_d: z.number(),
      reports: z.number().int().min(0).meta({ description: "First reports with a recorded opening." }),
      mean_d: z.number().nullable().meta({ description: "Their mean delay; null without any." }),
      seasons: z.array(z.number().int()),
    })
    .meta({ description: "Days from opening to first report: survival (1 + days / theta)^-shape." }),
  visits: z.strictObject({
    seasons: z.array(z.number().int()).meta({ description: "Past springs with reports of ice." }),
    reports: z.number().int().min(0),
    watched: z
      .array(z.strictObject({ lake: z.string(), visited: z.number().int().min(0), chance: chanceSchema }))
      .meta({ description: "Chance that an opening of each lake would be reported, before this spring." }),
  }),
});
export type Reporting = z.infer<typeof reportingSchema>;

/** What the guide would have said of a lake in a past spring, and what came. */
export const pastForecastSchema = z.strictObject({
  season: z.number().int(),
  opened: dateSchema,
  forecast: spreadSchema
    .extend({ from: dateSchema.meta({ description: "The day the club's first lake opened." }) })
    .nullable()
    .meta({ description: "Null in a spring in which the lake was itself the first to open." }),
});
export type PastForecast = z.infer<typeof pastForecastSchema>;

const scoreSchema = z.strictObject({
  mae: z.number().meta({ description: "Mean absolute error of the median, days." }),
  crps: z.number().meta({ description: "Continuous ranked probability score, days; lower is better." }),
});

/** How well past seasons would have been called, at one moment of the season. */
export const backtestRowSchema = z.strictObject({
  moment: z
    .enum(["before", "first", "25%", "50%", "75%"])
    .meta({ description: "Share of the reporting lakes that had been reported open." }),
  reporting: z.enum(REPORTING_MODES).meta({
    description:
      "How openings were reported: each on its day; within four days, three lakes in ten silent; four days late in the mean, three in ten silent; late, and openings only.",
  }),
  n: z.number().int().meta({ description: "Lake-seasons scored: lakes not reported open at the moment." }),
  seasons: z.number().int().meta({ description: "Seasons they come from." }),
  baseline: scoreSchema.meta({ description: "The lake's own past mean and spread, cut off at the moment." }),
  shifted: scoreSchema.meta({
    description:
      "The lake's own past mean, moved as the lakes already open were early or late; spread 4 days.",
  }),
  model: scoreSchema.extend({ cover50: chanceSchema, cover80: chanceSchema }),
  opening: scoreSchema
    .extend({ n: z.number().int() })
    .nullable()
    .meta({ description: "The model's own opening day of lakes already reported open." }),
  calibration: z.array(z.strictObject({ said: chanceSchema, came: chanceSchema })).meta({
    description: "Share of dates that fell before the day given each chance; a good model's two are equal.",
  }),
});
export type BacktestRow = z.infer<typeof backtestRowSchema>;

/** How well the day a lake clears after turnover would have been called on the day it opened. */
export const clearDayScoreSchema = z.strictObject({
  n: z.number().int().meta({ description: "Records of turnover scored." }),
  seasons: z.number().int().meta({ description: "Springs they come from." }),
  mae: z.number().meta({ description: "Mean absolute error of the middle day, days." }),
  cover50: chanceSchema,
  cover80: chanceSchema,
});
export type ClearDayScore = z.infer<typeof clearDayScoreSchema>;
