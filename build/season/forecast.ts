import { z } from "zod";
import { DAY_STATES, PHASES } from "../model/phase.ts";
import { chanceSchema, dateSchema, spreadSchema } from "../model/shared-schemas.ts";

const dailySchema = z
  .strictObject({
    date: dateSchema,
    iced: chanceSchema,
    iceOff: chanceSchema,
    turnover: chanceSchema,
    postTurnover: chanceSchema,
    summer: chanceSchema,
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
          seen: markSchema.shape.seen,
          days: z.number().meta({ description: "Days by which this report moved the mean ice-off date." }),
        }),
      )
      .meta({ description: "The reports that moved this lake most, largest first." }),
    wouldSharpen: z
      .strictObject({
        lake: z.string(),
        days: z.number().min(0).meta({ description: "Days it is expected to take off the 80 % width." }),
      })
      .nullable(),
  })
  .meta({ description: "Why the forecast says what it says." });

/** Everything the season model says about one lake. */
export const lakeForecastSchema = z.strictObject({
  iceOff: spreadSchema.extend({
    status: z
      .enum(["observed", "forecast"])
      .meta({ description: "Observed: somebody saw the lake open, or its date is recorded." }),
    openByNow: chanceSchema.meta({ description: "Chance that the lake is open on the as-of date." }),
  }),
  phases: z.array(phaseWindowSchema),
  daily: z.array(dailySchema),
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

const scoreSchema = z.strictObject({
  mae: z.number().meta({ description: "Mean absolute error of the median, days." }),
  crps: z.number().meta({ description: "Continuous ranked probability score, days; lower is better." }),
});

/** How well past seasons would have been called, at one moment of the season. */
export const backtestRowSchema = z.strictObject({
  moment: z.enum(["before", "first", "25%", "50%", "75%"]),
  n: z.number().int().meta({ description: "Lake-seasons scored." }),
  baseline: scoreSchema.meta({ description: "The lake's own past mean and spread, cut off at the moment." }),
  model: scoreSchema.extend({ cover50: chanceSchema, cover80: chanceSchema }),
  calibration: z.array(z.strictObject({ said: chanceSchema, came: chanceSchema })).meta({
    description: "Share of dates that fell before the day given each chance; a good model's two are equal.",
  }),
});
export type BacktestRow = z.infer<typeof backtestRowSchema>;
