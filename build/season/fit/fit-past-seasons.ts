import { power } from "../../model/power.ts";
import { at, meanOf } from "../numbers.ts";
import { isExact } from "../records.ts";
import { ERROR_DF } from "../student-t.ts";
import { type FitInput, middleOf } from "./fit-input.ts";
import { initialMoments, updatedMoments } from "./interval-moments.ts";
import {
  betaRows,
  type Layout,
  layoutOf,
  offsetRows,
  recordRows,
  seasonEffects,
  seasonRows,
  slopeSumRows,
  slopesHeld,
} from "./layout.ts";
import type { Known } from "./normal-equations.ts";
import { countOf, type Solution, solveNormalEquations } from "./normal-equations.ts";
import {
  newVariances,
  priorVariances,
  type SeasonCovariance,
  seasonDf,
  splitDoubt,
  type Variances,
} from "./variances.ts";

/** What past seasons say: all that a forecast needs. */
export interface Fit {
  /** Ice-off in a middling season, day of season, for each lake. */
  readonly m: Float64Array;
  /** Variance of `m` that is the lake's own. */
  readonly v: Float64Array;
  /** Scale of each lake's error, days. */
  readonly sigma: Float64Array;
  /** How early or late each lake is among its region's. */
  readonly x: Float64Array;
  /** For each region, the variance of the level that its lakes share. */
  readonly shared: Float64Array;
  readonly omega: SeasonCovariance;
  /** Standard deviation between lakes, after their places have been allowed for. */
  readonly tau: number;
  /** Level, then days per unit of each covariate. */
  readonly beta: Float64Array;
  /** Degrees of freedom of the season prior. */
  readonly seasonDf: number;
  /** Effect `s` of each past season, days. */
  readonly seasonEffects: Float64Array;
}

export interface FitSettings {
  readonly rounds: number;
  /** No further round when no lake's middle moved by more than this. */
  readonly settled_days: number;
  /** Days of `m` to one step of `x`; infinite for a model without slopes. */
  readonly step_days: number;
}
const USUAL_FIT: FitSettings = { rounds: 30, settled_days: 1e-3, step_days: 5 };

/** Leaves the level of the lakes to the records. */
const FLAT_PRECISION = 1e-6;
/** Holds the sum of the slopes at zero. */
const HELD_PRECISION = 1e6;

/** Each lake's place among its region's lakes, in steps of so many days. */
function loadings(m: Float64Array, regions: readonly number[], step_days: number): Float64Array {
  const means = new Map(
    [...new Set(regions)].map((region) => [
      region,
      meanOf([...m].filter((_, lake) => regions[lake] === region)),
    ]),
  );
  return m.map((value, lake) => (value - (means.get(regions[lake] ?? 0) ?? value)) / step_days);
}

/** The prior of everything but the errors, given the variances. */
function priorsOf(layout: Layout, input: FitInput): (variances: Variances) => Known[] {
  const { covariates, records, levelWithoutRecords } = input;
  const levelPrecision = records.length > 0 ? FLAT_PRECISION : power(levelWithoutRecords.sd, -2);
  const beta: Known = {
    rows: betaRows(layout),
    value: Float64Array.of(0, ...covariates.map(({ daysPerUnit }) => daysPerUnit)),
    precision: Float64Array.of(levelPrecision, ...covariates.map(({ sd }) => power(sd, -2))),
  };
  const offsets = offsetRows(layout, input);
  const slopeSums = slopeSumRows(layout, input);
  const held: Known[] = slopesHeld(layout)
    ? [
        {
          rows: slopeSums,
          value: new Float64Array(countOf(slopeSums)),
          precision: new Float64Array(countOf(slopeSums)).fill(HELD_PRECISION),
        },
      ]
    : [];
  return ({ omega: { ss, sk, kk }, tau2 }) => {
    const slope = sk / ss;
    const precisions = Float64Array.of(1 / ss, 1 / (kk - slope * sk));
    return [
      beta,
      ...held,
      {
        rows: offsets,
        value: new Float64Array(layout.lakes),
        precision: new Float64Array(layout.lakes).fill(1 / tau2),
      },
      {
        rows: seasonRows(layout, -slope),
        value: new Float64Array(2 * layout.seasons),
        precision: Float64Array.from({ length: 2 * layout.seasons }, (_, t) => at(precisions, t % 2)),
      },
    ];
  };
}

/**
 * Fits the model of past ice-off dates by EM: given the variances the effects are one Gaussian system, the variances come from its
 * moments, and records far from the rest weigh less (t errors with 4 degrees of freedom). Intervals enter by moment matching.
 * @source K. L. Lange, R. J. A. Little, J. M. G. Taylor (1989), Robust statistical modeling using the t distribution,
 * Journal of the American Statistical Association 84:881-896
 */
export function fitPastSeasons(input: FitInput, settings: FitSettings = USUAL_FIT): Fit {
  const { regions, records } = input;
  const layout = layoutOf(input);
  const priors = priorsOf(layout, input);
  const offsets = offsetRows(layout, input);
  const rowsFor = recordRows(layout, records);
  const exact = records.filter(isExact);
  const centre =
    records.length === 0
      ? input.levelWithoutRecords.day
      : meanOf((exact.length > 0 ? exact : records).map(middleOf));

  let variances = priorVariances(layout);
  let x: Float64Array = new Float64Array(layout.lakes);
  let weights: Float64Array = new Float64Array(records.length).fill(1);
  let moments = initialMoments(records, centre, variances.omega.ss);
  let before: Float64Array | undefined;
  for (let round = 1; ; round++) {
    const errors = Float64Array.from(records, ({ lake }, n) => at(variances.sigma2, lake) / at(weights, n));
    const rows = rowsFor(x);
    const solution: Solution = solveNormalEquations(
      [
        ...priors(variances),
        {
          rows,
          value: moments.value,
          precision: errors.map((error, n) => 1 / (error + at(moments.variance, n))),
        },
      ],
      layout.size,
      layout.blocks,
    );
    const fitted = solution.meansOf(rows);
    const fittedVariance = solution.variancesOf(rows);
    const squares = moments.value.map((value, n) => (value - at(fitted, n)) ** 2 + at(fittedVariance, n));
    const { sigma2 } = variances;
    weights = squares.map((square, n) => {
      const expected = at(sigma2, records[n]?.lake ?? 0) + at(moments.variance, n);
      return (ERROR_DF + 1) / (ERROR_DF + square / expected);
    });
    variances = newVariances(layout, solution, offsets, records, weights, squares);
    if (exact.length < records.length)
      moments = updatedMoments(records, centre, moments, errors, fitted, fittedVariance);
    const m = solution.mean.slice(layout.betas, layout.betas + layout.lakes);
    x = loadings(m, regions, settings.step_days);
    const settled =
      before !== undefined &&
      m.every((value, lake) => Math.abs(value - at(before ?? m, lake)) < settings.settled_days);
    before = m;
    if (round < settings.rounds && !settled) continue;
    const { shared, own } = splitDoubt(layout, input, solution, x, variances.omega.kk);
    return {
      m: m.map((value) => value + centre),
      v: own,
      sigma: variances.sigma2.map(Math.sqrt),
      x,
      shared,
      omega: variances.omega,
      tau: Math.sqrt(variances.tau2),
      beta: solution.mean.slice(0, layout.betas),
      seasonDf: seasonDf(layout),
      seasonEffects: seasonEffects(layout, solution.mean),
    };
  }
}
