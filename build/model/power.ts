/** Whole exponents up to this are multiplied out. */
const MOST_FACTORS = 32;

/**
 * `base` to the power of `exponent`. JavaScript engines differ in the last digit of `**`, except for squares, and agree
 * on products, `exp` and `log`: the same club gives the same bytes on every version of Node.
 * @param base 0 or more where the exponent is no whole number
 */
export function power(base: number, exponent: number): number {
  if (!Number.isInteger(exponent) || Math.abs(exponent) > MOST_FACTORS)
    return base === 0 ? 0 : Math.exp(exponent * Math.log(base));
  let product = 1;
  for (let i = 0; i < Math.abs(exponent); i++) product *= base;
  return exponent < 0 ? 1 / product : product;
}
