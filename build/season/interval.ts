/** An unsure record as the Gaussian equations see it: a value of its own variance; infinite when it says nothing. */
export interface Sight {
  readonly value: number;
  readonly variance: number;
}

const POINTS = 240;
/** Standard deviations beyond which a normal density counts for nothing; in a tail `z` from the mean it is gone after 40 / z. */
const REACH = 8;
const TAIL_REACH = 40;

/** Mean and variance of a normal kept between two moments (either may be infinite). By quadrature: safe in the far tails. */
export function truncatedNormal(
  mean: number,
  variance: number,
  from: number,
  to: number,
): { mean: number; variance: number } {
  const sd = Math.sqrt(variance);
  const nearest = Math.min(Math.max(mean, from), to);
  const reach = sd * Math.min(REACH, (TAIL_REACH * sd) / Math.abs(nearest - mean));
  const low = Math.max(from, nearest - reach);
  const high = Math.min(to, nearest + reach);
  const best = -((nearest - mean) ** 2) / (2 * variance);
  const step = (high - low) / POINTS;
  let weight = 0;
  let first = 0;
  let second = 0;
  for (let i = 0; i < POINTS; i++) {
    const offset = low + (i + 0.5) * step - nearest;
    const w = Math.exp(-((nearest + offset - mean) ** 2) / (2 * variance) - best);
    weight += w;
    first += w * offset;
    second += w * offset * offset;
  }
  const shift = first / weight;
  return { mean: nearest + shift, variance: second / weight - shift * shift };
}

/**
 * What "between these two moments" says about a day expected elsewhere: the Gaussian sight that, joined to the expectation, gives the
 * truncated expectation's mean and variance (moment matching, as in expectation propagation).
 * @source T. Minka (2001), Expectation propagation for approximate Bayesian inference
 */
export function sightOfInterval(mean: number, variance: number, from: number, to: number): Sight {
  const kept = truncatedNormal(mean, variance, from, to);
  const precision = 1 / kept.variance - 1 / variance;
  if (precision < 1e-6 / variance) return { value: mean, variance: Number.POSITIVE_INFINITY };
  return {
    value: (kept.mean / kept.variance - mean / variance) / precision,
    variance: 1 / precision,
  };
}
