import type { OpenStates } from "./launch-card.ts";
import { type Gate, type Reading, readingFactors } from "./readings.ts";
import { type Basin, stratificationOf } from "./stratification.ts";

/** Chance of a change that has come, when it is as likely as not before the reading. */
const shareOf = ({ by, after }: Gate = { by: 1, after: 1 }): number => by / (by + after);

/**
 * States of an open lake from one reading alone: for lakes without an ice-off to count from. Before the reading the lake is as likely
 * stratified, clear and warm as not.
 */
export function bareCard(lake: Basin, reading: Omit<Reading, "day">): OpenStates {
  const stratification = stratificationOf(lake);
  const [factors] = readingFactors([{ ...reading, day: 0 }], { lake, stratification, offset_C: 0 });
  const { layered, warm, clear } = factors ?? {};
  const isClear = shareOf(clear);
  const over = lake.stratifies === false ? isClear : isClear * shareOf(layered);
  const isWarm = shareOf(warm);
  return { iceOff: 0, turnover: 1 - over, best: over * (1 - isWarm), later: over * isWarm };
}
