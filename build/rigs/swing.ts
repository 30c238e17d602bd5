import type { RigBox } from "../model/club.ts";
import { rounded } from "../model/units.ts";
import { DRIFT_COLUMNS, drift_mps, type RodSeconds } from "./drift.ts";
import type { SwingTable } from "./rig-tables.ts";

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

/** "45 s", "4 min". */
function swingText(seconds: number): string {
  if (!Number.isFinite(seconds)) return "no swing";
  return seconds < 100 ? `${rounded(seconds)} s` : `${rounded(seconds / 60)} min`;
}

const swingCell = (
  line_m: number,
  speed_mps: number,
  holder_deg: number,
  rod_s: RodSeconds,
): SwingTable["rows"][number]["cells"][number] => {
  const seconds = swingTime_s(line_m, speed_mps, holder_deg, SWUNG_OUT_DEG);
  return { rod_s, seconds: Number.isFinite(seconds) ? Math.round(seconds) : null, text: swingText(seconds) };
};

/** Seconds of useful swing from a rod in a holder, by holder angle and drift. */
export function swingTable(box: RigBox, line_m = USUAL_LINE_M): SwingTable {
  const columns = DRIFT_COLUMNS.map((rod_s) => ({ rod_s, drift_mps: drift_mps(box, rod_s) }));
  return {
    line_m,
    until_deg: SWUNG_OUT_DEG,
    columns,
    rows: HOLDER_ANGLES_DEG.map((holder_deg) => ({
      holder_deg,
      cells: columns.map(({ rod_s, drift_mps: speed }) => swingCell(line_m, speed, holder_deg, rod_s)),
    })),
    note: `From the holder's angle until the line points within ${SWUNG_OUT_DEG} degrees of straight downwind. A planning aid: time one swing, then cast again when the indicator stops crossing.`,
  };
}
