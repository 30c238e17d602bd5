import { z } from "zod";
import { clubSchema } from "../model/fields/club-fields.ts";
import { lakeSchema } from "../model/fields/lake-fields.ts";
import { patternSchema } from "../model/fields/pattern-fields.ts";
import { reportsSchema } from "../model/fields/report-fields.ts";
import { rigsSchema } from "../model/fields/rigs-fields.ts";
import { tripSchema } from "../model/fields/trip-fields.ts";

/** JSON Schema, draft 2020-12, of each kind of club file; editors complete and explain keys by it. */
export function inputSchemas(): Record<string, object> {
  const kinds = {
    club: clubSchema,
    lake: lakeSchema,
    pattern: patternSchema,
    reports: reportsSchema,
    trip: tripSchema,
    rigs: rigsSchema,
  };
  return Object.fromEntries(
    Object.entries(kinds).map(([kind, schema]) => [kind, z.toJSONSchema(schema, { io: "input" })]),
  );
}

/** Where the schema of a kind of file lies for the editor, relative to the club folder. Hidden, so it is no club data. */
export const schemaFile = (kind: string): string => `.schema/${kind}.schema.json`;
