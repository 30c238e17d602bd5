import { distance } from "fastest-levenshtein";
import { type Fault, quoted, shortened } from "../model/fault.ts";

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

/** A lake or a pattern of the club by its file name; the name it goes by is absent where its file could not be read. */
export interface Named {
  readonly slug: string;
  readonly name?: string | undefined;
}

const LAKE = { code: "unknown-lake", one: "lake", all: "lakes" } as const;
const PATTERN = { code: "unknown-pattern", one: "pattern", all: "patterns" } as const;

const unknown = (
  { code, one, all }: typeof LAKE | typeof PATTERN,
  slug: string,
  known: Iterable<string>,
): Fault => ({
  code,
  message: `there is no ${one} ${quoted(slug)}`,
  hint: nearestOrList(slug, [...known], all),
});

/** Names no lake file of the club: what to say. */
export const unknownLake = (slug: string, known: Iterable<string>): Fault => unknown(LAKE, slug, known);
/** Names no pattern file of the club: what to say. */
export const unknownPattern = (slug: string, known: Iterable<string>): Fault => unknown(PATTERN, slug, known);

const plain = (words: string): string => words.trim().replace(/\s+/g, " ").toLowerCase();

/** Everything that can be called: names where there are some, else file names. */
const displayNames = (known: readonly Named[]): string[] => known.map(({ slug, name }) => name ?? slug);

/**
 * The file name of what somebody called by its file name or its name, capitals aside. Where a file could not be read the
 * word may be its name: it is taken for it, for that file is reported itself.
 */
function findSlug(
  words: string,
  known: readonly Named[],
  kind: typeof LAKE | typeof PATTERN,
): string | Fault {
  const wanted = plain(words);
  const bySlug = known.find(({ slug }) => slug === wanted);
  if (bySlug !== undefined) return bySlug.slug;
  const same = known.filter(({ name }) => name !== undefined && plain(name) === wanted);
  if (same.length > 1)
    return {
      code: `ambiguous-${kind.one}`,
      message: `${same.length} ${kind.all} are called ${quoted(words)}`,
      hint: `write the file name: ${same.map(({ slug }) => slug).join(" or ")}`,
    };
  const unnamed = known.find(({ name }) => name === undefined);
  return same[0]?.slug ?? unnamed?.slug ?? unknown(kind, words, displayNames(known));
}

export const findLakeSlug = (words: string, lakes: readonly Named[]): string | Fault =>
  findSlug(words, lakes, LAKE);
export const findPatternSlug = (words: string, patterns: readonly Named[]): string | Fault =>
  findSlug(words, patterns, PATTERN);

/** Lower-case letters, digits and single hyphens: what is safe as a file name and in a web address. */
export const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Well below what file systems allow, so that “.yaml” or a folder fits behind it. */
const LONGEST_SLUG = 80;

/** A name as a slug: "Long Tarn" is "long-tarn"; "" when the name has no letter or digit that can stay. */
export const slugOf = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-/, "")
    .slice(0, LONGEST_SLUG)
    .replace(/-$/, "");
