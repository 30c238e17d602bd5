import { z } from "zod";
import { clubSchema } from "./club-file.ts";
import { patternSchema } from "./pattern-file.ts";
import { rigsSchema } from "./rigs-file.ts";
import { lakeSchema } from "./schema/lake-schema.ts";
import { reportsSchema } from "./schema/report-schema.ts";
import { tripSchema } from "./trip-file.ts";

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
