import type { CardFiles, CardKind, CardTools, Placed } from "./card-file.ts";
import { LABELS } from "./labels-files.ts";
import { LAKE_CARDS, LAKE_SHEETS } from "./lake-cards.ts";
import { REPORT_SLIPS } from "./report-slip-files.ts";
import { RIG_CARDS } from "./rig-card-files.ts";
import { TRIP_CARDS } from "./trip-card-files.ts";

const KINDS: readonly CardKind<never>[] = [
  LAKE_CARDS,
  LAKE_SHEETS,
  RIG_CARDS,
  LABELS,
  REPORT_SLIPS,
  TRIP_CARDS,
];

/** An error that says which card it is about. */
function ofCard(name: string | undefined, error: unknown): Error {
  const said = error instanceof Error ? error.message : String(error);
  return new Error(`cards/${name}.pdf cannot be made: ${said}`, { cause: error });
}

/** Places files of cards of any kind. @throws naming the card that cannot be made, also when they are inked */
export function placeCards({ kind, names, needs }: CardFiles, tools: CardTools): Placed {
  try {
    const known = KINDS.find((one) => one.kind === kind);
    if (known === undefined) throw new Error(`no kind of cards is called “${kind}”`);
    const { problems, ink } = known.place(needs as never, tools);
    return {
      problems,
      ink: async (fonts) => {
        try {
          return await ink(fonts);
        } catch (error) {
          throw ofCard(names[0], error);
        }
      },
    };
  } catch (error) {
    throw ofCard(names[0], error);
  }
}
