import { z } from "zod";
import { ICE_STATES } from "../model/club.ts";
import { PHASES } from "../model/phase.ts";
import { day, oneOf, text, whole } from "./fields.ts";
import { quantity } from "./quantity.ts";

export const reportRow = z
  .strictObject({
    lake: text("File name of the lake, without .yaml."),
    date: day("The day it was seen."),
    ice: oneOf(ICE_STATES, "Ice on the lake.").optional(),
    phase: oneOf(PHASES, "The phase the water was in, as seen.").optional(),
    water: quantity("temperature", {
      description: "Water temperature near the surface.",
      example: "44 degF",
      least: "-1 degC",
      most: "40 degC",
    }).optional(),
    clarity: quantity("length", {
      description: "Secchi depth: where a white disc goes out of sight.",
      example: "8 ft",
      least: "0 m",
      most: "80 m",
    }).optional(),
    oxygen: quantity("oxygen", {
      description: "Dissolved oxygen.",
      example: "9.8 mg/L",
      least: "0 mg/L",
      most: "30 mg/L",
    }).optional(),
    rods: whole(1, 100, "How many people fished.").optional(),
    hours: quantity("duration", {
      description: "How long they fished.",
      example: "6 h",
      above: "0 h",
      most: "24 h",
    }).optional(),
    notes: text("Anything else.").optional(),
  })
  .meta({ description: "What one person saw on one lake on one day." });

export const reportsSchema = z.array(reportRow).meta({
  title: "Reports",
  description: "What members saw in one season: reports/YEAR.yaml, one row a visit.",
});
