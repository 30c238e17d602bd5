import { type QuantityKindName, unitMeant } from "../model/units.ts";

const MEASURED = /^([+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*(.*)$/s;

/** A quantity as the schema reads it: other common spellings of its unit are put right. */
export function measuredText(text: string, kind: QuantityKindName, decimalComma: boolean, unit = ""): string {
  const [, number, behind = ""] = MEASURED.exec(text) ?? [];
  if (number === undefined) return text;
  const written = behind === "" ? unit : (unitMeant(behind, kind) ?? behind);
  return `${decimalComma ? number.replace(",", ".") : number} ${written}`.trim();
}
