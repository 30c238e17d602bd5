import type { Needs } from "../model/needs.ts";
import type { CardProblem } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import type { Fonts } from "./fonts.ts";

/** Cards placed but not inked yet. */
export interface Placed {
  readonly problems: readonly CardProblem[];
  /** The bytes of each file, in the order of their names. */
  readonly ink: (fonts: Fonts) => Promise<readonly Buffer[]>;
}

/** A file of cards, or a few with the same cards on different papers: what they are made of, and how. */
export interface CardFiles {
  /** Without their ending. */
  readonly names: readonly string[];
  /** What kind of cards; two kinds never share a name for it. */
  readonly kind: string;
  readonly needs: Needs;
  readonly place: (ruler: Ruler) => Placed;
}

/** An error that says which card it is about. */
function ofCard(name: string | undefined, error: unknown): Error {
  const said = error instanceof Error ? error.message : String(error);
  return new Error(`cards/${name}.pdf cannot be made: ${said}`, { cause: error });
}

async function inked(names: readonly string[], ink: () => ReturnType<Placed["ink"]>) {
  try {
    return await ink();
  } catch (error) {
    throw ofCard(names[0], error);
  }
}

/** Files of cards that are placed and inked from `needs` alone: `place` sees nothing else. */
export const cardFiles = <Own extends Needs>(
  kind: string,
  names: readonly string[],
  needs: Own,
  place: (needs: Own, ruler: Ruler) => Placed,
): CardFiles => ({
  names,
  kind,
  needs,
  place: (ruler) => {
    try {
      const { problems, ink } = place(needs, ruler);
      return { problems, ink: (fonts) => inked(names, () => ink(fonts)) };
    } catch (error) {
      throw ofCard(names[0], error);
    }
  },
});
