import { z } from "zod";
import {
  type ClubRecord,
  type FlatPart,
  type Flattened,
  type IsFlat,
  type IsOptional,
  type NameOf,
  notesOf,
} from "../model/fields/field.ts";
import { renderMarkdown } from "./markdown.ts";

type Shape = z.core.$ZodShape;

/** A value of a club file as the Guide holds it: as the Club does, null where there is nothing, HTML for Markdown. */
type Fact<S> =
  S extends z.ZodOptional<infer Inner>
    ? Fact<Inner> | (IsOptional<S> extends true ? null : never)
    : S extends z.ZodArray<infer Element>
      ? Fact<Element>[]
      : S extends z.ZodObject<infer Inner>
        ? FactRecord<Inner>
        : z.output<S>;

type OrNull<T> = { [K in keyof T]: T[K] | null };
type FactRecord<S extends Shape> = Flattened<
  { [K in keyof S as IsFlat<S[K]> extends true ? never : NameOf<K, S[K]>]: Fact<S[K]> } & FlatPart<{
    [K in keyof S as IsFlat<S[K]> extends true ? K : never]: OrNull<NonNullable<Fact<S[K]>>>;
  }>
>;

/** Why keys of a club file are no facts of the Guide. */
export type NotFacts<S extends z.ZodObject> = { readonly [K in keyof S["shape"]]?: string };

type FactsOf<S extends z.ZodObject, Not> = FactRecord<Omit<S["shape"], keyof Not>>;

/** The keys of a club file that the Guide holds as they stand there. */
interface Facts<S extends z.ZodObject, Not> {
  /** What guide.json's schema says of them, in the order of the file's own schema. */
  readonly shape: { [K in keyof FactsOf<S, Not>]: z.ZodType<FactsOf<S, Not>[K]> };
  /** Those of a record of the Club. */
  of(record: ClubRecord<Omit<S["shape"], keyof Not>>): FactsOf<S, Not>;
}

export const html = () => z.string().meta({ description: "HTML made from the club's Markdown, harmless." });

/** What the schema of a key reads, without its limits: those are the file's. */
function readSchema(schema: z.core.$ZodType): z.ZodType {
  if (schema instanceof z.ZodPipe) return schema.out as z.ZodType;
  if (schema instanceof z.ZodArray) return z.array(readSchema(schema.element));
  if (schema instanceof z.ZodObject) return z.strictObject(factShape(schema, {}));
  if (schema instanceof z.ZodEnum) return z.enum(schema.options.map(String));
  if (schema instanceof z.ZodNumber) return z.number();
  if (schema instanceof z.ZodBoolean) return z.boolean();
  if (schema instanceof z.ZodString) return z.string();
  throw new TypeError("a key of this kind is no fact: it is composed by hand");
}

const within = (schema: z.core.$ZodType): z.core.$ZodType =>
  schema instanceof z.ZodOptional ? schema.unwrap() : schema;

/** The keys of a group that are facts. */
const factKeys = (schema: z.ZodObject, not: object): [string, z.core.$ZodType][] =>
  Object.entries<z.core.$ZodType>(schema.shape).filter(([key]) => !Object.hasOwn(not, key));

const orNull = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodNullable ? schema : schema.nullable();

const factShape = (schema: z.ZodObject, not: object): Record<string, z.ZodType> =>
  Object.fromEntries(
    factKeys(schema, not).flatMap(([key, part]): [string, z.ZodType][] => {
      const { as = key, absent, explained, flat, markdown } = notesOf(part);
      const inner = within(part);
      if (flat === true && inner instanceof z.ZodObject)
        return Object.entries(factShape(inner, {})).map(([name, one]) => [name, orNull(one)]);
      const held = markdown === true ? html() : readSchema(inner);
      const told = inner !== part && absent === undefined ? orNull(held) : held;
      return [[as, explained === undefined ? told : told.meta({ description: explained })]];
    }),
  );

function factValue(schema: z.core.$ZodType, value: unknown): unknown {
  if (value === undefined) return null;
  const inner = within(schema);
  if (Array.isArray(value) && inner instanceof z.ZodArray)
    return value.map((entry) => factValue(inner.element, entry));
  return inner instanceof z.ZodObject ? factRecord(inner, {}, value as object) : value;
}

const factRecord = (schema: z.ZodObject, not: object, record: object): object =>
  Object.fromEntries(
    factKeys(schema, not).flatMap(([key, part]): [string, unknown][] => {
      const { as = key, flat, markdown } = notesOf(part);
      const inner = within(part);
      if (flat === true && inner instanceof z.ZodObject) return Object.entries(factRecord(inner, {}, record));
      const value: unknown = Reflect.get(record, as);
      return [
        [as, markdown === true && typeof value === "string" ? renderMarkdown(value) : factValue(part, value)],
      ];
    }),
  );

/** The facts of one kind of club file: every key but those named, each with its reason. */
export const factsOf = <S extends z.ZodObject, const Not extends NotFacts<S>>(
  schema: S,
  not: Not & Readonly<Record<Exclude<keyof Not, keyof S["shape"]>, never>>,
): Facts<S, Not> =>
  ({
    shape: factShape(schema, not),
    of: (record: object) => factRecord(schema, not, record),
  }) as Facts<S, Not>;
