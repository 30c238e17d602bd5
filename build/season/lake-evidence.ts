import { at } from "./numbers.ts";
import type { SpringDays, Statement } from "./statements.ts";
import type { TurnoverCase } from "./turnover-times.ts";

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

export const springOf = (iceOff: number, { onset, duration }: TurnoverCase): SpringDays => ({
  iceOff,
  onset: iceOff + onset,
  clear: iceOff + onset + duration,
});

/** Keeps the product of many wrong reports above zero. */
const LEAST_CHANCE = 1e-200;

/** Chance of the statements in one possible spring. */
export function chanceOfStatements(statements: readonly Statement[], spring: SpringDays): number {
  let chance = 1;
  for (const statement of statements) chance *= statement.likelihood(spring);
  return Math.max(chance, LEAST_CHANCE);
}

/** Sums the statements' chances over every way the turnover may run. */
export function evidenceOf(
  statements: readonly Statement[],
  cases: readonly TurnoverCase[],
  span: DaySpan,
): LakeEvidence {
  const ofIce = statements.filter(({ ofTurnover }) => !ofTurnover);
  const ofTurnover = statements.filter((statement) => statement.ofTurnover);
  const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) => {
    const iceOff = span.from + i;
    const first = cases[0];
    const ice = first === undefined ? 1 : chanceOfStatements(ofIce, springOf(iceOff, first));
    if (ofTurnover.length === 0) return ice;
    return (
      ice *
      cases.reduce(
        (sum, turnover) => sum + turnover.chance * chanceOfStatements(ofTurnover, springOf(iceOff, turnover)),
        0,
      )
    );
  });
  return { span, chance };
}

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
