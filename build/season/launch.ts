import type { DayState } from "../model/phase.ts";
import { bareCard } from "./after-ice/bare-card.ts";
import { launchCard, type OpenStates } from "./after-ice/launch-card.ts";
import { LAUNCH_DEPTH_M, LAUNCH_ROWS, LAUNCH_TEMPERATURES_C, launchTable } from "./after-ice/launch-table.ts";
import type { Reading } from "./after-ice/readings.ts";
import { chanceBy } from "./after-ice/states.ts";
import type { Basin } from "./after-ice/stratification.ts";
import type { Launch } from "./forecast.ts";
import { roundTo } from "./numbers.ts";
import type { LakeSeason } from "./region-season.ts";

const STATES: Readonly<Record<keyof OpenStates, DayState>> = {
  iceOff: "iceOff",
  turnover: "turnover",
  best: "postTurnover",
  later: "laterWeeks",
};

function launchOf(counted: boolean, card: (reading: Omit<Reading, "day">) => OpenStates): Launch {
  const table = launchTable(card);
  return {
    counted,
    depth_m: LAUNCH_DEPTH_M,
    rows: LAUNCH_ROWS.map(({ clarity, below }, row) => ({
      clarity,
      below,
      cells: LAUNCH_TEMPERATURES_C.map((surface_C, place) => {
        const cell = table[row]?.[place];
        return {
          surface_C,
          heat: cell?.heat ?? null,
          mixedSigns: cell?.mixedSigns ?? false,
          states: (cell?.states ?? []).map(({ state, chance }) => ({
            state: STATES[state],
            chance: roundTo(chance, 4),
          })),
        };
      }),
    })),
  };
}

/** A lake of no ice-off to count from: what its readings say alone. */
export const bareLaunch = (lake: Basin): Launch => launchOf(false, (reading) => bareCard(lake, reading));

/** Days since ice-off count from this chance of an open lake on, and until mid-August (day 227; mid-February in the south). Our judgement. */
const OPEN = 0.05;
const LAST_DAY_OF_SEASON = 227;

/** What readings at the launch say of a lake today; of one that is most likely iced, or late in summer, the readings alone. */
export function launchToday(lake: LakeSeason, today: number): Launch {
  const { clocks, law, readings, spring } = lake;
  if (chanceBy(spring, "iceOff", today) < OPEN || today > LAST_DAY_OF_SEASON) return bareLaunch(clocks.lake);
  return launchOf(true, launchCard(clocks, law, readings, today));
}
