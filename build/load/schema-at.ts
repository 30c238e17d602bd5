import { z } from "zod";
import type { Path } from "./yaml-document.ts";

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
export const isGroup = (value: unknown): value is object => typeof value === "object" && value !== null;

/** As it would be written on one line. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(", ")}]`;
  if (!isGroup(value)) return String(value);
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
