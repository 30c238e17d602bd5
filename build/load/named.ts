import { nearestOrList } from "./did-you-mean.ts";
import type { Fault } from "./problem.ts";
import { quoted } from "./quote.ts";

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
const callable = (known: readonly Named[]): string[] => known.map(({ slug, name }) => name ?? slug);

/**
 * The file name of what somebody called by its file name or its name, capitals aside. Where a file could not be read the
 * word may be its name: it is taken for it, for that file is reported itself.
 */
function called(words: string, known: readonly Named[], kind: typeof LAKE | typeof PATTERN): string | Fault {
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
  return same[0]?.slug ?? unnamed?.slug ?? unknown(kind, words, callable(known));
}

export const lakeCalled = (words: string, lakes: readonly Named[]): string | Fault =>
  called(words, lakes, LAKE);
export const patternCalled = (words: string, patterns: readonly Named[]): string | Fault =>
  called(words, patterns, PATTERN);
