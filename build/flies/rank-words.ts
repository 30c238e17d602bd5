import type { WaterColour } from "../model/club.ts";
import { catchText, rounded } from "../model/units.ts";
import type { PhaseDiet } from "./diet.ts";
import type { FoodWeights } from "./diet-samples.ts";
import type { RankedFly } from "./rank.ts";

const WATER_WORDS: Readonly<Record<WaterColour, string>> = {
  marl: "pale marl water",
  clear: "clear water",
  green: "green water",
  tea: "tea-coloured water",
};

const lakesText = (lakes: number): string => (lakes === 1 ? "1 other lake" : `${lakes} other lakes`);

function foodText({ pattern: { imitates } }: RankedFly, { fish, weights, elsewhere }: PhaseDiet): string {
  if (imitates === "nothing in particular") return "imitates nothing in particular";
  const eaten = ({ byFood, all }: FoodWeights, whose: string): string => {
    const share = (byFood.get(imitates) ?? 0) / all;
    return share === 0
      ? `for ${imitates}: none in ${whose}`
      : `for ${imitates}: ${rounded(100 * share)} % of what ${whose} had eaten`;
  };
  if (fish > 0) return eaten(weights, `${fish} fish here`);
  if (elsewhere.fish > 0)
    return eaten(elsewhere.weights, `${elsewhere.fish} fish at ${lakesText(elsewhere.lakes)}`);
  return `for ${imitates}`;
}

function caughtText({ catches: { here, elsewhere } }: RankedFly): string[] {
  if (here.rodHours > 0) return [catchText(here)];
  return elsewhere.rodHours > 0 ? [`${catchText(elsewhere)} at other places or times`] : [];
}

/** One line: why a fly stands in its place. Shares are of food weighed by fish, as told; not yet shrunk. */
export const whyFly = (fly: RankedFly, diet: PhaseDiet): string =>
  [
    foodText(fly, diet),
    ...caughtText(fly),
    fly.tiedFor === null ? "any water" : `tied for ${WATER_WORDS[fly.tiedFor]}`,
    fly.stock > 0 ? `${fly.stock} in the box` : "none in the box",
  ].join("; ");
