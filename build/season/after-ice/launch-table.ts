import { STOP_C, TAKE_CARE_C } from "../../model/warm-water.ts";
import type { OpenStates } from "./launch-card.ts";
import type { Reading } from "./readings.ts";

/** Surface temperatures that a card offers, degrees C: even steps, near 43, 48, 54, 59, 64 and 70 F. */
export const LAUNCH_TEMPERATURES_C = [6, 9, 12, 15, 18, 21] as const;

/** Depth at which a card asks for the lower temperature, m (15 ft). */
export const LAUNCH_DEPTH_M = 4.5;
/** Secchi depth that a card calls murky, as a share of the lake's usual one. */
const MURKY = 0.65;

const below = (water: "same" | "colder"): Pick<Reading, "deep"> => ({
  deep: { depth_m: LAUNCH_DEPTH_M, water },
});

/** What is read at the launch beside the surface temperature, row by row. */
export const LAUNCH_ROWS = [
  { clarity: "murky", below: "same", read: { ...below("same"), secchiRatio: MURKY } },
  { clarity: "murky", below: "colder", read: { ...below("colder"), secchiRatio: MURKY } },
  { clarity: "usual", below: "same", read: { ...below("same"), secchiRatio: 1 } },
  { clarity: "usual", below: "colder", read: { ...below("colder"), secchiRatio: 1 } },
  { clarity: "usual", below: null, read: { secchiRatio: 1 } },
  { clarity: null, below: null, read: {} },
] as const satisfies readonly {
  readonly clarity: "murky" | "usual" | null;
  readonly below: "same" | "colder" | null;
  readonly read: Omit<Reading, "day" | "surface_C">;
}[];

const OPEN_STATES = ["iceOff", "turnover", "best", "later"] as const;

/** What one reading at the launch says. */
export interface LaunchCell {
  /** Warm water: play no fish, or play them with care; undefined in cool water. */
  readonly heat?: "stop" | "take care";
  /** The likeliest state, and the next where it is near or the signs are mixed; empty under "stop". */
  readonly states: readonly { readonly state: (typeof OPEN_STATES)[number]; readonly chance: number }[];
  /** No state is as likely as not. */
  readonly mixedSigns: boolean;
}

/** The second state is told too when it is so near. */
const NEAR = 0.1;
const EVEN = 0.5;

/** What to print for the chances that a reading leaves. @param surface_C degrees C */
export function launchCell(surface_C: number, chances: OpenStates): LaunchCell {
  if (surface_C >= STOP_C) return { heat: "stop", states: [], mixedSigns: false };
  const [first, second] = OPEN_STATES.map((state) => ({ state, chance: chances[state] })).sort(
    (a, b) => b.chance - a.chance,
  );
  if (first === undefined || second === undefined) return { states: [], mixedSigns: false };
  const mixedSigns = first.chance < EVEN;
  return {
    ...(surface_C >= TAKE_CARE_C ? { heat: "take care" as const } : {}),
    states: mixedSigns || first.chance - second.chance < NEAR ? [first, second] : [first],
    mixedSigns,
  };
}

/** The table of one lake: a row for each of {@link LAUNCH_ROWS}, a cell for each of {@link LAUNCH_TEMPERATURES_C}. */
export const launchTable = (
  card: (reading: Omit<Reading, "day">) => OpenStates,
): readonly (readonly LaunchCell[])[] =>
  LAUNCH_ROWS.map(({ read }) =>
    LAUNCH_TEMPERATURES_C.map((surface_C) => launchCell(surface_C, card({ surface_C, ...read }))),
  );
