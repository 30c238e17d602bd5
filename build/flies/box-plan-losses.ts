import { poissonDistribution } from "simple-statistics";

/** Flies a rod loses in a day where the trip does not say. Common practice, no source. */
const USUAL_LOSS_RODDAY = 3;
/** So many trips out of a hundred are to come home without having run out. */
const COVERED = 0.9;

/**
 * The smallest count that a Poisson number of this mean stays within with the given chance.
 * @param mean from 0; below a million
 * @param chance above 0, at most 0.999
 * @throws RangeError for a mean that has no distribution
 */
export function poissonQuantile(mean: number, chance: number): number {
  if (mean === 0) return 0;
  const cells = poissonDistribution(mean);
  if (cells === undefined) throw new RangeError(`no Poisson distribution has the mean ${mean}`);
  let sum = 0;
  const count = cells.findIndex((cell) => {
    sum += cell;
    return sum >= chance;
  });
  return count === -1 ? cells.length - 1 : count;
}

export interface Losses {
  /** On average. */
  readonly expected: number;
  /** What nine trips in ten stay within. */
  readonly covered: number;
  readonly perRodDay: number;
}

/** Flies a trip loses: each rod loses its flies one by one, by chance, so the total is a Poisson number. */
export function lossesOf(rods: number, days: number, flyLoss_rodDay = USUAL_LOSS_RODDAY): Losses {
  const expected = rods * days * flyLoss_rodDay;
  return { expected, covered: poissonQuantile(expected, COVERED), perRodDay: flyLoss_rodDay };
}
