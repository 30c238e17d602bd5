import type { BoxRow, Tying } from "../flies/box-plan-schema.ts";
import type { GuideTrip } from "./guide-schema.ts";

/** "14 brown": which fly of its pattern. */
export const varietyText = ({ size, colour }: Pick<BoxRow, "size" | "colour">): string =>
  colour === null ? String(size) : `${size} ${colour}`;

/** "Size 14 brown: 4". */
export const toTieText = (fly: Tying["flies"][number]): string => `Size ${varietyText(fly)}: ${fly.count}`;

/** "hook: nymph hook, 3X long; tail: marabou". */
export const dressingText = ({ dressing }: Tying): string =>
  dressing.map(({ part, material }) => `${part}: ${material}`).join("; ");

/** "68 flies in 26 rows, 6 of them to tie". */
export function boxSum({ rows, losses }: GuideTrip["box"]): string {
  const tie = rows.reduce((sum, row) => sum + row.tie, 0);
  const flies = `${losses.planned} ${losses.planned === 1 ? "fly" : "flies"}`;
  const inRows = `${rows.length} ${rows.length === 1 ? "row" : "rows"}`;
  return `${flies} in ${inRows}, ${tie === 0 ? "none" : tie} of them to tie`;
}
