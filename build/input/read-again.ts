import type { Again } from "../model/again.ts";
import type { Diagnostic } from "../model/diagnostic.ts";

/** Reads a part of the club folder, and adds what is wrong with it to `problems`. */
export type ReadAgain = <T>(
  name: string,
  from: readonly unknown[],
  read: (problems: Diagnostic[]) => T,
  problems: Diagnostic[],
) => T;

/** What need not be read again is as it was, and what was wrong with it is said again. */
export const readAgain =
  (again: Again): ReadAgain =>
  (name, from, read, problems) => {
    const { value, found } = again(name, from, () => {
      const noted: Diagnostic[] = [];
      return { value: read(noted), found: noted };
    });
    problems.push(...found);
    return value;
  };
