import { ADDRESS, CARD, onPaper, PAPERS, type Paper } from "../model/addresses.ts";
import { listedTrips } from "./guide-contents.ts";
import type { Guide, GuideLake, GuideTrip } from "./guide-schema.ts";
import { type SheetVolume, sheetsName, sheetVolumes } from "./sheet-volumes.ts";

/** One card: what it is, and its files under cards/, their endings left out. */
export interface PrintFile {
  readonly what: string;
  readonly size: string;
  /** How many. */
  readonly sides: string;
  /** The card alone, on a page of its own size; null where it comes on sheets only. */
  readonly alone: string | null;
  /** Sheets of it, before "-a4" or "-letter"; null where there are none. */
  readonly sheets: string | null;
}

const PAPER_NAMES: Readonly<Record<Paper, string>> = { a4: "A4", letter: "letter" };
/** Kinds of sheets: the name's ending and what the paper is called. */
export const SHEETS = PAPERS.map((paper) => [paper, PAPER_NAMES[paper]] as const);

const BOTH = "2";
const label = (what: string, sheets: string): PrintFile => ({
  what,
  size: "90 × 30 mm",
  sides: "1",
  alone: null,
  sheets,
});

export const REPORT_SLIP: PrintFile = {
  what: "Report slip to fill in by pencil",
  size: "A6",
  sides: BOTH,
  alone: CARD.reportSlip,
  sheets: CARD.reportSlips,
};

/** The cards about rigs, and the club's labels where it has leaders to put them on. */
export const rigFiles = ({ rigs }: { readonly rigs: Pick<Guide["rigs"], "leaders"> }): PrintFile[] => [
  { what: "Plumb card", size: "A6", sides: BOTH, alone: CARD.plumb, sheets: CARD.rigs },
  { what: "Rig card", size: "A6", sides: BOTH, alone: CARD.rig, sheets: CARD.rigs },
  { what: "Rig drawings to scale", size: "A6", sides: BOTH, alone: CARD.rigDrawings, sheets: CARD.rigs },
  { what: "Rig card", size: "5 × 3 in", sides: BOTH, alone: CARD.rigIndexCard, sheets: null },
  ...(rigs.leaders.length === 0 ? [] : [label("Labels for the leader boards", CARD.labels)]),
];

/** What decides which cards a trip has. */
interface PrintedTrip {
  readonly slug: string;
  readonly name: string;
  readonly hasBox: boolean;
  readonly hasBoards: boolean;
}

export const printedTrip = ({ slug, name, box, gear }: GuideTrip): PrintedTrip => ({
  slug,
  name,
  hasBox: box.rows.length > 0,
  hasBoards: gear.boards.boards.length > 0,
});

/** A trip's cards. */
export const tripFiles = ({ slug, name, hasBox, hasBoards }: PrintedTrip): PrintFile[] => {
  const sheets = CARD.trip(slug);
  return [
    { what: `${name}: trip card`, size: "A6", sides: "2 or more", alone: sheets, sheets },
    ...(hasBox
      ? [{ what: `${name}: box card`, size: "A6", sides: "1 or more", alone: CARD.box(slug), sheets }]
      : []),
    ...(hasBoards ? [label(`${name}: labels for the leader boards`, CARD.tripLabels(slug))] : []),
  ];
};

interface NamedLake {
  readonly slug: string;
  readonly name: string;
}

interface PrintedLake {
  readonly slug: string;
  readonly name: string;
  readonly hasMap: boolean;
  readonly hasSearch: boolean;
}

const lakeFile = ({ slug, name, hasMap, hasSearch }: PrintedLake, sheets: string): PrintFile => ({
  what: `${name}: ${["card", ...(hasMap ? ["map card"] : []), ...(hasSearch ? ["search card"] : [])].join(", ")}`,
  size: "A6",
  sides: String(2 * (1 + Number(hasMap) + Number(hasSearch))),
  alone: CARD.lake(slug),
  sheets,
});

const launchFile = ({ slug, name }: NamedLake): PrintFile => ({
  what: `${name}: launch card`,
  size: "A6",
  sides: BOTH,
  alone: CARD.launch(slug),
  sheets: null,
});

/** What decides which cards a guide has that everybody may see. */
export interface Printed {
  readonly lakes: readonly PrintedLake[];
  readonly withoutForecast: readonly NamedLake[];
  readonly trips: readonly PrintedTrip[];
}

/** Unlisted trips are not in it. */
export const printedOf = (guide: Guide): Printed => ({
  lakes: guide.lakes.map(({ slug, name, place, search }: GuideLake) => ({
    slug,
    name,
    hasMap: place.map !== null,
    hasSearch: search.length > 0,
  })),
  withoutForecast: guide.lakesWithoutForecast.map(({ slug, name }) => ({ slug, name })),
  trips: listedTrips(guide).map(printedTrip),
});

/** Every card of a guide: what all share first, then trip by trip and lake by lake. */
export const allFiles = (
  { lakes, withoutForecast, trips }: Printed,
  guide: Parameters<typeof rigFiles>[0],
): PrintFile[] => [
  ...lakeSheets(lakes),
  ...rigFiles(guide),
  REPORT_SLIP,
  ...trips.flatMap(tripFiles),
  ...sheetVolumes(lakes).flatMap((volume) => volume.lakes.map((lake) => lakeFile(lake, sheetsName(volume)))),
  ...[...lakes, ...withoutForecast].map(launchFile),
];

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

/** The addresses of such files, each once. */
export const printAddresses = (files: readonly PrintFile[]): string[] => [
  ...new Set(
    files
      .flatMap(({ alone, sheets }) => [
        ...(alone === null ? [] : [alone]),
        ...(sheets === null ? [] : PAPERS.map((paper) => onPaper(sheets, paper))),
      ])
      .map(ADDRESS.card),
  ),
];
