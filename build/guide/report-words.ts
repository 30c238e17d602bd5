import { depthText, rounded, temperatureText, type UnitSystem } from "../model/units.ts";
import type { GuideLake } from "./guide-schema.ts";
import { fishOf } from "./report-seasons.ts";

type Report = GuideLake["reports"][number];

/** "1 report", "6 reports". */
export const reportsText = (count: number): string => `${count} report${count === 1 ? "" : "s"}`;

const fishText = (fish: number): string => (fish === 0 ? "no fish" : `${fish} fish`);
const hoursText = (hours: number): string => `${rounded(hours, 1)} rod-hour${hours === 1 ? "" : "s"}`;
const listed = (parts: readonly (string | null)[]): string =>
  parts.filter((part) => part !== null).join(", ");

/** What was seen; a phase says by itself that the ice is off. */
const withoutRepeats = (seen: readonly string[]): readonly string[] =>
  seen.length > 1 ? seen.filter((words) => words !== "ice off") : seen;

/** "ice off, water 41 °F, clear to 4 ft, oxygen 9.1 mg/L"; empty where nothing was seen or measured. */
export const observedText = (report: Report, units: UnitSystem): string =>
  listed([
    ...withoutRepeats(report.seen),
    report.water_C === null ? null : `water ${temperatureText(report.water_C, units)}`,
    report.clarity_m === null ? null : `clear to ${depthText(report.clarity_m, units)}`,
    report.oxygen_mgL === null ? null : `oxygen ${rounded(report.oxygen_mgL, 1)} mg/L`,
  ]);

/** "no fish in 4 rod-hours"; empty where no catch was told. */
export function catchTotalText(report: Report): string {
  if (report.catches.length === 0) return "";
  const fish = fishText(fishOf(report));
  return report.rodHours === null ? fish : `${fish} in ${hoursText(report.rodHours)}`;
}

/** "2 on Olive Scud (floating line), none on Blob": row by row. */
const catchRowsText = ({ catches }: Report): string =>
  catches
    .map(
      ({ name, way, fish }) => `${fish === 0 ? "none" : fish} on ${name}${way === null ? "" : ` (${way})`}`,
    )
    .join(", ");

/** "3 throats: scud 23, caddis larva 2; 1 empty". */
function samplesText({ samples }: Report): string {
  if (samples.length === 0) return "";
  const counts = new Map<string, number>();
  for (const { food, count } of samples.flat()) counts.set(food, (counts.get(food) ?? 0) + count);
  const found = [...counts].filter(([, count]) => count > 0);
  const empty = samples.filter((sample) => sample.every(({ count }) => count === 0)).length;
  const throats = `${samples.length} throat${samples.length === 1 ? "" : "s"}`;
  if (found.length === 0) return `${throats}, ${samples.length === 1 ? "empty" : "all empty"}`;
  const foods = found.map(([food, count]) => `${food} ${count}`).join(", ");
  return `${throats}: ${foods}${empty === 0 ? "" : `; ${empty} empty`}`;
}

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? "" : "."}`;

/** All that a report says, a sentence each: what was seen, the catch, the throats, the notes. */
export function reportSentences(report: Report, units: UnitSystem): string[] {
  const total = catchTotalText(report);
  return [
    observedText(report, units),
    total === "" ? "" : `${total}: ${catchRowsText(report)}`,
    samplesText(report),
    report.notes ?? "",
  ]
    .filter((words) => words !== "")
    .map(sentence);
}
