/** Standard normal, by the Box-Muller transform. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Student t of whole degrees of freedom, by its definition: a normal over the root of a mean square of normals. */
export function studentT(random: () => number, df: number): number {
  let square = 0;
  for (let i = 0; i < df; i++) square += normal(random) ** 2;
  return normal(random) / Math.sqrt(square / df);
}

/** Draws a place in `weights`, each as often as its weight says; the weights sum to 1. */
export function placeByWeight(weights: ArrayLike<number>, random: () => number): () => number {
  const below: number[] = [];
  for (let p = 0; p < weights.length; p++) below.push((below[p - 1] ?? 0) + (weights[p] ?? 0));
  return () => {
    const u = random();
    let [low, high] = [0, below.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((below[middle] ?? 1) < u) low = middle + 1;
      else high = middle;
    }
    return low;
  };
}
