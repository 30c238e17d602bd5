import { at } from "./numbers.ts";
import type { Statement } from "./statements.ts";

/** Whole days of season, both ends included. */
export interface DaySpan {
  readonly from: number;
  readonly to: number;
}

/** Chance of all that was seen on a lake if its ice-off fell on a day, day by day. The end days stand for all days beyond them. */
export interface LakeEvidence {
  readonly span: DaySpan;
  readonly chance: Float64Array;
}

/** Keeps the product of many wrong reports above zero. */
const LEAST_CHANCE = 1e-200;

/** Chance of statements by ice-off day. */
export const evidenceOf = (
  statements: readonly Pick<Statement, "likelihood">[],
  span: DaySpan,
): LakeEvidence => ({
  span,
  chance: Float64Array.from({ length: span.to - span.from + 1 }, (_, i) =>
    Math.max(
      statements.reduce((chance, statement) => chance * statement.likelihood(span.from + i), 1),
      LEAST_CHANCE,
    ),
  ),
});

/** The days at whose beginning the evidence steps, and by how much it falls there; `last` holds from the last step on. */
export interface Steps {
  readonly edges: Float64Array;
  readonly falls: Float64Array;
  readonly last: number;
}

/** Most evidence is flat but for a few steps: a cdf at each step is all that its integral needs. */
export function stepsOf({ span, chance }: LakeEvidence): Steps {
  const edges: number[] = [];
  const falls: number[] = [];
  for (let i = 1; i < chance.length; i++) {
    const fall = at(chance, i - 1) - at(chance, i);
    if (fall === 0) continue;
    edges.push(span.from + i - 0.5);
    falls.push(fall);
  }
  return {
    edges: Float64Array.from(edges),
    falls: Float64Array.from(falls),
    last: at(chance, chance.length - 1),
  };
}
