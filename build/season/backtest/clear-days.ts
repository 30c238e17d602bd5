import { dateOfSeasonDay, seasonDay } from "../../model/calendar.ts";
import { clocksOfLake } from "../after-ice/lake-history.ts";
import { statesAfterIceOff } from "../after-ice/states.ts";
import type { ClearDayScore } from "../forecast.ts";
import { meanOf } from "../numbers.ts";
import { hemisphereOfLakes, iceOffBySeason, isExact } from "../records.ts";
import type { SeasonEvidence, SeasonLake } from "../season-evidence.ts";

/** With fewer records of turnover nothing is said. */
const LEAST_RECORDS = 10;
/** How much a lake's ice-off differs from spring to spring, standard deviation, days. From memory. */
const SPRING_SD_D = 8;

/** One spring of one lake: days from ice-off to the first clear day, as it came and as it was foretold. */
interface ClearDayCase {
  readonly season: number;
  readonly observed: number;
  /** Day by which the lake is clear with this chance. */
  readonly dayBy: (chance: number) => number;
}

function casesOf(lake: SeasonLake, season: number): ClearDayCase[] {
  const hemisphere = hemisphereOfLakes([lake]);
  const iceOff = new Map(
    [...iceOffBySeason(lake, hemisphere)].flatMap(([of, days]) =>
      isExact(days) ? [[of, Math.round(days.from)] as const] : [],
    ),
  );
  return lake.turnover.flatMap(({ season: of, to }): ClearDayCase[] => {
    const opened = iceOff.get(of);
    const before = [...iceOff].flatMap(([earlier, day]) => (earlier < of ? [day] : []));
    if (opened === undefined || of >= season || before.length === 0 || !lake.turnoverRule.turnsOver)
      return [];
    const asOf = dateOfSeasonDay(opened, of, hemisphere);
    const clocks = clocksOfLake(
      lake,
      { day: meanOf(before), variance: SPRING_SD_D ** 2 / before.length },
      iceOffBySeason(lake, hemisphere, asOf),
      { season: of, asOf, hemisphere },
    );
    const { clear, evidence } = statesAfterIceOff(clocks, [])(opened);
    const dayBy = (chance: number): number => {
      const day = clear.findIndex((by) => by >= chance * evidence);
      return day < 0 ? clear.length - 1 : day;
    };
    return [{ season: of, observed: seasonDay(to, of, hemisphere) + 1 - opened, dayBy }];
  });
}

/**
 * How well the first clear day would have been called on the day each lake opened, from what was known of it then: its own records of
 * earlier springs, no reading.
 * @returns `null` with fewer than ten records of turnover in springs with a known ice-off and an earlier one before them
 */
export function scoreClearDays({
  lakes,
  season,
}: Pick<SeasonEvidence, "lakes" | "season">): ClearDayScore | null {
  const cases = lakes.flatMap((lake) => casesOf(lake, season));
  if (cases.length < LEAST_RECORDS) return null;
  const held = (least: number, most: number): number =>
    meanOf(cases.map(({ observed, dayBy }) => Number(dayBy(least) <= observed && observed <= dayBy(most))));
  return {
    n: cases.length,
    seasons: new Set(cases.map((one) => one.season)).size,
    mae: meanOf(cases.map(({ observed, dayBy }) => Math.abs(dayBy(0.5) - observed))),
    cover50: held(0.25, 0.75),
    cover80: held(0.1, 0.9),
  };
}
