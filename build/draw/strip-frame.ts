import type { GuideLake } from "../guide/guide-schema.ts";
import type { CalendarDate } from "../model/calendar.ts";
import type { Ink } from "./ink.ts";
import { roughWidth } from "./lettering.ts";

/** Where things stand in one strip. */
export interface Frame {
  readonly ink: Ink;
  readonly daily: GuideLake["daily"];
  /** Middle of the day the guide speaks from; below 0 when that day is not shown. */
  readonly asOf_x: number;
  readonly from: CalendarDate;
  readonly width: number;
  /** Top and bottom of the areas. */
  readonly top: number;
  readonly bottom: number;
  readonly perDay: number;
}

/** About how wide a text stands in a drawing. */
export const lettering = (text: string, ink: Ink): number => roughWidth(text, ink.textSize);
