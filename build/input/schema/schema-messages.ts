import { z } from "zod";
import { asWritten, type Fault, isFault, quoted, shortened } from "../../model/fault.ts";
import { REFUSALS, type Refusal } from "../../model/fields/field-kinds.ts";
import { nearestAndList } from "../names.ts";
import { isInvalidValue } from "../problem.ts";
import type { Path } from "../yaml/yaml-document.ts";

export type Schema = z.core.$ZodType;

/** The schema of the value at `path` inside a value of `schema`, without what makes it optional. */
export function schemaAt(schema: Schema | undefined, path: Path): Schema | undefined {
  if (schema instanceof z.ZodOptional) return schemaAt(schema.unwrap(), path);
  const [step, ...rest] = path;
  if (step === undefined) return schema;
  if (schema instanceof z.ZodArray) return schemaAt(schema.element, rest);
  if (schema instanceof z.ZodObject) return schemaAt(schema.shape[String(step)], rest);
  if (schema instanceof z.ZodUnion) return schemaAt(groupOf(schema), path);
  return undefined;
}

/** The group that a union allows, or the schema itself. */
const groupOf = (schema: Schema | undefined): Schema | undefined =>
  schema instanceof z.ZodUnion
    ? schema.options.find((option: Schema) => option instanceof z.ZodObject)
    : schema;

/** The keys of a group. */
export const keysOf = (schema: Schema | undefined): string[] => {
  const group = groupOf(schema);
  return group instanceof z.ZodObject ? Object.keys(group.shape) : [];
};

/** True for a list, too. */
export const isObjectOrArray = (value: unknown): value is object =>
  typeof value === "object" && value !== null;

/** As it would be written on one line. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(", ")}]`;
  if (!isObjectOrArray(value)) return String(value);
  const pairs = Object.entries(value).map(([key, inner]) => `${key}: ${flow(inner)}`);
  return pairs.length === 0 ? "{}" : `{ ${pairs.join(", ")} }`;
}

/** What an editor says about a value of this schema. */
export const descriptionOf = (schema: Schema | undefined): string =>
  (schema instanceof z.ZodType ? schema.description : undefined) ?? "";

/** How a value of this schema may be written, on one line. */
export function examplesOf(schema: Schema | undefined): string[] {
  const { examples } = (schema instanceof z.ZodType ? schema.meta() : undefined) ?? {};
  if (Array.isArray(examples)) return examples.map(flow);
  return schema instanceof z.ZodEnum ? schema.options.map(String) : [];
}

type SchemaIssue = z.core.$ZodIssue;

const described = (raw: unknown): string => {
  if (Array.isArray(raw)) return "a list";
  if (isObjectOrArray(raw)) return "a group of keys";
  return typeof raw === "string" ? `the text ${quoted(raw)}` : asWritten(raw);
};

/** What belongs where a value of another kind was found, and how it is written. */
const WANTED: Readonly<Record<string, { readonly what: string; readonly hint: string }>> = {
  string: { what: "a text", hint: "write a text" },
  number: { what: "a number", hint: "write a number, without quotes and without a unit" },
  int: { what: "a whole number", hint: "write a whole number, without quotes" },
  boolean: { what: "true or false", hint: "write true or false" },
  array: { what: "a list", hint: "write [one, two], or one entry a line, each behind “- ”" },
  object: { what: "a group of keys", hint: "write one “key: value” a line, or { key: value, key: value }" },
};

const EMPTY: Fault = {
  code: "empty-value",
  message: "nothing is written here",
  hint: "write a value, or remove the key",
};

const refusalOf = (schema: Schema | undefined): Refusal | undefined =>
  schema === undefined ? undefined : REFUSALS.get(schema)?.refuse;

function wrongKind(expected: string, raw: unknown, schema: Schema | undefined): Fault {
  const refuse = refusalOf(schema);
  if (expected === "string" && !isObjectOrArray(raw)) {
    if (refuse !== undefined) return refuse(raw);
    return {
      code: "wrong-type",
      message: `${raw} is not read as a text`,
      hint: `put it in quotes: "${raw}"`,
    };
  }
  const isWhole = schema instanceof z.ZodNumber && schema.format === "safeint";
  if (isWhole && refuse !== undefined && !isObjectOrArray(raw)) return refuse(raw);
  const { what, hint } = WANTED[isWhole ? "int" : expected] ?? {
    what: expected,
    hint: "compare with the files of the demo club",
  };
  const [example] = examplesOf(schema);
  const isMany = expected === "array" || expected === "object";
  const withExample = isMany && example !== undefined ? `${hint}, such as ${example}` : hint;
  const isPlain = refuse === undefined || schema instanceof z.ZodNumber;
  const plainHint =
    refuse === undefined
      ? withExample
      : `write a number alone, without letters and signs, such as ${example}`;
  return {
    code: "wrong-type",
    message: `${isPlain ? what : "one value"} belongs here, not ${described(raw)}`,
    hint: isPlain ? plainHint : `write a value such as ${example}`,
  };
}

function outOfRange(
  issue: SchemaIssue & { code: "too_small" | "too_big" },
  raw: unknown,
  schema: Schema | undefined,
): Fault {
  if (issue.origin === "string") return EMPTY;
  if (issue.origin === "array" && issue.code === "too_big")
    return {
      code: "list-too-long",
      message: `the list has more than ${issue.maximum} entries`,
      hint: "keep those that matter most, or join some",
    };
  if (issue.origin === "array")
    return {
      code: "empty-list",
      message: "the list is empty",
      hint: "write at least one entry, or remove the key",
    };
  const refuse = refusalOf(schema);
  if (refuse !== undefined) return refuse(raw);
  const limit = issue.code === "too_small" ? `less than ${issue.minimum}` : `more than ${issue.maximum}`;
  return {
    code: "out-of-range",
    message: `${shortened(asWritten(raw))} is ${limit}`,
    hint:
      schema instanceof z.ZodNumber
        ? `write a number from ${schema.minValue} to ${schema.maxValue}`
        : "check the number",
  };
}

/** What is wrong with a value, in our own words. */
export function faultOf(issue: SchemaIssue, raw: unknown, schema: Schema | undefined): Fault {
  if (raw === null) return EMPTY;
  if (isInvalidValue(raw)) return raw();
  switch (issue.code) {
    case "invalid_type":
      return wrongKind(issue.expected, raw, schema);
    case "too_small":
    case "too_big":
      return outOfRange(issue, raw, schema);
    case "invalid_value":
      return {
        code: "not-a-choice",
        message: `${typeof raw === "string" ? quoted(raw) : described(raw)} is not one of the choices`,
        hint: nearestAndList(asWritten(raw), issue.values.map(String), "choices"),
      };
    case "custom": {
      const { fault } = issue.params ?? {};
      if (isFault(fault)) return fault;
      break;
    }
    case "invalid_union": {
      const refuse = refusalOf(schema);
      if (refuse !== undefined) return refuse(raw);
      break;
    }
  }
  return {
    code: "not-a-choice",
    message: `${typeof raw === "string" ? quoted(raw) : described(raw)} is not one of the choices`,
    hint: `write ${examplesOf(schema).join(" or ")}`,
  };
}
