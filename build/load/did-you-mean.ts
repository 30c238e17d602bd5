import { distance } from "fastest-levenshtein";
import { quoted, shortened } from "./quote.ts";

/** Two words that differ only in case, hyphens, underscores or spaces are the same word written differently. */
const bare = (word: string): string => word.toLowerCase().replace(/[-_ ]/g, "");

/** Longer words are not compared. */
const LONGEST_WORD = 60;

/** Longer lists than this are not printed. */
const MOST_LISTED = 30;

/** Letters to change, add, leave out or swap with their neighbour (one swap at most) to get from one word to the other. */
function stepsBetween(word: string, candidate: string): number {
  let least = distance(word, candidate);
  for (let i = 1; i < word.length && least > 1; i++) {
    const swapped = `${word.slice(0, i - 1)}${word[i]}${word[i - 1]}${word.slice(i + 1)}`;
    least = Math.min(least, 1 + distance(swapped, candidate));
  }
  return least;
}

function sharedStart(word: string, candidate: string): number {
  let length = 0;
  while (length < word.length && word[length] === candidate[length]) length++;
  return length;
}

/** The one of `known` that `word` was most likely meant to be, of two as near the one that begins alike; undefined when none comes near. */
export function didYouMean(word: string, known: readonly string[]): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const wanted = bare(word);
  const mostSteps = Math.max(1, Math.floor(wanted.length / 3));
  return known
    .map((candidate) => ({
      candidate,
      steps: stepsBetween(wanted, bare(candidate)),
      shared: sharedStart(wanted, bare(candidate)),
    }))
    .filter(({ steps }) => steps <= mostSteps)
    .sort((a, b) => a.steps - b.steps || b.shared - a.shared)[0]?.candidate;
}

/** "choices: marl, clear", or how many there are when they are too many to print. */
function listed(known: readonly string[], named: string): string {
  if (known.length === 0) return `there are no ${named}`;
  return known.length <= MOST_LISTED
    ? `${named}: ${known.map(shortened).join(", ")}`
    : `there are ${known.length} ${named}`;
}

/** "did you mean “ember”?", or the list where nothing comes near. */
export function nearestOrList(word: string, known: readonly string[], named: string): string {
  const meant = didYouMean(word, known);
  return meant === undefined ? listed(known, named) : `did you mean ${quoted(meant)}?`;
}

/** The list, with "did you mean" before it where something comes near. */
export function nearestAndList(word: string, known: readonly string[], named: string): string {
  const meant = didYouMean(word, known);
  return meant === undefined
    ? listed(known, named)
    : `did you mean ${quoted(meant)}? ${listed(known, named)}`;
}
