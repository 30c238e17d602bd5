import { measuredText } from "./measured-text.ts";
import { type Named, patternCalled } from "./named.ts";
import { isFault, type Unread, unread } from "./problem.ts";
import { quoted } from "./quote.ts";

/** What is written where nothing was caught or found. */
export const isNone = (text: string): boolean =>
  /^(?:none|nothing|empty|no fish|n\/a|0|-|–|—)\.?$/i.test(text);

const WAY = String.raw`(?:\s*\((?<way>[^()]*)\))?`;
const HOURS = String.raw`(?:\s+in\s+(?<hours>.+))?`;
const NUMBER = String.raw`(?<count>[+-]?\d+(?:[.,]\d+)?)`;
/** "pale-scud (indicator still) 4 in 3 h". */
const NAME_FIRST = new RegExp(`^(?<name>.+?)${WAY}\\s*[:=x×]?\\s+${NUMBER}${HOURS}$`, "i");
/** "4 pale-scud (indicator still) in 3 h". */
const COUNT_FIRST = new RegExp(`^${NUMBER}\\s*[x×]?\\s+(?<name>.+?)${WAY}${HOURS}$`, "i");

/** A row of a report's `caught`, as a YAML file would hold it. */
export interface CaughtRow {
  readonly pattern: string | Unread;
  readonly way?: string;
  readonly fish: number;
  readonly hours?: string;
}

function caughtRow(entry: string, patterns: readonly Named[], decimalComma: boolean): CaughtRow | Unread {
  const { name, way, count, hours } = (NAME_FIRST.exec(entry) ?? COUNT_FIRST.exec(entry))?.groups ?? {};
  if (name === undefined || count === undefined)
    return unread({
      code: "catch-without-count",
      message: `${quoted(entry)} is not a pattern and a number of fish`,
      hint: "write it like: pale-scud 4 in 3 h; bloodworm 0",
    });
  const pattern = patternCalled(name, patterns);
  if (isFault(pattern) && /\d\s*,/.test(name))
    return unread({
      code: "catch-without-count",
      message: `${quoted(entry)} is more than one pattern`,
      hint: "write a semicolon between two patterns: pale-scud 4; bloodworm 0",
    });
  return {
    pattern: isFault(pattern) ? unread(pattern) : pattern,
    ...(way === undefined ? {} : { way: way.trim().toLowerCase() }),
    fish: Number(count.replace(",", ".")),
    ...(hours === undefined ? {} : { hours: measuredText(hours, "duration", decimalComma) }),
  };
}

/** Fish by pattern out of one cell, one pattern after another with semicolons; nothing where the cell says “none”. */
export function caughtRows(
  text: string,
  patterns: readonly Named[],
  decimalComma: boolean,
): (CaughtRow | Unread)[] | undefined {
  if (isNone(text)) return undefined;
  const entries = text
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== "");
  return entries.map((entry) => caughtRow(entry, patterns, decimalComma));
}
