import type { Looks } from "../../model/club.ts";
import type { Phase } from "../../model/phase.ts";
import { power } from "../../model/power.ts";
import { areaOf, type LakeTraits } from "./lake-traits.ts";
import { clamp, logistic, normalDensity } from "./logistic.ts";
import { WARM_C } from "./own-records.ts";
import { type Stratification, showsLayers } from "./stratification.ts";

/** What one visit read on the water. */
export interface Reading {
  /** Day of season. */
  readonly day: number;
  /** At the surface, -1 to 32 degrees C. */
  readonly surface_C?: number;
  /** Below the surface: a temperature in degrees C (then `surface_C` is needed too), or how it feels against the surface. */
  readonly deep?: { readonly depth_m?: number; readonly water: number | "same" | "colder" };
  /** Secchi depth over the lake's usual one. */
  readonly secchiRatio?: number;
  readonly looks?: Looks;
  readonly phase?: Phase;
}

/** What is known at a lake's readings beside the readings. */
export interface ReadingContext {
  readonly lake: Pick<LakeTraits, "area_ha">;
  readonly stratification: Pick<Stratification, "mixingDepth_m">;
  /** The lake's own threshold of warmth over the general one, degrees C. */
  readonly offset_C: number;
}

/** Factor on a day of change that has come by the reading's day, and on one that comes later. */
export interface Gate {
  readonly by: number;
  readonly after: number;
}

/** What a reading does to the chances: factors only, to be applied once the ice-off day is given. */
export interface ReadingFactors {
  readonly day: number;
  readonly layered?: Gate & { readonly never: number };
  readonly warm?: Gate;
  readonly clear?: Gate;
  /** On the year's warmth, by the distance from the expected temperature. */
  readonly surface?: { readonly water_C: number; readonly weight: number };
  /** In the states ice-off, turnover, and after it. */
  readonly states?: readonly number[];
  /** On ice-off days after the reading. */
  readonly iced: number;
}

/** Readings of one kind within so many days of each other are not independent. Weather of 1 to 2 days apart correlates by 0.86, of 10 and more by 0.08. */
const KINDS = {
  heat: { memory_d: 7, has: ({ surface_C, deep }: Reading) => surface_C !== undefined || deep !== undefined },
  secchi: { memory_d: 7, has: ({ secchiRatio }: Reading) => secchiRatio !== undefined },
  looks: { memory_d: 3, has: ({ looks }: Reading) => looks !== undefined },
  phase: { memory_d: 3, has: ({ phase }: Reading) => phase !== undefined },
};
type Kind = keyof typeof KINDS;

/** Weight of a reading among all of its kind, 0 to 1. */
function weightAmong(readings: readonly Reading[], { day }: Reading, kind: Kind): number {
  const { memory_d, has } = KINDS[kind];
  const near = readings
    .filter(has)
    .reduce((sum, other) => sum + Math.exp(-Math.abs(day - other.day) / memory_d), 0);
  return 1 / near;
}

/** One reading of warmth or layers says no more than this. Our judgement, checked against single readings that turn a forecast over. */
const LIMITS = { from: 0.15, to: 0.85 };

/** Chance that the lake is warm at a surface temperature, degrees C. */
export const warmChance = (surface_C: number, offset_C: number): number =>
  clamp(logistic(surface_C - (WARM_C + 0.5) - offset_C), LIMITS.from, LIMITS.to);

/** Chance that it has stratified, from the surface alone. */
export const layeredChance = (surface_C: number, lake: Pick<LakeTraits, "area_ha">): number =>
  clamp(
    logistic((surface_C - 8.3 - 0.33 * Math.log(Math.max(areaOf(lake), 7) / 7)) / 0.9),
    LIMITS.from,
    LIMITS.to,
  );

/** Chance that layers show in stratified water, deep and shallow of the mixing depth, and in mixed water. Our judgement. */
const LAYERS_SHOWN = { below: 0.95, above: 0.6, mixed: 0.12 };

/** Chance of what was found below the surface, in stratified (`by`) and in mixed water (`after`). */
export function twoDepths(
  { surface_C, deep }: Pick<Reading, "surface_C" | "deep">,
  { mixingDepth_m }: Pick<Stratification, "mixingDepth_m">,
): Gate {
  const { depth_m, water } = deep ?? { water: "same" };
  const shown =
    typeof water === "number" ? surface_C !== undefined && showsLayers(surface_C, water) : water === "colder";
  const stratified =
    depth_m !== undefined && depth_m < mixingDepth_m ? LAYERS_SHOWN.above : LAYERS_SHOWN.below;
  return shown
    ? { by: stratified, after: LAYERS_SHOWN.mixed }
    : { by: 1 - stratified, after: 1 - LAYERS_SHOWN.mixed };
}

/** Log of the Secchi depth over the usual one, before and after the lake has cleared; kept within limits, and never impossible. */
const SECCHI = {
  from: -0.5,
  to: 0.3,
  cloudy: { mean: -0.32, sd: 0.23 },
  clear: { mean: 0, sd: 0.18 },
  floor: 0.02,
};

/** Density of a Secchi depth once the lake has cleared (`by`) and before (`after`). @param ratio to the usual depth */
export function secchiGate(ratio: number): Gate {
  const y = clamp(Math.log(ratio), SECCHI.from, SECCHI.to);
  return {
    by: normalDensity(y, SECCHI.clear.mean, SECCHI.clear.sd) + SECCHI.floor,
    after: normalDensity(y, SECCHI.cloudy.mean, SECCHI.cloudy.sd) + SECCHI.floor,
  };
}

/** Chance of the word once the lake has cleared, and before. Our judgement. */
const LOOKS_GATES: Readonly<Record<Looks, Gate>> = {
  cloudy: { by: 0.19, after: 0.76 },
  clear: { by: 0.81, after: 0.24 },
};

/** Chance that a report names a state when the lake is in ice-off, in turnover, and after it. Our judgement. */
const PHASE_WORDS: Readonly<Record<Exclude<Phase, "later-weeks">, readonly number[]>> = {
  "ice-off": [0.8, 0.2, 0.2],
  turnover: [0.19, 0.76, 0.19],
  "post-turnover": [0.24, 0.24, 0.81],
};
const LATER_WORDS: Gate = { by: 0.76, after: 0.2 };

/** Surface water under or between ice, degrees C, and the chance of one that does not fit; and of a reading only open water allows. */
const ICED = { mean_C: 2, sd_C: 1.5, fits: 0.98, floor: 0.0008, openWater: 0.02 };

const raised = ({ by, after }: Gate, weight: number): Gate => ({
  by: power(by, weight),
  after: power(after, weight),
});

const times = (a: Gate | undefined, b: Gate): Gate =>
  a === undefined ? b : { by: a.by * b.by, after: a.after * b.after };

/** Turns readings into factors, each by its weight among its kind. @param beside readings that share the weight without being applied */
export function readingFactors(
  readings: readonly Reading[],
  context: ReadingContext,
  beside: readonly Reading[] = [],
): readonly ReadingFactors[] {
  const all = [...readings, ...beside];
  return readings.map((reading) => factorsOf(reading, context, (kind) => weightAmong(all, reading, kind)));
}

function factorsOf(
  reading: Reading,
  { lake, stratification, offset_C }: ReadingContext,
  weightOf: (kind: Kind) => number,
): ReadingFactors {
  const { day, surface_C, deep, secchiRatio, looks, phase } = reading;
  const warm = surface_C === undefined ? undefined : warmChance(surface_C, offset_C);
  /** Murk in warm water is of algae as likely as of mixing. */
  const murk = (gate: Gate, kind: Kind): Gate =>
    raised(gate, weightOf(kind) * (gate.after > gate.by && warm !== undefined ? 1 - warm : 1));

  let layered: ReadingFactors["layered"];
  if (deep !== undefined) {
    const { by, after } = twoDepths(reading, stratification);
    const gate = raised({ by, after }, weightOf("heat"));
    layered = { ...gate, never: gate.after };
  } else if (surface_C !== undefined) {
    const by = layeredChance(surface_C, lake);
    const gate = raised({ by, after: 1 - by }, weightOf("heat"));
    layered = { ...gate, never: Math.max(gate.by, gate.after) };
  }
  let clear: Gate | undefined;
  if (secchiRatio !== undefined) clear = murk(secchiGate(secchiRatio), "secchi");
  if (looks !== undefined) clear = times(clear, murk(LOOKS_GATES[looks], "looks"));
  let warmGate = warm === undefined ? undefined : raised({ by: warm, after: 1 - warm }, weightOf("heat"));
  if (phase === "later-weeks") warmGate = times(warmGate, raised(LATER_WORDS, weightOf("phase")));
  const words = phase === undefined || phase === "later-weeks" ? undefined : PHASE_WORDS[phase];
  const states = words?.map((factor) => power(factor, weightOf("phase")));

  let iced = 1;
  if (surface_C !== undefined)
    iced *= power(
      ICED.fits * normalDensity(surface_C, ICED.mean_C, ICED.sd_C) + ICED.floor,
      weightOf("heat"),
    );
  if ([deep, secchiRatio, looks, phase].some((found) => found !== undefined)) iced *= ICED.openWater;

  return {
    day,
    iced,
    ...(layered === undefined ? {} : { layered }),
    ...(warmGate === undefined ? {} : { warm: warmGate }),
    ...(clear === undefined ? {} : { clear }),
    ...(surface_C === undefined ? {} : { surface: { water_C: surface_C, weight: weightOf("heat") } }),
    ...(states === undefined ? {} : { states }),
  };
}
