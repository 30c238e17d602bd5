import { z } from "zod";
import { type CalendarDate, parseCalendarDate } from "../model/calendar.ts";
import type { Fault } from "./problem.ts";
import { asWritten, quoted, shortened } from "./quote.ts";
import { REFUSALS, type Refusal, written } from "./written.ts";

/** `2026-5-9` or `2026/05/09` as it should be written, when it is a day that exists. */
function tidied(text: string): CalendarDate | undefined {
  const match = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(text.trim());
  if (match === null) return undefined;
  return parseCalendarDate(`${match[1]}-${match[2]?.padStart(2, "0")}-${match[3]?.padStart(2, "0")}`);
}

const refuseDay: Refusal = (raw) => {
  const text = asWritten(raw);
  const meant = tidied(text);
  if (meant !== undefined)
    return {
      code: "not-a-date",
      message: `${quoted(text)} is not how a day is written here`,
      hint: `write ${meant}`,
    };
  return /^\d{4}-\d{2}-\d{2}$/.test(text)
    ? {
        code: "no-such-day",
        message: `the calendar has no day ${text}`,
        hint: "check the month and the day; days are written year-month-day",
      }
    : {
        code: "not-a-date",
        message: `${quoted(text)} is not a day`,
        hint: "write year-month-day, such as 2026-05-16",
      };
};

/** A calendar day, `YYYY-MM-DD`, that exists. */
export const day = (description: string) =>
  written((text): CalendarDate | Fault => parseCalendarDate(text) ?? refuseDay(text), refuseDay, {
    description: `${description} Year-month-day.`,
    examples: ["2026-05-16"],
    format: "date",
  });

/** A text that is not empty. */
export const text = (description: string) => z.string().trim().min(1).meta({ description });

/** One of a list of words. */
export const oneOf = <const T extends readonly [string, ...string[]]>(choices: T, description: string) =>
  z.enum(choices).meta({ description });

/** A whole number in a range. */
export const whole = (least: number, most: number, description: string) =>
  z.int().min(least).max(most).meta({ description });

/** How a count up to `most` refuses what is none; `orElse` is another way to write it. */
export const refuseCount =
  (most: number, orElse = ""): Refusal =>
  (raw) => ({
    code: "not-a-count",
    message: `${typeof raw === "string" ? quoted(raw) : shortened(asWritten(raw))} is not a number of things`,
    hint: `write a whole number from 0 to ${most}${orElse}`,
  });

/** A number of things, none included. */
export const count = (most: number, description: string) =>
  whole(0, most, description).register(REFUSALS, { refuse: refuseCount(most) });

const TIPPET_SIZE = /^([0-7](\.5)?|8)X$/;

const refuseSize: Refusal = (raw) => {
  const meant = /^([0-7](?:\.5)?|8) ?x?$/i.exec(asWritten(raw).trim())?.[1];
  return {
    code: "not-a-tippet-size",
    message: `${quoted(asWritten(raw))} is not a tippet size`,
    hint: meant === undefined ? "write 0X to 8X, half sizes as 4.5X" : `write ${meant}X`,
  };
};

/** A tippet size such as 4X or 4.5X, as its number. */
export const tippetSize = (description: string) =>
  written(
    (text): number | Fault => (TIPPET_SIZE.test(text) ? Number.parseFloat(text) : refuseSize(text)),
    refuseSize,
    {
      description: `${description} 0X to 8X, half sizes as 4.5X.`,
      examples: ["4X"],
      pattern: TIPPET_SIZE.source,
    },
  );
