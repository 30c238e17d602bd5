const STEPS = 4000;

/** Standard normal cdf by Simpson's rule over its density: accurate to 1e-12 within 9 standard deviations. */
export function normalCdf(z: number): number {
  if (z < -9) return 0;
  if (z > 9) return 1;
  const density = (x: number): number => Math.exp(-(x * x) / 2) / Math.sqrt(2 * Math.PI);
  const h = z / STEPS;
  let sum = density(0) + density(z);
  for (let i = 1; i < STEPS; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * h);
  return 0.5 + (sum * h) / 3;
}
