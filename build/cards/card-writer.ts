import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { ADDRESS } from "../model/addresses.ts";
import type { CardFiles, CardKind, CardProblem, CardTools, LakeLayout, PlacedCards } from "./card-kind.ts";
import { LABELS } from "./labels/labels.ts";
import { LAKE_CARDS, LAKE_SHEETS } from "./lake/lake-cards.ts";
import { LAUNCH_CARDS } from "./launch-card.ts";
import { createRuler, parseFonts } from "./pdf/document.ts";
import { REPORT_SLIPS } from "./report-slip.ts";
import { RIG_CARDS } from "./rig/rig-cards.ts";
import { TRIP_CARDS } from "./trip/trip-cards.ts";

const KINDS: readonly CardKind<never>[] = [
  LAKE_CARDS,
  LAKE_SHEETS,
  LAUNCH_CARDS,
  RIG_CARDS,
  LABELS,
  REPORT_SLIPS,
  TRIP_CARDS,
];

/** An error that says which card it is about. */
function ofCard(name: string | undefined, error: unknown): Error {
  const said = error instanceof Error ? error.message : String(error);
  return new Error(`${ADDRESS.card(name ?? "")} cannot be made: ${said}`, { cause: error });
}

/** Places files of cards of any kind. @throws naming the card that cannot be made, also when they are inked */
export function placeCards({ kind, names, inputs }: CardFiles, tools: CardTools): PlacedCards {
  try {
    const known = KINDS.find((one) => one.kind === kind);
    if (known === undefined) throw new Error(`no kind of cards is called “${kind}”`);
    const placed = known.place(inputs as never, tools);
    return {
      ...placed,
      ink: async (fonts) => {
        try {
          return await placed.ink(fonts);
        } catch (error) {
          throw ofCard(names[0], error);
        }
      },
    };
  } catch (error) {
    throw ofCard(names[0], error);
  }
}

/** Makes files of cards that belong together. */
type CardWriter = (
  batch: readonly CardFiles[],
  made: (files: number) => void,
) => Promise<readonly CardProblem[]>;

/**
 * What writes cards into `outDir`: one file is placed, written and forgotten before the next. Files after one that does
 * not fit are placed, for what does not fit on them, but not written.
 */
export function openCardWriter(outDir: string): CardWriter {
  const fonts = parseFonts();
  const ruler = createRuler(fonts);
  return async (batch, made) => {
    await mkdir(path.dirname(path.join(outDir, ADDRESS.card(""))), { recursive: true });
    const problems: CardProblem[] = [];
    const lakes: LakeLayout[] = [];
    for (const files of batch) {
      const placed = placeCards(files, { ruler, lakes });
      lakes.push(...(placed.lakes ?? []));
      problems.push(...placed.problems);
      if (problems.length === 0) {
        const inked = await placed.ink(fonts);
        for (const [i, name] of files.names.entries())
          await writeFile(path.join(outDir, ADDRESS.card(name)), inked[i] ?? "");
      }
      made(files.names.length);
    }
    return problems;
  };
}
