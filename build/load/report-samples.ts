import { measuredText } from "./measured-text.ts";
import { type Unread, unread } from "./problem.ts";
import { quoted } from "./quote.ts";
import { isNone } from "./report-catches.ts";

/** A food of a throat sample, as a YAML file would hold it. */
type Found = number | { readonly count: number; readonly weight: string };
export type SampleRow = Readonly<Record<string, Found>>;

const NUMBER = String.raw`(?<count>[+-]?\d+(?:[.,]\d+)?)`;
const WEIGHT = String.raw`(?:\s*\((?<weight>[^()]*)\))?`;
/** "scud 12 (0.3 g)". */
const FOOD_FIRST = new RegExp(`^(?<food>.+?)\\s*[:=x×]?\\s+${NUMBER}${WEIGHT}$`, "i");
/** "12 scud (0.3 g)". */
const COUNT_FIRST = new RegExp(`^${NUMBER}\\s*[x×]?\\s+(?<food>.+?)${WEIGHT}$`, "i");

/** Commas between foods; not the decimal comma of a weight in brackets. */
const BETWEEN_FOODS = /,(?![^(]*\))/;

function sampleRow(fish: string, decimalComma: boolean): SampleRow | Unread {
  if (isNone(fish)) return {};
  const found = new Map<string, Found>();
  for (const entry of fish.split(BETWEEN_FOODS).map((part) => part.trim())) {
    const { food, count, weight } = (FOOD_FIRST.exec(entry) ?? COUNT_FIRST.exec(entry))?.groups ?? {};
    if (food === undefined || count === undefined)
      return unread({
        code: "food-without-count",
        message: `${quoted(entry)} is not a food and how many`,
        hint: "write one fish after another with semicolons: scud 12, chironomid pupa 3; scud 5; empty",
      });
    const name = food.toLowerCase();
    if (found.has(name))
      return unread({
        code: "food-named-twice",
        message: `${quoted(name)} is there twice in one fish`,
        hint: "write one number; between two fish belongs a semicolon",
      });
    const number = Number(count.replace(",", "."));
    found.set(
      name,
      weight === undefined
        ? number
        : { count: number, weight: measuredText(weight.trim(), "mass", decimalComma) },
    );
  }
  return Object.fromEntries(found);
}

/** Throat samples out of one cell, one fish after another with semicolons. */
export function sampleRows(text: string, decimalComma: boolean): (SampleRow | Unread)[] {
  return text
    .split(/[;\n]/)
    .map((fish) => fish.trim())
    .filter((fish) => fish !== "")
    .map((fish) => sampleRow(fish, decimalComma));
}
