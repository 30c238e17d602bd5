/** What a lake's water looks like in spring: the colour its scuds take. */
export const WATER_COLOURS = ["marl", "clear", "green", "tea"] as const;
export type WaterColour = (typeof WATER_COLOURS)[number];

export const FOODS = [
  "scud",
  "chironomid pupa",
  "chironomid larva",
  "damsel nymph",
  "dragonfly nymph",
  "mayfly nymph",
  "caddis larva",
  "water boatman",
  "leech",
  "daphnia",
  "small fish",
  "nothing in particular",
] as const;
export type Food = (typeof FOODS)[number];

/** Foods that can be found in a fish: every one but the pattern that imitates none. */
export type FoundFood = Exclude<Food, "nothing in particular">;

/** How a fly is fished. */
export const METHODS = [
  "indicator still",
  "indicator twitched",
  "floating line",
  "clear intermediate",
  "sink tip",
  "buoyant on sinking line",
  "trolled",
] as const;
export type Method = (typeof METHODS)[number];

export const ICE_STATES = ["on", "part", "off"] as const;
export type IceState = (typeof ICE_STATES)[number];

export const LINE_KINDS = ["floating", "clear intermediate", "sink tip", "sinking"] as const;
export type LineKind = (typeof LINE_KINDS)[number];

export const BOAT_KINDS = ["pram", "canoe", "motor boat", "float tube", "kick boat", "shore"] as const;
export type BoatKind = (typeof BOAT_KINDS)[number];

/** The three states of a lake's surface that the plumb table has columns for. */
export const CONDITIONS = ["calm", "ripple", "chop"] as const;
export type Condition = (typeof CONDITIONS)[number];
