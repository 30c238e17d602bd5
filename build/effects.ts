import type { Asker } from "./commands/asker.ts";
import type { CalendarDate } from "./model/calendar.ts";
import type { Progress } from "./model/progress.ts";

/** What a command may do to the world besides reading and writing files: talk, and look at the calendar. */
export interface Effects {
  /** One line of the answer, to standard output. */
  say(line: string): void;
  /** One line about the run itself, to standard error. */
  warn(line: string): void;
  today(): CalendarDate;
  /** Milliseconds on a clock that runs forward only, from some moment. */
  now_ms(): number;
  /** Absent where nobody wants to know how far a build is. */
  readonly progress?: Progress;
  /** What the program was started with; absent where it does not matter. */
  readonly env?: Readonly<Record<string, string | undefined>>;
  /** Absent where nobody is there to be asked. */
  openAsker?(): Asker;
}

/** How a command ends; the numbers are the process's exit code. */
export const EXIT = { done: 0, badData: 1, badUsage: 2, cannotWrite: 3 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];
