import { z } from "zod";
import type { CalendarDate } from "./calendar.ts";

/** A calendar day in the exported data: `YYYY-MM-DD`. */
export const dateSchema = z.iso.date() as unknown as z.ZodType<CalendarDate>;

/** A day that is not known for sure: one chance in ten that it comes before p10, one in two before p50, one in ten after p90. */
export const spreadSchema = z.strictObject({ p10: dateSchema, p50: dateSchema, p90: dateSchema });
export type Spread = z.infer<typeof spreadSchema>;

/** A probability, 0 to 1. */
export const chanceSchema = z.number().min(0).max(1);
