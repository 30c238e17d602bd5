import jstat from "jstat";

/**
 * The value below which a gamma distribution lies with this chance; right to seven digits.
 * @param shape above 0
 * @param rate above 0, in the inverse of the value's unit
 */
export const gammaQuantile = (chance: number, shape: number, rate: number): number =>
  jstat.gamma.inv(chance, shape, 1 / rate);

/** The same of a beta distribution, both parameters above 0. */
export const betaQuantile = (chance: number, alpha: number, beta: number): number =>
  jstat.beta.inv(chance, alpha, beta);
