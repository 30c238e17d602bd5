import { power } from "../model/power.ts";

/** One force of the Beaufort scale: mean wind over ten minutes, ten metres above open ground or water. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  readonly least_mps: number;
  readonly most_mps: number;
  /** What the shore shows of it. */
  readonly sign: string;
}

/**
 * The forces a small boat has to decide about. Limits: WMO, Manual on Codes (WMO-No. 306), code table 1100. Signs: the
 * WMO land specifications in our own words.
 */
export const BEAUFORT = [
  {
    force: 3,
    name: "gentle breeze",
    least_mps: 3.4,
    most_mps: 5.4,
    sign: "leaves and twigs never rest; first crests break",
  },
  {
    force: 4,
    name: "moderate breeze",
    least_mps: 5.5,
    most_mps: 7.9,
    sign: "dust and loose paper fly, thin branches move; whitecaps here and there",
  },
  {
    force: 5,
    name: "fresh breeze",
    least_mps: 8,
    most_mps: 10.7,
    sign: "small trees in leaf sway; whitecaps everywhere",
  },
  {
    force: 6,
    name: "strong breeze",
    least_mps: 10.8,
    most_mps: 13.8,
    sign: "thick branches move, wires whistle; foam and spray",
  },
] as const satisfies readonly BeaufortForce[];

/** What may be on the water, the one that has to come in first first. */
const CRAFT = ["Float tubes and pontoons", "Canoes and kayaks", "Small open boats"] as const;

/** From the least to the most that wind and waves ask of a craft. None of them says that it is safe. */
const ADVICE = ["keep close to shore", "keep to the sheltered shore", "be ashore"] as const;

/**
 * What each craft is told at each force on a lake too small for waves to matter. Common practice, no published source;
 * force 5 is where the US National Weather Service begins to issue lake wind advisories (from memory).
 */
const BY_FORCE: Readonly<Record<number, readonly [float: number, canoe: number, boat: number]>> = {
  3: [1, 0, 0],
  4: [2, 1, 1],
  5: [2, 2, 2],
  6: [2, 2, 2],
};

/** Waves of this height take every craft one step further. Common practice, no published source. */
const ROUGH_M = 0.3;

/**
 * What float tubes, canoes and small open boats should do, in one sentence a group of craft told the same.
 * @param force 3 to 6
 * @param height_m the highest waves to expect anywhere on the lake
 */
export function craftAdvice(force: number, height_m: number): string {
  const step = height_m >= ROUGH_M ? 1 : 0;
  const told = (BY_FORCE[force] ?? [2, 2, 2]).map(
    (advice) => ADVICE[Math.min(advice + step, 2)] ?? ADVICE[2],
  );
  if (told.every((advice) => advice === ADVICE[2])) return "Everybody: be ashore.";
  return ADVICE.flatMap((advice) => {
    const craft = CRAFT.filter((_, i) => told[i] === advice).map((name, i) =>
      i === 0 ? name : name.toLowerCase(),
    );
    return craft.length === 0 ? [] : [`${craft.join(", ")}: ${advice}.`];
  })
    .reverse()
    .join(" ");
}

/** Waves at the downwind end of a stretch of open water, once the wind has blown long enough. */
interface Waves {
  /** Mean height of the highest third, trough to crest. */
  readonly height_m: number;
  /** From crest to crest at the peak of the spectrum. */
  readonly period_s: number;
  /** How long the wind has to blow over this fetch until it is the fetch, not time, that limits the waves. */
  readonly growth_min: number;
}

/** Standard gravity, exact by definition (ISO 80000-3). */
const GRAVITY_MPS2 = 9.80665;

/** Adjusted wind speed (wind-stress factor) of a 10 m wind: U_A = 0.71 U^1.23, both m/s. SPM (1984), equation 3-28a. */
const adjustedWind_mps = (wind_mps: number): number => 0.71 * power(wind_mps, 1.23);

/** A fully grown sea: g H / U_A^2 and g T / U_A. SPM (1984), equations 3-36 and 3-37. */
const GROWN = { height: 0.2433, period: 8.134 };

/**
 * Fetch-limited waves in deep water. Shallow water makes them lower: these are the most to expect.
 * @param wind_mps mean wind at 10 m, above 0
 * @param fetch_m straight stretch of open water upwind, 0 or more
 * @source US Army Corps of Engineers, Shore Protection Manual (1984), equations 3-33 to 3-35
 */
export function fetchLimitedWaves(wind_mps: number, fetch_m: number): Waves {
  const adjusted = adjustedWind_mps(wind_mps);
  const fetch = (GRAVITY_MPS2 * fetch_m) / adjusted ** 2;
  return {
    height_m: (Math.min(1.6e-3 * power(fetch, 1 / 2), GROWN.height) * adjusted ** 2) / GRAVITY_MPS2,
    period_s: (Math.min(2.857e-1 * power(fetch, 1 / 3), GROWN.period) * adjusted) / GRAVITY_MPS2,
    growth_min: (6.88e1 * power(fetch, 2 / 3) * adjusted) / GRAVITY_MPS2 / 60,
  };
}

/**
 * The same height by the Corps' later manual, which comes out lower.
 * @source Coastal Engineering Manual EM 1110-2-1100, Part II-2 (2002), equations II-2-35 and II-2-36
 */
export function cemWaveHeight_m(wind_mps: number, fetch_m: number): number {
  const drag = 0.001 * (1.1 + 0.035 * wind_mps);
  const friction_mps2 = drag * wind_mps ** 2;
  const fetch = (GRAVITY_MPS2 * fetch_m) / friction_mps2;
  return (Math.min(4.13e-2 * power(fetch, 1 / 2), 2.115e2) * friction_mps2) / GRAVITY_MPS2;
}
