import type { Effects } from "../effects.ts";

/** Where an error began: the stack of what caused it first. */
const rootOf = (error: unknown): unknown => {
  if (!(error instanceof Error)) return error;
  return error.cause === undefined ? error.stack : rootOf(error.cause);
};

/** A fault of the program itself: what failed for whoever ran it, and where for whoever mends it. */
export function warnOfFault(error: unknown, outDir: string, effects: Effects): void {
  effects.warn(`The program failed: ${error instanceof Error ? error.message : String(error)}`);
  effects.warn(`Nothing written, ${outDir} is as it was. For the developers:`);
  effects.warn(String(rootOf(error)));
}
