/** What a lake's water looks like in spring: the colour its scuds take. */
export const WATER_COLOURS = ["marl", "clear", "green", "tea"] as const;
export type WaterColour = (typeof WATER_COLOURS)[number];

/** Whether somebody would see a lake open and report it. */
export const WATCHED = ["yes", "no"] as const;
export type Watched = (typeof WATCHED)[number];

/** What a lake is to the club, where it is not one of the lakes of its guide. */
export const LAKE_ROLES = ["indicator"] as const;

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

/** Ice as somebody saw it; none: the lake did not freeze this winter. */
export const ICE_STATES = ["on", "part", "off", "none"] as const;
export type IceState = (typeof ICE_STATES)[number];

/** How clear water looks, without a Secchi disk. */
export const LOOKS = ["cloudy", "clear"] as const;
export type Looks = (typeof LOOKS)[number];

/** How often a lake freezes over. */
export const FREEZING = ["every-year", "some-years", "never"] as const;
export type Freezing = (typeof FREEZING)[number];

export const LINE_KINDS = ["floating", "clear intermediate", "sink tip", "sinking"] as const;
export type LineKind = (typeof LINE_KINDS)[number];

export const BOAT_KINDS = ["pram", "canoe", "motor boat", "float tube", "kick boat", "shore"] as const;
export type BoatKind = (typeof BOAT_KINDS)[number];

/** The three states of a lake's surface that the plumb table has columns for. */
export const CONDITIONS = ["calm", "ripple", "chop"] as const;
export type Condition = (typeof CONDITIONS)[number];
