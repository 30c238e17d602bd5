import type { BoxRow, Tying } from "../flies/flies-schema.ts";
import { clockText, weekdayDayMonth } from "../model/calendar.ts";
import { chanceText } from "../model/units.ts";
import type { GuideTrip } from "./guide-schema.ts";
import type { Outing } from "./when-schema.ts";

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

/** One thing to tell whoever stays ashore: what it is, and what of it is known; the rest is written by hand. */
interface FloatPlanLine {
  readonly label: string;
  readonly given: string | null;
}

/** What to leave with someone ashore before the boats go out. */
export const floatPlanLines = ({ to }: Pick<GuideTrip, "to">): FloatPlanLine[] => [
  { label: "Told to", given: null },
  { label: "Trip leader", given: null },
  { label: "Phone", given: null },
  { label: "Vehicle, plate", given: null },
  { label: "Launch", given: null },
  { label: "Due back", given: `${weekdayDayMonth(to)}, at` },
  { label: "If not back by", given: `${weekdayDayMonth(to)}, at` },
  { label: "then call", given: null },
];

/** "Quern 72 %, or else Slatepin; one of the two 91 %". */
export function outingText(outing: Outing | null): string {
  if (outing === null) return "no lake can be reached";
  const { name, good, fallback, either } = outing;
  const alone = `${name} ${chanceText(good)}`;
  return fallback === null
    ? alone
    : `${alone}, or else ${fallback.name}; one of the two ${chanceText(either)}`;
}

/** "Fishable: Quern 91 %, Slatepin 84 %." */
export const fishableText = (fishable: GuideTrip["fishable"]): string =>
  `Fishable: ${fishable.map(({ name, chance }) => `${name} ${chanceText(chance)}`).join(", ")}.`;

/** Where a trip goes and, where no lake there is more likely good than not, what can be fished. */
export const tripOutingText = ({ pick, fishable }: Pick<GuideTrip, "pick" | "fishable">): string => {
  const outing = `${outingText(pick)}.`;
  return fishable.length === 0 || (pick?.either ?? 0) >= 0.5 ? outing : `${outing} ${fishableText(fishable)}`;
};

const times = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** "4 rods, 2 boats". */
export const partyText = ({ rods, people, boats }: GuideTrip): string =>
  [
    ...(people.length > 0 ? [times(people.length, "person", "people")] : []),
    times(rods, "rod", "rods"),
    ...(boats.length > 0 ? [times(boats.length, "boat", "boats")] : []),
  ].join(", ");

/** "05:07"; "–" where it does not happen. */
export const timeText = (minute: string | null): string => (minute === null ? "–" : clockText(minute));
