import { z } from "zod";
import { boxPlanSchema, catchRateSchema, lakeCatchesSchema, phaseDietSchema } from "../flies/flies-schema.ts";
import { BOAT_KINDS, FOODS, METHODS } from "../model/choices.ts";
import { clubSchema as clubFile } from "../model/fields/club-fields.ts";
import { lakeSchema as lakeFile } from "../model/fields/lake-fields.ts";
import { patternSchema as patternFile } from "../model/fields/pattern-fields.ts";
import { reportRow } from "../model/fields/report-fields.ts";
import { rigBoxSchema } from "../model/fields/rigs-fields.ts";
import { tripSchema as tripFile } from "../model/fields/trip-fields.ts";
import { DAY_STATES, PHASES } from "../model/phase.ts";
import { chanceSchema, dateSchema } from "../model/shared-schemas.ts";
import { FLY_CLASSES } from "../rigs/fly-classes.ts";
import {
  anchorSchema,
  driftingTableSchema,
  leaderBoardsSchema,
  leaderSchema,
  leanExampleSchema,
  lineSchema,
  nakedTableSchema,
  phaseRigsSchema,
  plumbTableSchema,
  searchPlanSchema,
  swingTableSchema,
  tippetForHookSchema,
  tippetSchema,
  usualRigSchema,
} from "../rigs/rig-schemas.ts";
import {
  backtestRowSchema,
  clearDayScoreSchema,
  lakeForecastSchema,
  launchSchema,
  pastForecastSchema,
  regionForecastSchema,
  reportingSchema,
} from "../season/forecast.ts";
import { lakeWaterSchema, lightSchema } from "../water/water-schema.ts";
import { factsOf, html } from "./facts.ts";
import { packingSchema } from "./packing.ts";
import { lakeReportsSchema, reportSeasonSchema } from "./report-seasons-schema.ts";
import { fishableSchema, leftOutSchema, outingSchema, whenSchema } from "./when-schema.ts";

/** Keys of the club's files that the Guide holds as they stand there: all but those named, which it holds in another form, or not. */
export const lakeFacts = factsOf(lakeFile, {
  depthBands: "the bands of “plan”, with the usual ones where none is written",
  iceOff: "the forecast and its evidence",
  turnover: "the forecast and its evidence",
  turnoverRule: "“turnsOver”, and the forecast",
  lastGood: "the forecast",
  role: "indicator lakes have no page: “regions” say what they tell",
  watched: "“reporting”, the chance that an opening would be reported",
});
export const patternFacts = factsOf(patternFile, {
  rank: "the order of flies",
});
export const tripFacts = factsOf(tripFile, {
  lakes: "“days”, “pick” and “gear”",
  boats: "“boats”, with who sits where",
  flyLoss: "“box”",
  travel: "“out” and “pick”",
});
export const reportFacts = factsOf(reportRow, {
  lake: "reports stand under their lake",
  ice: "“seen”",
  phase: "“seen”",
  rods: "“rodHours”",
  hours: "“rodHours”",
  caught: "“catches”, with names of patterns",
  samples: "“samples”, as lists",
});
export const clubFacts = factsOf(clubFile, {
  season: "“season” of the Guide itself",
  asOf: "“asOf” of the Guide itself",
  holidays: "“when”, with where to go",
  reportForm: "not shown: it is how reports are read",
});
export const rigFacts = factsOf(rigBoxSchema, {
  reach: "the longest leader that is fixed",
  margin: "set depths",
  lift: "“plumb”",
  mostLift: "“plumb”",
  steps: "“plumb”",
  longestWait: "“plumb”",
  longestCount: "“lines”",
  bow: "“plumb”, its ropes",
  scope: "“plumb”, its ropes",
  dryShare: "“plumb”",
  castLimit: "“plumb”",
  leaders: "“leaders”, with what each reaches",
  lines: "“lines”, with their counts",
  shot: "“plumb”",
  indicators: "“plumb”",
});

const flyChoiceSchema = z.strictObject({
  pattern: z.string().meta({ description: "Slug." }),
  name: z.string(),
  sizes: z.array(z.number()),
  colours: z.array(z.string()),
  way: z.enum(METHODS),
  score: z.number().positive().meta({
    description: "Expected catch, relative to the club's first choice with nothing reported.",
  }),
  rate: catchRateSchema
    .nullable()
    .meta({ description: "What it caught at this lake in this phase; null when nobody told." }),
  why: z.string().meta({ description: "One line: why it stands in this place." }),
});
export type FlyChoice = z.infer<typeof flyChoiceSchema>;

const planSchema = phaseRigsSchema.extend({ flies: z.array(flyChoiceSchema) });

const { date: reportDate, notes: reportNotes, ...reported } = reportFacts.shape;
const lakeSchema = lakeForecastSchema.extend({
  slug: z.string(),
  ...lakeFacts.shape,
  turnsOver: z.boolean(),
  status: z.strictObject({
    now: z.string().meta({ description: "What the lake most likely is now, in words." }),
    next: z.string().meta({ description: "What comes next and when, with its spread." }),
    why: z.array(z.string()).meta({ description: "The evidence, a sentence each." }),
  }),
  place: lakeWaterSchema,
  boards: leaderBoardsSchema.meta({ description: "The leaders one rod wants tied for one day here." }),
  launch: launchSchema,
  search: z
    .array(searchPlanSchema)
    .meta({ description: "When to try which place, depth and fly, phase by phase; empty without places." }),
  plan: z.array(planSchema).meta({ description: "What to fish, phase by phase." }),
  diet: z.array(phaseDietSchema).meta({ description: "Phases in which fish here were sampled." }),
  catches: lakeCatchesSchema,
  reports: z.array(
    z.strictObject({
      date: reportDate,
      seen: z.array(z.string()),
      ...reported,
      rodHours: z.number().nullable().meta({ description: "Of the whole visit, where catches were told." }),
      catches: z
        .array(
          z.strictObject({
            pattern: z.string().meta({ description: "Slug." }),
            name: z.string(),
            way: z.enum(METHODS).nullable(),
            fish: z.number().int().min(0),
            rodHours: z.number().nullable(),
          }),
        )
        .meta({ description: "Empty says nothing; no fish caught is a row of 0." }),
      samples: z
        .array(
          z.array(z.strictObject({ food: z.enum(FOODS), count: z.number(), mass_g: z.number().nullable() })),
        )
        .meta({ description: "Throat samples, a fish each; an empty one was an empty throat." }),
      notes: reportNotes,
    }),
  ),
  reported: lakeReportsSchema,
  pastForecasts: z
    .array(pastForecastSchema)
    .meta({ description: "Past springs in order; empty with fewer than five forecasts." }),
});
export type GuideLake = z.infer<typeof lakeSchema>;

const bareLakeSchema = z
  .strictObject({
    slug: z.string(),
    ...lakeFacts.shape,
    why: z.string().meta({ description: "Why it has no forecast." }),
    launch: launchSchema,
  })
  .meta({ description: "A lake without a forecast." });
export type BareLake = z.infer<typeof bareLakeSchema>;

const patternSchema = z.strictObject({
  slug: z.string(),
  ...patternFacts.shape,
  flyClass: z.enum(FLY_CLASSES).meta({ description: "The row of the plumb table it is fished by." }),
  lakes: z.array(z.strictObject({ slug: z.string(), name: z.string(), phases: z.array(z.enum(PHASES)) })),
});
export type GuidePattern = z.infer<typeof patternSchema>;

const tripGearSchema = z
  .strictObject({
    lakes: z.array(
      z.strictObject({
        slug: z.string(),
        name: z.string(),
        phases: z
          .array(planSchema)
          .meta({ description: "Those the lake may well be in on the trip's days." }),
      }),
    ),
    boards: leaderBoardsSchema.meta({ description: "The leaders to have tied for all of them." }),
    lines: z.array(z.string()),
    flies: z.array(z.strictObject({ pattern: z.string(), name: z.string() })),
  })
  .meta({ description: "What to build and carry." });
export type TripGear = z.infer<typeof tripGearSchema>;

const { people, notes: tripNotes, ...planned } = tripFacts.shape;
const tripSchema = z.strictObject({
  slug: z.string(),
  ...planned,
  notes: tripNotes,
  gear: tripGearSchema,
  box: boxPlanSchema,
  people,
  boats: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(BOAT_KINDS),
      seats: z.number().int(),
      aboard: z.array(z.string()).meta({ description: "Who sits there; empty when nobody is named." }),
    }),
  ),
  ashore: z.array(z.string()).meta({ description: "People for whom no boat has a seat." }),
  days: z.array(
    z.strictObject({
      date: dateSchema,
      lakes: z
        .array(
          z.strictObject({
            slug: z.string(),
            name: z.string(),
            good: chanceSchema,
            open: z.boolean().meta({ description: "False before the lake's road opens." }),
          }),
        )
        .meta({ description: "The lakes named; where any lake will do, those most likely good." }),
      anyGood: chanceSchema.meta({
        description: "Chance that at least one of the lakes that can be reached is good, sharing one spring.",
      }),
      either: chanceSchema.meta({ description: "The same of the pick and its fallback." }),
    }),
  ),
  pick: outingSchema.nullable().meta({ description: "Null where no lake can be reached." }),
  why: z.array(z.string()).meta({ description: "Why these two, a sentence each." }),
  next: outingSchema.nullable().meta({ description: "The second best of all pairs." }),
  fishable: fishableSchema,
  out: z.array(leftOutSchema),
  light: z.array(lightSchema).meta({ description: "Day by day, at the pick; empty without one." }),
  packing: packingSchema,
  cautions: z.array(z.string()).meta({
    description: "Ids of the cautions for the states that the lakes shown may well be in on any of the days.",
  }),
  ice: z.array(z.string()).meta({ description: "A warning for each lake shown that may still hold ice." }),
});
export type GuideTrip = z.infer<typeof tripSchema>;

const boardSchema = z
  .strictObject({
    weekend: z.array(dateSchema).meta({ description: "The days of this weekend, or of the next one." }),
    groups: z.array(
      z.strictObject({
        id: z.enum(["weekend", "soon", "fishable", "later", "past"]),
        lakes: z.array(
          z.strictObject({
            slug: z.string(),
            weekend: chanceSchema
              .nullable()
              .meta({ description: "Mean chance that it is good on those days; null outside the window." }),
            fishable: chanceSchema
              .nullable()
              .meta({ description: "The same of being good or in its later weeks." }),
          }),
        ),
      }),
    ),
  })
  .meta({ description: "Where to go: lakes good this weekend first, then those that come right soonest." });
export type Board = z.infer<typeof boardSchema>;

/** 2: `daily` has `laterWeeks` in place of `summer`. */
export const SCHEMA_VERSION = 2;

const pageSchema = z.strictObject({ slug: z.string(), title: z.string(), html: html() });
export type GuidePage = z.infer<typeof pageSchema>;

const cautionSchema = z.strictObject({
  id: z.string(),
  when: z
    .array(z.enum(["always", ...DAY_STATES]))
    .meta({ description: "The lake states in which it matters most." }),
  short: z.string().max(90),
  agency: z.string().meta({ description: "The public agency whose advice it follows." }),
});
export type Caution = z.infer<typeof cautionSchema>;

/** Everything a reader will see, computed for one as-of date. Published as guide.json. */
export const guideSchema = z.strictObject({
  $schema: z.string(),
  program: z.strictObject({ name: z.string(), version: z.string() }),
  schemaVersion: z.literal(SCHEMA_VERSION).meta({
    description: "Grows when a field is renamed, removed or given another meaning; CHANGELOG.md says which.",
  }),
  club: z.strictObject(clubFacts.shape),
  season: z.number().int(),
  asOf: dateSchema,
  baseUrl: z.string().nullable(),
  window: z
    .strictObject({ from: dateSchema, to: dateSchema })
    .meta({ description: "The days every daily table covers." }),
  lakes: z.array(lakeSchema).meta({ description: "By middle ice-off date, then by name." }),
  lakesWithoutForecast: z.array(bareLakeSchema).meta({ description: "By file name." }),
  board: boardSchema,
  patterns: z.array(patternSchema),
  reportSeasons: z.array(reportSeasonSchema).meta({ description: "Newest first." }),
  when: whenSchema,
  trips: z.array(tripSchema),
  rigs: z.strictObject({
    ...rigFacts.shape,
    tippet: z.array(tippetSchema),
    leaders: z.array(leaderSchema),
    lines: z.array(lineSchema),
    tippetFor: z.array(tippetForHookSchema).meta({ description: "Common practice, no source." }),
    ways: z
      .array(usualRigSchema)
      .meta({ description: "Every method a pattern may be fished with, each once." }),
    plumb: plumbTableSchema.meta({ description: "What to set and pinch on, by the depth just plumbed." }),
    drifting: driftingTableSchema.nullable().meta({ description: "Null when no leader takes an indicator." }),
    lean: leanExampleSchema
      .nullable()
      .meta({ description: "Null when no rig carried is held down in chop." }),
    naked: nakedTableSchema,
    swing: swingTableSchema,
    anchor: anchorSchema,
  }),
  regions: z.array(regionForecastSchema).meta({
    description: "The season of each region: how uneven, where a look helps most, what other lakes say.",
  }),
  reporting: reportingSchema,
  backtest: z
    .array(backtestRowSchema)
    .nullable()
    .meta({ description: "Null with too few seasons to score." }),
  clearDays: clearDayScoreSchema.nullable().meta({
    description:
      "The first clear day after turnover, foretold on the day of ice-off; null with fewer than ten records.",
  }),
  cautions: z.array(cautionSchema),
  chapters: z
    .array(pageSchema)
    .meta({ description: "The standing chapters: cautions, reading, methods, printing, about." }),
  pages: z.array(pageSchema).meta({ description: "The club's own pages." }),
});
export type Guide = z.infer<typeof guideSchema>;
