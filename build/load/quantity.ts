import { QUANTITY_KINDS, type QuantityKindName, toBase, unitMeant } from "../model/units.ts";
import type { Fault } from "./problem.ts";
import { asWritten, quoted, shortened } from "./quote.ts";
import { type Refusal, written } from "./written.ts";

export interface QuantityLimits {
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
  return written(read, refuse, {
    description: `${limits.description} A number with its unit: ${allowed.join(", ")}.`,
    examples: [limits.example],
    pattern: `^\\s*[+-]?(\\d+(\\.\\d+)?|\\.\\d+)\\s*(${allowed.join("|")})\\s*$`,
  });
}
