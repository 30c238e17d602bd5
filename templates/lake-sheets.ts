import { type SheetVolume, sheetsName, sheetVolumes } from "../build/guide/sheet-volumes.ts";
import type { PrintFile } from "./print-files.ts";

interface NamedLake {
  readonly slug: string;
  readonly name: string;
}

function volumeText({ number, lakes }: SheetVolume<NamedLake>): string {
  const [first, last] = [lakes[0]?.name, lakes.at(-1)?.name];
  if (number === null) return "All lake cards";
  return first === last ? `Lake card of ${first}` : `Lake cards, ${first} to ${last}`;
}

/** The sheets of lake cards to print: what each file holds. */
export const lakeSheets = (lakes: readonly NamedLake[]): PrintFile[] =>
  sheetVolumes(lakes).map((volume) => ({
    what: volumeText(volume),
    size: "A6",
    sides: "2 each",
    alone: null,
    sheets: sheetsName(volume),
  }));
