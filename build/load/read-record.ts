import type { z } from "zod";
import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import { issueProblems, unknownKey } from "./issues.ts";
import type { Path, PlacedData, YamlDocument } from "./yaml-document.ts";

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
