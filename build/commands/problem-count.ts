import type { Diagnostic } from "../model/diagnostic.ts";

/** "1 lake", "2 lakes". */
export const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** "2 errors, 1 warning", or "no problems". */
export function problemCount(problems: readonly Diagnostic[]): string {
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const warnings = problems.length - errors;
  const parts = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(warnings > 0 ? [counted(warnings, "warning")] : []),
  ];
  return parts.length === 0 ? "no problems" : parts.join(", ");
}
