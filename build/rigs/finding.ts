import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";

/** A problem with one piece of gear, before it is told where. */
export type Finding = Omit<Diagnostic, keyof SourceSpot>;

export const error = (code: string, message: string, hint: string): Finding => ({
  severity: "error",
  code,
  message,
  hint,
});

export const warning = (code: string, message: string, hint: string): Finding => ({
  severity: "warning",
  code,
  message,
  hint,
});

/** The finding, when it is one. */
export const when = (is: boolean, finding: Finding): Finding[] => (is ? [finding] : []);
