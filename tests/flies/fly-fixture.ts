import type { PhasedReport } from "../../build/flies/catch-rates.ts";
import type { FoundFood, Pattern, Report, ThroatSample } from "../../build/model/club.ts";
import type { Phase } from "../../build/model/phase.ts";
import { reportOf } from "../season/club.ts";

/** A scud that suits ice-off under an indicator in any water. */
export const pattern = (slug: string, over: Partial<Pattern> = {}): Pattern => ({
  slug,
  name: slug,
  imitates: "scud",
  sizes: [14],
  colours: ["olive"],
  phases: ["ice-off"],
  ways: ["indicator still"],
  waters: [],
  stock: [{ size: 14, colour: "olive", count: 3 }],
  dressing: [],
  ...over,
});

/** A visit to a lake in a phase. */
export const visit = (
  lake: string,
  seen: Partial<Report>,
  phase: Phase | null = "ice-off",
): PhasedReport => ({ report: reportOf(lake, "2026-05-01", seen), phase });

/** One throat with so many of each food. */
export const throat = (counts: Partial<Record<FoundFood, number>>): ThroatSample =>
  Object.entries(counts).map(([food, count]) => ({ food: food as FoundFood, count }));
