import type { CardProblem } from "./card-problem.ts";
import type { Fonts } from "./fonts.ts";

/** A file placed but not inked yet. */
export interface Planned {
  /** Without its ending. */
  readonly name: string;
  readonly problems: readonly CardProblem[];
  readonly make: (fonts: Fonts) => Promise<Buffer>;
}
