import { z } from "zod";
import { FREEZING, LAKE_ROLES, WATCHED, WATER_COLOURS } from "../choices.ts";
import { asWritten, shortened } from "../fault.ts";
import { field } from "./field.ts";
import { day, oneOf, quantity, REFUSALS, text, whole } from "./field-kinds.ts";
import { NEW_WORD, OLD_WORD } from "./phase-words.ts";

/** Deepest lake on earth, rounded up; a limit against slips of the keyboard. */
export const DEEPEST = "1700 m";

const depth = (description: string) =>
  quantity("length", { description, example: "8 ft", least: "0 m", most: DEEPEST });
/** The season model takes longer waits and turnovers for slips. */
const DAYS = { example: "8 days", least: "1 day", most: "60 days" };

/** A season's year; the oldest ice records kept by hand are from the 1400s. */
export const season = (description: string) => whole(1400, 2200, description);

export const depthBand = (description: string) =>
  z
    .strictObject({
      from: field(depth("Shallow end of the band."), { as: "from_m" }),
      to: field(depth("Deep end of the band."), { as: "to_m" }),
    })
    .meta({ description });

const bandAt = (phase: string) => depthBand(`Where fish were found at ${phase}.`).optional();

const dayRange = (description: string) =>
  z
    .strictObject({
      from: quantity("days", { description: "At the earliest, or shortest.", ...DAYS }),
      to: quantity("days", { description: "At the latest, or longest.", ...DAYS }),
    })
    .meta({ description });

export const iceOffRow = z
  .strictObject({
    season: season("Year of the season: the year of its spring."),
    on: day("The day the lake was seen to open.").optional(),
    after: day("A day on which it was still iced.").optional(),
    by: day("A day on which it was already open.").optional(),
  })
  .meta({
    description: "One season's ice-off: either “on”, or “after” and “by”.",
    examples: [{ season: 2025, on: "2025-05-09" }],
  });

export const turnoverRow = z
  .strictObject({
    season: season("Year of the season."),
    from: day("First cloudy day."),
    to: day("Last cloudy day."),
  })
  .meta({ description: "Turnover as it was seen in one season." });

export const lastGoodRow = z
  .strictObject({
    season: season("Year of the season."),
    on: day("The last day on which the best weeks held, as you judged it."),
  })
  .meta({ description: "Last good day of one season's best weeks." });

const degrees = (limit: number, name: string, description: string, example: number) =>
  z
    .number()
    .min(-limit)
    .max(limit)
    .meta({ description, examples: [example] })
    .register(REFUSALS, {
      refuse: (raw) => ({
        code: "out-of-range",
        message: `${shortened(asWritten(raw))} is not a ${name}: it runs from -${limit} to ${limit}`,
        hint: "correct it, or swap lat and lon: lat is how far north, lon how far east, south and west being negative",
      }),
    });

const position = z
  .strictObject({
    lat: degrees(90, "latitude", "Latitude in degrees, south negative.", 41.312),
    lon: degrees(180, "longitude", "Longitude in degrees, west negative.", -106.291),
  })
  .meta({ description: "Where the lake is, WGS 84." });

const TRAVEL = "From the club's usual meeting place to the launch, one way.";

export const lakeSchema = z
  .strictObject({
    name: text("The lake's name as readers know it."),
    position,
    elevation: field(
      quantity("length", {
        description: "Height of the water above sea level.",
        example: "2580 m",
        least: "-430 m",
        most: "6000 m",
      }).optional(),
      { as: "elevation_m" },
    ),
    region: text("Lakes of one region share a spring.").optional(),
    area: field(
      quantity("area", {
        description: "Area of the water.",
        example: "40 acre",
        above: "0 ha",
        most: "40000000 ha",
      }).optional(),
      { as: "area_ha" },
    ),
    depth: field(
      z
        .strictObject({
          max: field(
            quantity("length", {
              description: "The deepest place.",
              example: "29 ft",
              above: "0 m",
              most: DEEPEST,
            }).optional(),
            { as: "maxDepth_m" },
          ),
          mean: field(
            quantity("length", {
              description: "Volume by area.",
              example: "12 ft",
              above: "0 m",
              most: DEEPEST,
            }).optional(),
            { as: "meanDepth_m" },
          ),
        })
        .optional()
        .meta({ description: "Depth of the lake." }),
      { flat: true },
    ),
    role: oneOf(
      LAKE_ROLES,
      "indicator: a lake outside the guide, whose records and day of this spring tell how early the season is until the club's first own opening.",
    ).optional(),
    watched: oneOf(
      WATCHED,
      "Whether somebody would see it open and report it; without it, learnt from the reports of past springs.",
    ).optional(),
    water: oneOf(WATER_COLOURS, "What the water looks like in spring; scuds take its colour.").optional(),
    summary: text("One line: what kind of lake it is.").optional(),
    access: z
      .strictObject({
        text: text("How to get there."),
        opens: day("From when the road is open.").optional(),
        travel: field(
          quantity("duration", {
            description: TRAVEL,
            example: "2 h",
            least: "0 h",
            most: "200 h",
          }).optional(),
          { as: "travel_h", explained: TRAVEL },
        ),
      })
      .optional()
      .meta({ description: "How to get there and from when." }),
    hazards: field(
      z
        .array(text("One hazard."))
        .max(200)
        .optional()
        .meta({ description: "What can hurt somebody here, one a line." }),
      { absent: [] },
    ),
    rules: z
      .strictObject({
        text: text("The rules as somebody read them; the agency's own word rules."),
        checked: day("The day somebody read them."),
      })
      .optional()
      .meta({ description: "Local rules as read on a day." }),
    places: field(
      z
        .array(
          z.strictObject({
            name: text("What the club calls the place."),
            at: text("How to find it.").optional(),
            depths: field(
              z
                .array(depth("Depth plumbed there."))
                .min(1)
                .max(6)
                .meta({
                  description: "Plumbed depths there, the likeliest first.",
                  examples: [["14 ft", "10 ft"]],
                }),
              { as: "depths_m" },
            ),
          }),
        )
        .max(6)
        .optional()
        .meta({ description: "Places worth trying; with them the guide plans the search." }),
      { absent: [], explained: "Named by the club; empty means no search plan." },
    ),
    depthBands: field(
      z
        .strictObject({
          "ice-off": bandAt("ice-off"),
          turnover: bandAt("turnover"),
          // the old word goes first: a band under the new one takes its place
          [OLD_WORD]: bandAt(OLD_WORD),
          [NEW_WORD]: field(bandAt(NEW_WORD), { as: OLD_WORD }),
          "later-weeks": bandAt("later-weeks"),
        })
        .optional()
        .meta({ description: "Depths at which fish were found, by phase; plumbed by the club." }),
      { absent: {} },
    ),
    iceOff: z.array(iceOffRow).optional().meta({ description: "Ice-off of past seasons, one row a season." }),
    turnover: z
      .array(turnoverRow)
      .optional()
      .meta({ description: "Turnover of past seasons, one row a season." }),
    lastGood: z
      .array(lastGoodRow)
      .optional()
      .meta({ description: "Last good days of past best weeks, one row a season." }),
    freezes: oneOf(
      FREEZING,
      "How often the lake freezes over; one that never does has a launch card, and no forecast.",
    ).optional(),
    fedBy: oneOf(["snow"], "A snow or glacier stream runs through it and keeps it cold.").optional(),
    layers: oneOf(
      ["yes", "no"],
      "Whether warm water lies over cold in summer (stratification); left out, its depth decides.",
    ).optional(),
    turnoverRule: z
      .union([
        z.literal("none"),
        z.strictObject({
          onset: dayRange("Days from ice-off to the first cloudy day."),
          duration: dayRange("Days it stays cloudy."),
        }),
      ])
      .meta({
        description: "When this lake turns over, or “none” if it never does.",
        examples: [
          "none",
          { onset: { from: "8 days", to: "15 days" }, duration: { from: "8 days", to: "15 days" } },
        ],
      })
      .optional(),
    notes: field(text("Anything else, in Markdown.").optional(), { markdown: true }),
  })
  .meta({
    title: "Lake",
    description: "One lake: lakes/NAME.yaml; the file name is its address in the guide.",
  });
