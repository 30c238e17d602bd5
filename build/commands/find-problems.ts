import { cardProblems } from "../cards/cards.ts";
import { composeGuide } from "../guide/compose.ts";
import { placeAtFields } from "../input/field-places.ts";
import { loadClub } from "../input/load-club.ts";
import { loadContent } from "../input/load-content.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Memoize } from "../model/memoize.ts";

/** Every problem of a club folder: what cannot be read, what is doubtful, what does not fit on a card. */
export async function findProblems(
  dataDir: string,
  version: string,
  memoize: Memoize,
): Promise<readonly Diagnostic[]> {
  const { club, problems } = await loadClub(dataDir, { memoize });
  if (club === undefined) return problems;
  const { guide, problems: doubts } = composeGuide(club, await loadContent(), {
    version,
    memoize,
    forCards: true,
  });
  return [
    ...problems,
    ...doubts,
    ...(guide === undefined ? [] : await placeAtFields(dataDir, cardProblems(guide, memoize))),
  ];
}
