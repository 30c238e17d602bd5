import { distance } from "fastest-levenshtein";

/** Two words that differ only in case, hyphens, underscores or spaces are the same word written differently. */
const bare = (word: string): string => word.toLowerCase().replace(/[-_ ]/g, "");

/** Longer words are not compared. */
const LONGEST_WORD = 60;

/** Longer lists than this are not printed. */
const MOST_LISTED = 30;

/** The one of `known` that `word` was most likely meant to be; undefined when none comes near. */
export function didYouMean(word: string, known: readonly string[]): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const wanted = bare(word);
  let best: string | undefined;
  let bestSteps = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of known) {
    const steps = distance(wanted, bare(candidate));
    if (steps < bestSteps) [best, bestSteps] = [candidate, steps];
  }
  return best;
}

/** "choices: marl, clear", or how many there are when they are too many to print. */
function listed(known: readonly string[], named: string): string {
  if (known.length === 0) return `there are no ${named}`;
  return known.length <= MOST_LISTED ? `${named}: ${known.join(", ")}` : `there are ${known.length} ${named}`;
}

/** "did you mean “ember”?", or the list where nothing comes near. */
export function nearestOrList(word: string, known: readonly string[], named: string): string {
  const meant = didYouMean(word, known);
  return meant === undefined ? listed(known, named) : `did you mean “${meant}”?`;
}

/** The list, with "did you mean" before it where something comes near. */
export function nearestAndList(word: string, known: readonly string[], named: string): string {
  const meant = didYouMean(word, known);
  return meant === undefined ? listed(known, named) : `did you mean “${meant}”? ${listed(known, named)}`;
}
