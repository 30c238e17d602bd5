import { z } from "zod";

/** What the schema of a key does not say: how its value goes on into the Club and the Guide. */
export interface FieldNotes {
  /** Its name in the Club where that is not the key: SI units stand in names. */
  readonly as?: string;
  /** What the Club holds where the key is left out; without it, nothing. */
  readonly absent?: false | 0 | string | readonly [] | Readonly<Record<string, never>>;
  /** The keys of this group are keys of the record it stands in. */
  readonly flat?: true;
  /** Markdown in the Club, HTML in the Guide. */
  readonly markdown?: true;
  /** What a column of a table holds that stands for it; without it, no cell can hold it. */
  readonly column?: string;
  /** What the Guide's JSON Schema says about it. */
  readonly explained?: string;
}

/** A schema with its notes, as far as they matter to types; nothing at run time. */
interface Noted<N> {
  readonly "~notes": N;
}

const NOTES = z.registry<FieldNotes>();

/** The schema of a key with its notes. */
export function field<S extends z.ZodType, const N extends FieldNotes>(schema: S, notes: N): S & Noted<N> {
  NOTES.add(schema, notes);
  return schema as S & Noted<N>;
}

/** The notes of a key, be they of its schema or of what that makes optional. */
export const notesOf = (schema: z.core.$ZodType): FieldNotes =>
  NOTES.get(schema) ?? (schema instanceof z.ZodOptional ? notesOf(schema.unwrap()) : {});

type Shape = z.core.$ZodShape;
type NotesOf<S> =
  S extends Noted<infer N> ? N : S extends z.ZodOptional<infer Inner> ? NotesOf<Inner> : object;
export type NameOf<Key, S> = NotesOf<S> extends { readonly as: infer Name extends string } ? Name : Key;
export type IsFlat<S> = NotesOf<S> extends { readonly flat: true } ? true : false;
/** True where the Club may hold nothing for the key. */
export type IsOptional<S> = S extends z.ZodOptional
  ? NotesOf<S> extends { readonly absent: unknown }
    ? false
    : true
  : false;

type Intersection<U> = (U extends unknown ? (value: U) => void : never) extends (value: infer I) => void
  ? I
  : never;
/** The keys of groups that are flat, as keys of the record they stand in. */
export type FlatPart<Records> = Intersection<Records[keyof Records]>;
export type Flattened<T> = { [K in keyof T]: T[K] };

/** A value as the Club holds it. */
type ClubValue<S> =
  S extends z.ZodOptional<infer Inner>
    ? ClubValue<Inner>
    : S extends z.ZodArray<infer Element>
      ? readonly ClubValue<Element>[]
      : S extends z.ZodObject<infer Inner>
        ? ClubRecord<Inner>
        : z.output<S>;

/** A group of keys as the Club holds it: names with their units; what was left out has no key. */
export type ClubRecord<S extends Shape> = Flattened<
  {
    readonly [K in keyof S as IsFlat<S[K]> extends true
      ? never
      : IsOptional<S[K]> extends true
        ? never
        : NameOf<K, S[K]>]: ClubValue<S[K]>;
  } & {
    readonly [K in keyof S as IsFlat<S[K]> extends true
      ? never
      : IsOptional<S[K]> extends true
        ? NameOf<K, S[K]>
        : never]?: ClubValue<S[K]>;
  } & FlatPart<{ [K in keyof S as IsFlat<S[K]> extends true ? K : never]: Partial<ClubValue<S[K]>> }>
>;

/** A record of the Club read by this schema. */
export type ClubOf<S extends z.ZodObject> = ClubRecord<S["shape"]>;

function clubValue(schema: z.core.$ZodType, value: unknown): unknown {
  if (schema instanceof z.ZodOptional) return clubValue(schema.unwrap(), value);
  if (schema instanceof z.ZodArray && Array.isArray(value))
    return value.map((entry) => clubValue(schema.element, entry));
  return schema instanceof z.ZodObject ? Object.fromEntries(clubEntries(schema, value as object)) : value;
}

const clubEntries = (schema: z.ZodObject, value: object): [string, unknown][] =>
  Object.entries<z.core.$ZodType>(schema.shape).flatMap(([key, part]): [string, unknown][] => {
    const { as = key, absent, flat } = notesOf(part);
    const written: unknown = Reflect.get(value, key);
    const held = written === undefined ? absent : clubValue(part, written);
    if (held === undefined) return [];
    return flat === true ? Object.entries(held as object) : [[as, held]];
  });

/** A group of keys that was read, as the Club holds it. */
export const clubRecord = <S extends z.ZodObject>(schema: S, value: z.output<S>): ClubOf<S> =>
  Object.fromEntries(clubEntries(schema, value)) as ClubOf<S>;

/**
 * The same of a group whose keys were read one by one, some with mistakes: undefined when a key is missing that must be
 * there; any other counts as left out.
 */
export function clubRecordIfWhole<S extends z.ZodObject>(
  schema: S,
  read: Partial<z.output<S>>,
): ClubOf<S> | undefined {
  const isWhole = Object.entries<z.core.$ZodType>(schema.shape).every(
    ([key, part]) => part instanceof z.ZodOptional || key in read,
  );
  return isWhole ? clubRecord(schema, read as z.output<S>) : undefined;
}

/** The names under which the Club holds a schema's keys. */
export const clubNames = <S extends z.ZodObject>(schema: S): (keyof ClubOf<S>)[] =>
  Object.entries<z.core.$ZodType>(schema.shape).map(
    ([key, part]) => notesOf(part).as ?? key,
  ) as (keyof ClubOf<S>)[];
