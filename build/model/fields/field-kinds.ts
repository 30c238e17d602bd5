import { z } from "zod";
import { type CalendarDate, parseCalendarDate } from "../calendar.ts";
import { asWritten, type Fault, isFault, quoted, shortened } from "../fault.ts";
import { dateSchema } from "../shared-schemas.ts";
import { QUANTITY_KINDS, type QuantityKindName, toBase, unitMeant } from "../units.ts";

/** Says what is wrong with a value written where a field of this kind belongs. */
export type Refusal = (raw: unknown) => Fault;

/** How each field of a special kind refuses a value that is not even a text; read by the issue translator. */
export const REFUSALS = z.registry<{ refuse: Refusal }>();

/** What the keys of a group are where they are words of our own list, such as foods; read by the issue translator. */
export const KEYS_NAMED = z.registry<{ code: string; one: string; all: string }>();

const QUANTITIES = z.registry<{ kind: QuantityKindName }>();

/** What kind of quantity the schema reads, optional or not; undefined where it is none. */
export const quantityKindOf = (schema: z.core.$ZodType): QuantityKindName | undefined =>
  schema instanceof z.ZodOptional ? quantityKindOf(schema.unwrap()) : QUANTITIES.get(schema)?.kind;

/** What an editor shows: a sentence, and values to start from. */
interface Shown {
  readonly description: string;
  readonly examples: readonly string[];
  readonly pattern?: string;
  readonly format?: string;
}

/** A text that `read` turns into a value of `output`, or `refuse` explains. */
function parsedString<T>(
  output: z.ZodType<T>,
  read: (text: string) => T | Fault,
  refuse: Refusal,
  shown: Shown,
) {
  const { examples, ...rest } = shown;
  return z
    .string()
    .transform((text, context): T => {
      const value = read(text);
      if (!isFault(value)) return value;
      context.issues.push({ code: "custom", input: text, message: value.message, params: { fault: value } });
      return z.NEVER;
    })
    .pipe(output as z.ZodType<T, Awaited<T>>)
    .meta({ ...rest, examples: [...examples] })
    .register(REFUSALS, { refuse });
}

/** `2026-5-9` or `2026/05/09` as it should be written, when it is a day that exists. */
function normalizedDate(text: string): CalendarDate | undefined {
  const match = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(text.trim());
  if (match === null) return undefined;
  return parseCalendarDate(`${match[1]}-${match[2]?.padStart(2, "0")}-${match[3]?.padStart(2, "0")}`);
}

const refuseDay: Refusal = (raw) => {
  const text = asWritten(raw);
  const meant = normalizedDate(text);
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
  parsedString(dateSchema, (text) => parseCalendarDate(text) ?? refuseDay(text), refuseDay, {
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
  parsedString(
    z.number(),
    (text) => (TIPPET_SIZE.test(text) ? Number.parseFloat(text) : refuseSize(text)),
    refuseSize,
    {
      description: `${description} 0X to 8X, half sizes as 4.5X.`,
      examples: ["4X"],
      pattern: TIPPET_SIZE.source,
    },
  );

interface QuantityLimits {
  readonly description: string;
  /** A value to copy, such as "8 ft". */
  readonly example: string;
  /** The least allowed, in any unit of the kind; zero itself is refused where `above` is set. */
  readonly least?: string;
  readonly above?: string;
  readonly most?: string;
}

const QUANTITY = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*([^\d\s.,+-]\D*|km2|kg\/m3|g\/cm3)$/;

interface Parts {
  readonly value: number;
  readonly unit: string;
}

function partsOf(text: string): Parts | undefined {
  const match = QUANTITY.exec(text.trim());
  return match === null ? undefined : { value: Number(match[1]), unit: (match[2] ?? "").trim() };
}

const unitsOf = (kind: QuantityKindName): readonly string[] => QUANTITY_KINDS[kind].allowed;

function baseOf(text: string, kind: QuantityKindName): number {
  const parts = partsOf(text);
  if (parts === undefined || !unitsOf(kind).includes(parts.unit))
    throw new RangeError(`${text} is no ${kind} quantity`);
  return toBase(parts.value, parts.unit, kind);
}

/**
 * A number with its unit in one text, turned into the kind's base unit.
 * @throws RangeError when a limit is not itself a quantity of the kind
 */
export function quantity(kind: QuantityKindName, limits: QuantityLimits) {
  const allowed = unitsOf(kind);
  const units = `allowed here: ${allowed.join(", ")}`;
  const least = limits.least === undefined ? Number.NEGATIVE_INFINITY : baseOf(limits.least, kind);
  const above = limits.above === undefined ? Number.NEGATIVE_INFINITY : baseOf(limits.above, kind);
  const most = limits.most === undefined ? Number.POSITIVE_INFINITY : baseOf(limits.most, kind);

  const read = (text: string): number | Fault => {
    const parts = partsOf(text);
    if (parts === undefined) return refuse(text);
    if (!allowed.includes(parts.unit)) return wrongUnit(parts);
    const value = toBase(parts.value, parts.unit, kind);
    const outside = (message: string): Fault => ({
      code: "out-of-range",
      message: `${shortened(text)} ${message}`,
      hint: `write a value such as ${limits.example}`,
    });
    if (value <= above) return outside(`is not more than ${limits.above}`);
    if (value < least) return outside(`is less than ${limits.least}`);
    if (value > most) return outside(`is more than ${limits.most}`);
    return value;
  };
  const wrongUnit = ({ value, unit }: Parts): Fault => {
    const meant = unitMeant(unit, kind);
    return {
      code: "wrong-unit",
      message: `${quoted(unit)} is not a unit that can be used here`,
      hint: meant === undefined ? units : `write ${value} ${meant}; ${units}`,
    };
  };
  const refuse: Refusal = (raw) => {
    const text = asWritten(raw).trim();
    if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(text))
      return {
        code: "missing-unit",
        message: `${shortened(text)} has no unit`,
        hint: `write the unit behind the number; ${units}`,
      };
    const withoutComma = partsOf(text.replace(/(\d),(\d{3})(?!\d)/, "$1$2").replace(/(\d),(\d)/, "$1.$2"));
    return {
      code: "not-a-quantity",
      message: `${quoted(text)} is not one number with a unit`,
      hint:
        text.includes(",") && withoutComma !== undefined
          ? `write ${withoutComma.value} ${withoutComma.unit}`
          : `write it like ${limits.example}; ${units}`,
    };
  };
  return parsedString(z.number(), read, refuse, {
    description: `${limits.description} A number with its unit: ${allowed.join(", ")}.`,
    examples: [limits.example],
    pattern: `^\\s*[+-]?(\\d+(\\.\\d+)?|\\.\\d+)\\s*(${allowed.join("|")})\\s*$`,
  }).register(QUANTITIES, { kind });
}
