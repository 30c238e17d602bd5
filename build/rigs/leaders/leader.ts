import type { DepthBand, LeaderStock, TippetSize } from "../../model/club.ts";
import { cutLengthText, depthRange, type UnitSystem } from "../../model/units.ts";
import type { Leader } from "../rig-schemas.ts";
import { bridgingSizes, stepBetween, tippetDiameter_mm, tippetSizeText, WIDEST_STEP } from "./tippet.ts";

/** Metres rounded to the millimetre, the finest length any table holds. */
export const toMillimetre = (length_m: number): number => Math.round(length_m * 1000) / 1000;

/** What a leader is made of, butt end first; a section of no length is left out. */
export type LeaderMake = Pick<LeaderStock, "taper" | "middle" | "tippet">;

interface Section {
  readonly part: Leader["sections"][number]["part"];
  readonly length_m: number;
  readonly size: TippetSize;
}

export const sectionsOf = ({ taper, middle, tippet }: LeaderMake): Section[] =>
  [
    { part: "taper" as const, ...taper },
    { part: "middle" as const, ...middle },
    { part: "tippet" as const, ...tippet },
  ].filter(({ length_m }) => length_m > 0);

/** Middle and tippet, m: no indicator slides over their knots. */
const knotted_m = ({ middle, tippet }: LeaderMake): number => middle.length_m + tippet.length_m;

export const leaderLength_m = (make: LeaderMake): number => make.taper.length_m + knotted_m(make);

/**
 * The set depths a leader serves, m: those that put the indicator on the knot-free taper, `margin_m` from either
 * end of it. `undefined` where the taper is too short for that.
 */
export function servedRange(make: LeaderMake, margin_m: number): DepthBand | undefined {
  const from_m = toMillimetre(knotted_m(make) + margin_m);
  const to_m = toMillimetre(leaderLength_m(make) - margin_m);
  return from_m > to_m ? undefined : { from_m, to_m };
}

/** A doubtful join between two neighbouring sections. */
export interface DoubtfulStep {
  readonly kind: "thicker" | "too big";
  /** In words for readers. */
  readonly words: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** Every join of a leader that gets thicker toward the fly, or finer by more than 0.002 in at once. */
export function doubtfulSteps(make: LeaderMake): DoubtfulStep[] {
  const sections = sectionsOf(make);
  return sections.slice(1).flatMap((lower, i): DoubtfulStep[] => {
    const upper = sections[i];
    if (upper === undefined) return [];
    const step = stepBetween(upper.size, lower.size);
    const [from, to] = [tippetSizeText(upper.size), tippetSizeText(lower.size)];
    if (step < 0)
      return [
        {
          kind: "thicker",
          words: `gets thicker toward the fly: ${from} then ${to}`,
          remedy: `swap the two, or put ${from} or finer below the ${upper.part}`,
        },
      ];
    const bridges = bridgingSizes(upper.size, lower.size).map(tippetSizeText);
    if (step > WIDEST_STEP)
      return [
        {
          kind: "too big",
          words: `${from} straight to ${to} is a big step for a knot`,
          remedy: `put a short piece of ${bridges.join(" and ")} between`,
        },
      ];
    return [];
  });
}

const madeOf = (make: LeaderMake, units: UnitSystem): string[] =>
  sectionsOf(make).map(({ part, length_m, size }) =>
    part === "taper"
      ? `${cutLengthText(length_m, units)} taper to ${tippetSizeText(size)}`
      : `${cutLengthText(length_m, units)} of ${tippetSizeText(size)}`,
  );

/** "12 ft taper to 3X + 6 ft of 4X + 3 ft of 5X". */
export const makeText = (make: LeaderMake, units: UnitSystem): string => madeOf(make, units).join(" + ");

/** The lines of a leader board's label. */
function boardLabel(name: string, make: LeaderMake, margin_m: number, units: UnitSystem): string[] {
  const serves = servedRange(make, margin_m);
  return [
    name,
    ...madeOf(make, units),
    serves === undefined ? "Not for an indicator" : `Sets ${depthRange(serves.from_m, serves.to_m, units)}`,
  ];
}

/**
 * One leader worked out.
 * @throws RangeError when a section's size is none that {@link tippetDiameter_mm} knows
 */
export function leaderOf(stock: Omit<LeaderStock, "where">, margin_m: number, units: UnitSystem): Leader {
  return {
    name: stock.name,
    sections: sectionsOf(stock).map(({ part, length_m, size }) => ({
      part,
      length_m: toMillimetre(length_m),
      size: tippetSizeText(size),
      diameter_mm: tippetDiameter_mm(size),
    })),
    total_m: toMillimetre(leaderLength_m(stock)),
    knotted_m: toMillimetre(knotted_m(stock)),
    serves: servedRange(stock, margin_m) ?? null,
    tied: stock.tied,
    warnings: doubtfulSteps(stock).map(({ words, remedy }) => `${words}: ${remedy}`),
    label: boardLabel(stock.name, stock, margin_m, units),
  };
}
