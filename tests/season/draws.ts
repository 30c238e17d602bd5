/** Standard normal, by the Box-Muller transform. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Student t of whole degrees of freedom, by its definition: a normal over the root of a mean square of normals. */
export function studentT(random: () => number, df: number): number {
  let square = 0;
  for (let i = 0; i < df; i++) square += normal(random) ** 2;
  return normal(random) / Math.sqrt(square / df);
}
