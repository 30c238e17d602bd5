import { z } from "zod";
import type { Diagnostic } from "../model/diagnostic.ts";
import { didYouMean, nearestAndList, nearestOrList } from "./did-you-mean.ts";
import { REFUSALS, type Refusal } from "./fields.ts";
import { errorAt, type Fault, isFault } from "./problem.ts";
import type { Path, YamlDocument } from "./yaml-document.ts";

type Schema = z.core.$ZodType;
type Issue = z.core.$ZodIssue;

/** The schema of the value at `path` inside a value of `schema`, without what makes it optional. */
function schemaAt(schema: Schema | undefined, path: Path): Schema | undefined {
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

const keysOf = (schema: Schema | undefined): string[] => {
  const group = groupOf(schema);
  return group instanceof z.ZodObject ? Object.keys(group.shape) : [];
};

const isGroup = (value: unknown): value is object => typeof value === "object" && value !== null;

const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>((value, step) => (isGroup(value) ? Reflect.get(value, step) : undefined), data);

/** "depth.max", "iceOff.by": the keys that lead to a value, without list positions. */
const labelOf = (path: Path): string =>
  path
    .filter((step) => typeof step !== "number")
    .map(String)
    .join(".");

const labelled = (path: Path, fault: Fault): Fault =>
  labelOf(path) === "" ? fault : { ...fault, message: `${labelOf(path)}: ${fault.message}` };

const LONGEST_QUOTE = 40;
const quoted = (text: string): string =>
  `“${text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE - 1)}…` : text}”`;

const described = (raw: unknown): string => {
  if (Array.isArray(raw)) return "a list";
  if (isGroup(raw)) return "a group of keys";
  return typeof raw === "string" ? `the text ${quoted(raw)}` : String(raw);
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
  if (expected === "string" && !isGroup(raw)) {
    if (refuse !== undefined) return refuse(raw);
    return {
      code: "wrong-type",
      message: `${raw} is not read as a text`,
      hint: `put it in quotes: "${raw}"`,
    };
  }
  const isWhole = schema instanceof z.ZodNumber && schema.format === "safeint";
  const { what, hint } = WANTED[isWhole ? "int" : expected] ?? {
    what: expected,
    hint: "compare with the files of the demo club",
  };
  return {
    code: "wrong-type",
    message: `${refuse === undefined ? what : "one value"} belongs here, not ${described(raw)}`,
    hint: refuse === undefined ? hint : `write a value such as ${examplesOf(schema)[0]}`,
  };
}

function outOfRange(
  issue: Issue & { code: "too_small" | "too_big" },
  raw: unknown,
  schema: Schema | undefined,
): Fault {
  if (issue.origin === "string") return EMPTY;
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
    message: `${String(raw)} is ${limit}`,
    hint:
      schema instanceof z.ZodNumber
        ? `write a number from ${schema.minValue} to ${schema.maxValue}`
        : "check the number",
  };
}

/** A key that does not belong in the group at `path`. */
export function unknownKey(key: string, path: Path, known: readonly string[], doc: YamlDocument): Diagnostic {
  const [first, ...rest] = key.split(" ");
  const colonLeftOut =
    first !== undefined && known.includes(first) && valueAt(doc.data, [...path, key]) === null;
  const group = labelOf(path);
  return errorAt(doc.keySpot([...path, key]), {
    code: "unknown-key",
    message: `unknown key ${quoted(key)}${group === "" ? "" : ` in ${group}`}`,
    hint: colonLeftOut ? `did you mean “${first}: ${rest.join(" ")}”?` : nearestOrList(key, known, "keys"),
  });
}

/** As it would be written on one line. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(", ")}]`;
  if (!isGroup(value)) return String(value);
  const pairs = Object.entries(value).map(([key, inner]) => `${key}: ${flow(inner)}`);
  return `{ ${pairs.join(", ")} }`;
}

function examplesOf(schema: Schema | undefined): string[] {
  const { examples } = (schema instanceof z.ZodType ? schema.meta() : undefined) ?? {};
  if (Array.isArray(examples)) return examples.map(flow);
  return schema instanceof z.ZodEnum ? schema.options.map(String) : [];
}

/** A key that must be there and is not; nothing where a misspelt one stands, for that one is reported itself. */
function missingKey(path: Path, doc: YamlDocument, root: Schema, inner: Path): Diagnostic[] {
  const key = String(path.at(-1));
  const siblings = keysOf(schemaAt(root, inner.slice(0, -1)));
  const group = valueAt(doc.data, path.slice(0, -1));
  const misspelt = (isGroup(group) ? Object.keys(group) : []).some(
    (other) =>
      !siblings.includes(other) && (didYouMean(other, siblings) === key || other.startsWith(`${key} `)),
  );
  if (misspelt) return [];
  const [example] = examplesOf(schemaAt(root, inner));
  const fault: Fault = {
    code: "missing-key",
    message: `“${key}” is missing`,
    hint: `add “${key}: ${example ?? "…"}”`,
  };
  return [errorAt(doc.spot(path.slice(0, -1)), labelled(path.slice(0, -1), fault))];
}

/** What is wrong inside the group that a union allows; nothing where another kind of value was written. */
const groupBranch = (issue: Issue & { code: "invalid_union" }, raw: unknown): readonly Issue[] =>
  isGroup(raw) && !Array.isArray(raw)
    ? (issue.errors.find((issues) => issues.every(({ code }) => code !== "invalid_value")) ?? [])
    : [];

function faultOf(issue: Issue, raw: unknown, schema: Schema | undefined): Fault {
  if (raw === null) return EMPTY;
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
        hint: nearestAndList(String(raw), issue.values.map(String), "choices"),
      };
    case "custom": {
      const { fault } = issue.params ?? {};
      if (isFault(fault)) return fault;
      break;
    }
  }
  return {
    code: "not-a-choice",
    message: `${typeof raw === "string" ? quoted(raw) : described(raw)} is not one of the choices`,
    hint: `write ${examplesOf(schema).join(" or ")}`,
  };
}

/**
 * One zod issue in our own words, at its own place.
 * @param root the schema that was parsed
 * @param base where the parsed value stands in the file
 */
export function issueProblems(issue: Issue, root: Schema, base: Path, doc: YamlDocument): Diagnostic[] {
  const path = [...base, ...issue.path];
  const schema = schemaAt(root, issue.path);
  const raw = valueAt(doc.data, path);
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => unknownKey(key, path, keysOf(schema), doc));
  if (raw === undefined) return missingKey(path, doc, root, issue.path);
  const deeper = issue.code === "invalid_union" ? groupBranch(issue, raw) : [];
  if (deeper.length > 0)
    return deeper.flatMap((inner) =>
      issueProblems({ ...inner, path: [...issue.path, ...inner.path] }, root, base, doc),
    );
  return [errorAt(doc.spot(path), labelled(path, faultOf(issue, raw, schema)))];
}
