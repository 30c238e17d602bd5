import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import type { Outing } from "../../build/guide/when-schema.ts";
import { clockText } from "../../build/model/clock.ts";
import { chanceText } from "../../build/model/units.ts";

/** "Quern 72 %, or else Slatepin; one of the two 91 %". */
export function outingText(outing: Outing | null): string {
  if (outing === null) return "no lake can be reached";
  const { name, good, fallback, either } = outing;
  const alone = `${name} ${chanceText(good)}`;
  return fallback === null
    ? alone
    : `${alone}, or else ${fallback.name}; one of the two ${chanceText(either)}`;
}

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
