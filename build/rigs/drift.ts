import type { RigBox } from "../model/club.ts";

/** Seconds for the indicator to pass one rod length; `null` is still water. */
export type RodSeconds = number | null;

/** The columns of every drift table: round numbers an angler can count. */
export const DRIFT_COLUMNS: readonly RodSeconds[] = [null, 120, 60, 45, 30, 20];

/** Speed of a drift, m/s. */
export const drift_mps = ({ rod_m }: RigBox, rodSeconds: RodSeconds): number =>
  rodSeconds === null ? 0 : rod_m / rodSeconds;
