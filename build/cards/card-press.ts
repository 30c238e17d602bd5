import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import type { CardFiles, CardTools } from "./card-file.ts";
import { placeCards } from "./card-kinds.ts";
import type { CardProblem } from "./card-problem.ts";
import { createRuler, type Fonts, parseFonts } from "./fonts.ts";

/** Where a file of cards goes inside the guide. */
export const addressOf = (name: string): string => `cards/${name}.pdf`;

/** What places cards, for as many as are wanted. */
export const cardTools = (fonts: Fonts): CardTools => ({
  ruler: createRuler(fonts),
  placedLakes: new Map(),
});

/** Makes files of cards that belong together. */
export type CardPress = (
  batch: readonly CardFiles[],
  made: (files: number) => void,
) => Promise<readonly CardProblem[]>;

/**
 * What writes cards into `outDir`: one file is placed, written and forgotten before the next. Files after one that does
 * not fit are placed, for what does not fit on them, but not written.
 */
export function openPress(outDir: string): CardPress {
  const fonts = parseFonts();
  const tools = cardTools(fonts);
  return async (batch, made) => {
    await mkdir(path.join(outDir, "cards"), { recursive: true });
    const problems: CardProblem[] = [];
    for (const files of batch) {
      const placed = placeCards(files, tools);
      problems.push(...placed.problems);
      if (problems.length === 0) {
        const inked = await placed.ink(fonts);
        for (const [i, name] of files.names.entries())
          await writeFile(path.join(outDir, addressOf(name)), inked[i] ?? "");
      }
      made(files.names.length);
    }
    tools.placedLakes.clear();
    return problems;
  };
}
