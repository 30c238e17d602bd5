import { z } from "zod";
import { catchRateSchema } from "../flies/flies-schema.ts";
import { FOODS, METHODS } from "../model/club.ts";
import { dateSchema } from "../model/shared-schemas.ts";

const fishSchema = z.number().int().min(0);

const totals = {
  reports: z.number().int().positive(),
  told: z
    .number()
    .int()
    .min(0)
    .meta({ description: "Reports that tell a catch, none caught included; the fish are theirs." }),
  fish: fishSchema,
  rate: catchRateSchema.nullable().meta({ description: "Of visits with known hours; null without any." }),
};

const seasonTotalsSchema = z.strictObject({ season: z.number().int(), ...totals });

export const lakeReportsSchema = z
  .strictObject({
    seasons: z.array(seasonTotalsSchema).meta({ description: "Seasons with reports, newest first." }),
    caught: z
      .array(
        z.strictObject({
          pattern: z.string().meta({ description: "Slug." }),
          name: z.string(),
          way: z.enum(METHODS).nullable(),
          fish: fishSchema,
          rate: catchRateSchema.nullable().meta({ description: "Of the rows with known rod-hours." }),
        }),
      )
      .meta({ description: "All seasons, each pattern and way once, most fish first; none caught counts." }),
    unrecorded: z
      .array(z.strictObject({ season: z.number().int(), after: dateSchema, by: dateSchema }))
      .meta({
        description: "Ice-off that reports bracket and no row of the lake's file records, newest first.",
      }),
  })
  .meta({ description: "What all reports of the lake come to." });
export type LakeReports = z.infer<typeof lakeReportsSchema>;

export const reportSeasonSchema = seasonTotalsSchema
  .extend({
    lakes: z.array(
      z.strictObject({
        slug: z.string(),
        name: z.string(),
        ...totals,
        foods: z
          .array(z.strictObject({ food: z.enum(FOODS), fish: z.number().int().positive() }))
          .meta({ description: "Foods found and in how many fish, most first." }),
        fed: fishSchema.meta({ description: "Throats with food." }),
        empty: fishSchema.meta({ description: "Empty throats." }),
      }),
    ),
  })
  .meta({ description: "One season's reports, all lakes that have any." });
export type ReportSeason = z.infer<typeof reportSeasonSchema>;
