import { z } from "zod";
import { type Fault, isFault } from "./problem.ts";

/** Says what is wrong with a value written where a field of this kind belongs. */
export type Refusal = (raw: unknown) => Fault;

/** How each field of a special kind refuses a value that is not even a text; read by the issue translator. */
export const REFUSALS = z.registry<{ refuse: Refusal }>();

/** What the keys of a group are where they are words of our own list, such as foods; read by the issue translator. */
export const KEYS_NAMED = z.registry<{ code: string; one: string; all: string }>();

/** What an editor shows: a sentence, and values to start from. */
interface Shown {
  readonly description: string;
  readonly examples: readonly string[];
  readonly pattern?: string;
  readonly format?: string;
}

/** A text that `read` turns into a value, or `refuse` explains. */
export function written<T>(read: (text: string) => T | Fault, refuse: Refusal, shown: Shown) {
  const { examples, ...rest } = shown;
  return z
    .string()
    .transform((text, context): T => {
      const value = read(text);
      if (!isFault(value)) return value;
      context.issues.push({ code: "custom", input: text, message: value.message, params: { fault: value } });
      return z.NEVER;
    })
    .meta({ ...rest, examples: [...examples] })
    .register(REFUSALS, { refuse });
}
