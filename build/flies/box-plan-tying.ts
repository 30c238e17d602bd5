import type { BoxRow, Material, Tying } from "./box-plan-schema.ts";
import type { BoxPattern } from "./box-plan-varieties.ts";

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
