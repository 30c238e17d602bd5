import type { Pattern } from "../model/club.ts";
import type { BoxRow, Material, Tying } from "./flies-schema.ts";

/** Fewer than two of a size and colour are not worth a row, but where only one fly is carried. */
const LEAST_OF_ONE = 2;

/** A pattern as far as the box goes. */
export type BoxPattern = Pick<Pattern, "slug" | "name" | "sizes" | "colours" | "stock" | "dressing">;

interface Variety {
  readonly size: number;
  readonly colour: string | null;
  readonly have: number;
}

interface Carried extends Variety {
  readonly carry: number;
}

const indexOr = <T>(values: readonly T[], value: T): number => {
  const index = values.indexOf(value);
  return index === -1 ? values.length : index;
};

/** How far a size stands from the middle of the pattern's sizes, in places; a size it does not name comes last. */
function fromMiddle({ sizes }: BoxPattern, size: number): number {
  const index = sizes.indexOf(size);
  return index === -1 ? sizes.length : Math.abs(index - (sizes.length - 1) / 2);
}

/**
 * Every size and colour of a pattern, in the order they are chosen for the box: those in stock, then those the club
 * lists as tied, then any other; among these middle sizes first, then the colour that the pattern names first. A colour
 * is not chosen by water: a pattern says what water it is tied for as a whole, and its lake's list has looked to that.
 */
function varietiesOf(pattern: BoxPattern): Variety[] {
  const { sizes, stock } = pattern;
  const colours = pattern.colours.length === 0 ? [null] : pattern.colours;
  const known = new Map<string, Variety & { readonly listed: boolean }>();
  const add = (variety: Variety, listed: boolean): void => {
    const key = JSON.stringify([variety.size, variety.colour]);
    const before = known.get(key);
    known.set(
      key,
      before === undefined ? { ...variety, listed } : { ...before, have: before.have + variety.have },
    );
  };
  for (const { size, colour, count } of stock) add({ size, colour, have: count }, true);
  for (const size of sizes) for (const colour of colours) add({ size, colour, have: 0 }, false);
  return [...known.values()]
    .sort(
      (a, b) =>
        Number(b.have > 0) - Number(a.have > 0) ||
        Number(b.listed) - Number(a.listed) ||
        fromMiddle(pattern, a.size) - fromMiddle(pattern, b.size) ||
        indexOr(colours, a.colour) - indexOr(colours, b.colour) ||
        a.size - b.size,
    )
    .map(({ listed: _, ...variety }) => variety);
}

export const hasVarieties = ({ sizes, stock }: BoxPattern): boolean => sizes.length + stock.length > 0;

/** Gives out one fly at a time, to the variety that has been given fewest: from stock while there is any, then to tie. */
function giveOut(varieties: readonly Variety[], carry: number): number[] {
  const given = varieties.map(() => 0);
  const fewest = (among: readonly number[]): number | undefined =>
    among.reduce<number | undefined>(
      (best, i) => (best === undefined || (given[i] ?? 0) < (given[best] ?? 0) ? i : best),
      undefined,
    );
  const all = [...varieties.keys()];
  for (let fly = 0; fly < carry; fly++) {
    const stocked = all.filter((i) => (given[i] ?? 0) < (varieties[i]?.have ?? 0));
    const to = fewest(stocked) ?? fewest(all);
    if (to !== undefined) given[to] = (given[to] ?? 0) + 1;
  }
  return given;
}

/** A pattern's flies divided over its sizes and colours, at least two of each where there are as many; largest hook first. */
export function divide(pattern: BoxPattern, carry: number): Carried[] {
  const chosen = varietiesOf(pattern).slice(0, Math.max(1, Math.floor(carry / LEAST_OF_ONE)));
  const given = giveOut(chosen, carry);
  return chosen
    .map((variety, i) => ({ ...variety, carry: given[i] ?? 0 }))
    .filter((variety) => variety.carry > 0)
    .sort(
      (a, b) =>
        a.size - b.size ||
        indexOr(pattern.colours, a.colour ?? "") - indexOr(pattern.colours, b.colour ?? ""),
    );
}

const HOOK = /^hook\b/i;

/** What the box lacks, pattern by pattern in the order of the box, each with its dressing. */
export function tyingList(rows: readonly BoxRow[], patterns: ReadonlyMap<string, BoxPattern>): Tying[] {
  const lacking = rows.filter(({ tie }) => tie > 0);
  return [...new Set(lacking.map(({ pattern }) => pattern))].map((slug) => {
    const ours = lacking.filter(({ pattern }) => pattern === slug);
    return {
      pattern: slug,
      name: ours[0]?.name ?? slug,
      flies: ours.map(({ size, colour, tie }) => ({ size, colour, count: tie })),
      dressing: (patterns.get(slug)?.dressing ?? []).map((row) => ({ ...row })),
    };
  });
}

const plainSpace = (text: string): string => text.trim().replace(/\s+/g, " ");

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

interface Want {
  readonly material: string;
  readonly hookSize: number | null;
}

/** What one fly is tied from, each material once. Where a dressing names no hook, the fly still wants one. */
function wantsOf({ name, dressing }: Tying, hookSize: number): Want[] {
  const hook = dressing.find(({ part }) => HOOK.test(part.trim()));
  const others = dressing
    .filter((row) => row !== hook)
    .map(({ material }): Want => ({ material: plainSpace(material), hookSize: null }));
  return [
    { material: plainSpace(hook?.material ?? `hook for ${name}`), hookSize },
    ...others.filter(
      ({ material }, i) => others.findIndex((other) => isSame(other.material, material)) === i,
    ),
  ];
}

const fliesText = (flies: number): string => `${flies} ${flies === 1 ? "fly" : "flies"}`;

const textOf = ({ material, hookSize }: Want, flies: number): string =>
  hookSize === null ? `${material}: ${fliesText(flies)}` : `${material}, size ${hookSize}: ${flies}`;

/**
 * The dressings of all flies to tie, added up: hooks by kind and size, everything else by how many flies it serves.
 * Materials that differ only in capitals or spaces are one, spelled as first met.
 */
export function materialsList(tying: readonly Tying[]): Material[] {
  const sums = new Map<string, { readonly want: Want; readonly flies: number }>();
  for (const entry of tying)
    for (const { size, count } of entry.flies)
      for (const want of wantsOf(entry, size)) {
        const key = `${want.hookSize ?? ""} ${want.material.toLowerCase()}`;
        const known = sums.get(key);
        sums.set(key, { want: known?.want ?? want, flies: (known?.flies ?? 0) + count });
      }
  const byName = (a: Want, b: Want): number => {
    const [left, right] = [a.material.toLowerCase(), b.material.toLowerCase()];
    return left < right ? -1 : left > right ? 1 : (a.hookSize ?? 0) - (b.hookSize ?? 0);
  };
  return [...sums.values()]
    .sort(
      (a, b) => Number(a.want.hookSize === null) - Number(b.want.hookSize === null) || byName(a.want, b.want),
    )
    .map(({ want, flies }) => ({ ...want, flies, text: textOf(want, flies) }));
}
