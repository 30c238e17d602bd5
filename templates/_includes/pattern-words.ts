import type { GuidePattern } from "../../build/guide/guide-schema.ts";
import { phaseName } from "../../build/model/phase.ts";

const inBox = ({ stock }: GuidePattern): number => stock.reduce((sum, { count }) => sum + count, 0);
export const boxText = (pattern: GuidePattern): string =>
  inBox(pattern) === 0 ? "none" : String(inBox(pattern));
export const phasesText = (phases: GuidePattern["phases"]): string => phases.map(phaseName).join(", ");
