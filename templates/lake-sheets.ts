import { type SheetVolume, sheetsName, sheetVolumes } from "../build/guide/sheet-volumes.ts";

interface NamedLake {
  readonly slug: string;
  readonly name: string;
}

function volumeText({ number, lakes }: SheetVolume<NamedLake>, paper: string): string {
  const [first, last] = [lakes[0]?.name, lakes.at(-1)?.name];
  if (number === null) return `All lake cards, on ${paper}`;
  return first === last
    ? `Lake card of ${first}, on ${paper}`
    : `Lake cards, ${first} to ${last}, on ${paper}`;
}

/** The sheets of lake cards to print: what each file holds, and its name under cards/. */
export const lakeSheets = (lakes: readonly NamedLake[]): (readonly [what: string, name: string])[] =>
  [["a4", "A4"] as const, ["letter", "letter"] as const].flatMap(([paper, said]) =>
    sheetVolumes(lakes).map(
      (volume) => [volumeText(volume, said), sheetsName(paper, volume.number)] as const,
    ),
  );
