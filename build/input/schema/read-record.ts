import type { z } from "zod";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { type Fault, quoted } from "../../model/fault.ts";
import { KEYS_NAMED } from "../../model/fields/field-kinds.ts";
import { didYouMean, nearestAndList, nearestOrList } from "../names.ts";
import { errorAt, isInvalidValue } from "../problem.ts";
import type { Path, PlacedData, YamlDocument } from "../yaml/yaml-document.ts";
import { examplesOf, faultOf, isObjectOrArray, keysOf, type Schema, schemaAt } from "./schema-messages.ts";

/** The same record with its undefined values optional. */
type OmitUndefined<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Leaves out the keys that have no value. */
export const omitUndefined = <T extends object>(record: T): OmitUndefined<T> =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as OmitUndefined<T>;

type Issue = z.core.$ZodIssue;

const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, step) => (isObjectOrArray(value) ? Reflect.get(value, step) : undefined),
    data,
  );

/** "depth.max", "iceOff.by": the keys that lead to a value, without list positions. */
const labelOf = (path: Path): string =>
  path
    .filter((step) => typeof step !== "number")
    .map(String)
    .join(".");

const labelled = (path: Path, fault: Fault): Fault =>
  labelOf(path) === "" ? fault : { ...fault, message: `${labelOf(path)}: ${fault.message}` };

/** A key that does not belong in the group at `path`. */
function unknownKey(key: string, path: Path, known: readonly string[], doc: PlacedData): Diagnostic {
  const [first, ...rest] = key.split(" ");
  const colonLeftOut =
    first !== undefined && known.includes(first) && valueAt(doc.data, [...path, key]) === null;
  const [, tight, value] = /^(\w+):(\S.*)$/.exec(key) ?? [];
  const hint = (): string => {
    if (/^\d+$/.test(key)) return "write numbers with a point, not a comma: 41.3";
    if (tight !== undefined && known.includes(tight))
      return `write a space behind the colon: ${quoted(`${tight}: ${value}`)}`;
    return colonLeftOut
      ? `did you mean ${quoted(`${first}: ${rest.join(" ")}`)}?`
      : nearestOrList(key, known, "keys");
  };
  const group = labelOf(path);
  return errorAt(doc.keySpot([...path, key]), {
    code: "unknown-key",
    message: `unknown key ${quoted(key)}${group === "" ? "" : ` in ${group}`}`,
    hint: hint(),
  });
}

/** A key that must be there and is not; nothing where a misspelt one stands, for that one is reported itself. */
function missingKey(path: Path, doc: PlacedData, root: Schema, inner: Path): Diagnostic[] {
  const key = String(path.at(-1));
  const siblings = keysOf(schemaAt(root, inner.slice(0, -1)));
  const group = valueAt(doc.data, path.slice(0, -1));
  const misspelt = (isObjectOrArray(group) ? Object.keys(group) : []).some(
    (other) =>
      !siblings.includes(other) &&
      (didYouMean(other, siblings) === key ||
        (/^[ :]/.test(other.slice(key.length)) && other.startsWith(key))),
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

/** The issue says that a value of another kind belongs here, not that something is wrong with the value. */
const isOfKind = ({ code, path }: Issue): boolean =>
  path.length === 0 && (code === "invalid_type" || code === "invalid_value");

/** What is wrong inside the group that a union allows; nothing where another kind of value was written. */
const groupBranch = (issue: Issue & { code: "invalid_union" }, raw: unknown): readonly Issue[] =>
  isObjectOrArray(raw) && !Array.isArray(raw)
    ? (issue.errors.find((issues) => !issues.some(isOfKind)) ?? [])
    : [];

/** A key that is none of a list of words. */
const unknownWord = (
  key: string,
  path: Path,
  known: readonly string[],
  named: { code: string; one: string; all: string },
  doc: PlacedData,
): Diagnostic =>
  errorAt(doc.keySpot([...path, key]), {
    code: named.code,
    message: `${labelOf(path)}: there is no ${named.one} ${quoted(key)}`,
    hint: nearestAndList(key, known, named.all),
  });

/**
 * One zod issue in our own words, at its own place.
 * @param root the schema that was parsed
 * @param base where the parsed value stands in the file
 */
function issueProblems(issue: Issue, root: Schema, base: Path, doc: PlacedData): Diagnostic[] {
  const path = [...base, ...issue.path];
  const schema = schemaAt(root, issue.path);
  const raw = valueAt(doc.data, path);
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => {
      const named = schema === undefined ? undefined : KEYS_NAMED.get(schema);
      return named === undefined
        ? unknownKey(key, path, keysOf(schema), doc)
        : unknownWord(key, path, keysOf(schema), named, doc);
    });
  // A text's length is checked too, and a function has one.
  if (isInvalidValue(raw) && issue.code === "too_small") return [];
  if (raw === undefined) return missingKey(path, doc, root, issue.path);
  // zod measures whatever has a length, a group with such a key too, which is refused for its kind already.
  if (issue.code === "too_small" && isObjectOrArray(raw) && !Array.isArray(raw)) return [];
  const deeper = issue.code === "invalid_union" ? groupBranch(issue, raw) : [];
  if (deeper.length > 0)
    return deeper.flatMap((inner) =>
      issueProblems({ ...inner, path: [...issue.path, ...inner.path] }, root, base, doc),
    );
  return [errorAt(doc.spot(path), labelled(path, faultOf(issue, raw, schema)))];
}

/** A list entry that was read, with its place. */
export interface Row<T> {
  readonly value: T;
  readonly path: Path;
  readonly where: SourceSpot;
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function parsed<S extends z.ZodType>(
  schema: S,
  raw: unknown,
  path: Path,
  doc: PlacedData,
  problems: Diagnostic[],
): z.output<S> | undefined {
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  for (const issue of result.error.issues)
    for (const problem of issueProblems(issue, schema, path, doc)) problems.push(problem);
  return undefined;
}

/**
 * Reads a file's keys one by one, so that a mistake in one does not hide those in others.
 * @param rowKeys keys that hold lists of rows; they are left to {@link readRows}
 */
export function readRecord<Shape extends z.ZodRawShape>(
  schema: z.ZodObject<Shape>,
  doc: YamlDocument,
  problems: Diagnostic[],
  rowKeys: readonly string[] = [],
): Partial<z.output<z.ZodObject<Shape>>> {
  const { data } = doc;
  if (!isGroup(data)) {
    parsed(schema, data, [], doc, problems);
    return {};
  }
  const known = Object.keys(schema.shape);
  for (const key of Object.keys(data))
    if (!known.includes(key)) problems.push(unknownKey(key, [], known, doc));
  const values = Object.entries<z.core.$ZodType>(schema.shape).flatMap(([key, field]) => {
    if (rowKeys.includes(key)) return [];
    const value = parsed(field as z.ZodType, data[key], [key], doc, problems);
    return value === undefined ? [] : [[key, value]];
  });
  return Object.fromEntries(values) as Partial<z.output<z.ZodObject<Shape>>>;
}

/** Reads a list of rows, row by row; rows with mistakes are reported and left out. `path` may lead nowhere: no rows. */
export function readRows<S extends z.ZodType>(
  list: z.ZodArray<S>,
  path: Path,
  doc: PlacedData,
  problems: Diagnostic[],
): Row<z.output<S>>[] {
  const raw = path.reduce<unknown>(
    (value, step) => (isGroup(value) ? value[String(step)] : undefined),
    doc.data,
  );
  if (raw === undefined) return [];
  if (!Array.isArray(raw) || raw.length === 0) {
    parsed(list, raw, path, doc, problems);
    return [];
  }
  return raw.flatMap((entry, i) => {
    const rowPath = [...path, i];
    const value = parsed(list.element, entry, rowPath, doc, problems);
    return value === undefined ? [] : [{ value, path: rowPath, where: doc.spot(rowPath) }];
  });
}
