import type { Condition, RigBox } from "../../model/club.ts";
import { rounded, toBase, type UnitSystem } from "../../model/units.ts";
import { toMillimetre } from "../leaders/leader.ts";
import type { AtAnchor, SwingTable } from "../rig-schemas.ts";

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Seconds for an indicator on a line of fixed length to swing between two angles from straight downwind:
 * `tan(phi/2)` falls as `exp(-u t / R)`. 0 when it starts inside the end angle; Infinity in still water, and from
 * 180 degrees, where nothing pushes it to a side.
 * @param line_m from rod tip to indicator, above 0
 * @param from_deg 0 to 180
 * @param to_deg above 0, to 180
 */
export function swingTime_s(line_m: number, speed_mps: number, from_deg: number, to_deg: number): number {
  if (from_deg <= to_deg) return 0;
  if (from_deg >= 180 || speed_mps === 0) return Number.POSITIVE_INFINITY;
  return (line_m / speed_mps) * Math.log(Math.tan(radians(from_deg) / 2) / Math.tan(radians(to_deg) / 2));
}

/** Closer to straight downwind than this the swing is over, degrees. */
const SWUNG_OUT_DEG = 10;
const HOLDER_ANGLES_DEG = [30, 45, 60, 75, 90] as const;
/** About 40 ft from rod tip to indicator: an easy cast with a long leader. Common practice, from memory. */
const USUAL_LINE_M = 12;
/** Drifts of the swing table, seconds a rod length. */
const SWING_DRIFTS_S = [120, 60, 45, 30, 20] as const;

/** "45 s", "4 min". */
const swingText = (seconds: number): string =>
  seconds < 100 ? `${rounded(seconds)} s` : `${rounded(seconds / 60)} min`;

/** Seconds of useful swing from a rod in a holder, by holder angle and drift, and the water it covers. */
export function swingTable({ rod_m }: Pick<RigBox, "rod_m">, line_m = USUAL_LINE_M): SwingTable {
  const columns = SWING_DRIFTS_S.map((rod_s) => ({ rod_s, drift_mps: rod_m / rod_s }));
  return {
    line_m,
    until_deg: SWUNG_OUT_DEG,
    columns,
    rows: HOLDER_ANGLES_DEG.map((holder_deg) => ({
      holder_deg,
      covers_m: toMillimetre(line_m * radians(holder_deg - SWUNG_OUT_DEG)),
      cells: columns.map(({ rod_s, drift_mps }) => {
        const seconds = Math.round(swingTime_s(line_m, drift_mps, holder_deg, SWUNG_OUT_DEG));
        return { rod_s, seconds, text: swingText(seconds) };
      }),
    })),
    note: `From the holder's angle until the line points within ${SWUNG_OUT_DEG} degrees of straight downwind. A planning aid: time one swing, then cast again when the indicator stops crossing.`,
  };
}

/**
 * How a boat lies on one anchor and on two, where the rods point, and what each angle of a rod holder costs. Common
 * practice, no source.
 */
export const atAnchor = (): AtAnchor => ({
  moorings: [
    {
      name: "One anchor, off the bow",
      words: "Bow to the wind, the only way in chop; rods over the stern point downwind.",
    },
    {
      name: "Two, off bow and stern",
      words:
        "Calm and ripple only; rods over the lee side point downwind. When waves build, let the stern line go first.",
    },
  ],
  holders: [
    {
      name: "dead still",
      words:
        "Line straight downwind: the fly stays over one spot and hardly lifts; wait once. It covers no water: move it a rod length when nothing takes.",
    },
    {
      name: "swing",
      words:
        "Rod across the wind: the indicator crosses water. The wait comes off every swing, and on a tight line the fly lifts as from a drifting boat: keep it slack.",
    },
  ],
  note: "Common practice, no source.",
});

/** Lengths of rope are rounded up to this. */
const roundUp_m = (units: UnitSystem): number => (units === "imperial" ? toBase(5, "ft", "length") : 1);

/**
 * Anchor rope to let out: scope times depth and bow together, rounded up to 5 ft or 1 m.
 * @source scope: BoatUS Foundation; BoatUS Magazine, April 2014; US Coast Guard Auxiliary
 */
export function anchorRope_m(
  depth_m: number,
  condition: Condition,
  { scope, bow_m }: Pick<RigBox, "scope" | "bow_m">,
  units: UnitSystem,
): number {
  const step_m = roundUp_m(units);
  return Math.ceil((scope[condition] * (depth_m + bow_m)) / step_m - 1e-9) * step_m;
}
