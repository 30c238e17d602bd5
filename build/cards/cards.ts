import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { guideFrame } from "../guide/guide-frame.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { sheetVolumes } from "../guide/sheet-volumes.ts";
import { type KeptFiles, keptNothing } from "../model/kept-files.ts";
import type { Progress } from "../model/progress.ts";
import { computeAlways } from "../model/remember.ts";
import type { CardFiles } from "./card-file.ts";
import { type CardProblem, problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import { createRuler, parseFonts } from "./fonts.ts";
import { planLabels } from "./labels-files.ts";
import { planLakeCards, planSheets } from "./lake-cards.ts";
import { planReportSlips } from "./report-slip-files.ts";
import { planRigCards } from "./rig-card-files.ts";
import { planTripCards } from "./trip-card-files.ts";

/** Every file of cards, or one lake's own alone. */
function planCards(guide: Guide, only?: string): CardFiles[] {
  const frame = guideFrame(guide);
  const lakes = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) => planLakeCards(frame, lake));
  return only === undefined
    ? [
        ...lakes,
        ...sheetVolumes(guide.lakes).map((volume) => planSheets(frame, volume)),
        planRigCards(frame),
        ...planLabels(frame, guide),
        planReportSlips(frame),
        ...planTripCards(frame, guide),
      ]
    : lakes;
}

/** Two cards that would be one file: a lake's slug that is also the name of a sheet, a rig card or a label sheet. */
function namesTaken(planned: readonly CardFiles[]): CardProblem[] {
  const names = planned.flatMap((files) => files.names);
  const seen = new Set<string>();
  const twice = names.filter((name) => seen.size === seen.add(name).size);
  return twice.map((name) => ({
    ...problemOf(name, {
      field: "file name",
      message: `cards/${name}.pdf is made by the program`,
      hint: "give the lake’s file another name",
    }),
    code: "card-name-taken",
  }));
}

/**
 * What would not fit on the cards; inks nothing.
 * @param remember keeps what was found from one run to the next: a card is placed only where what it is made of has changed
 */
export function cardProblems(guide: Guide, remember = computeAlways): CardProblem[] {
  const planned = planCards(guide);
  let ruler: Ruler | undefined;
  const found = planned.flatMap(({ kind, names, needs, place }) =>
    remember("card problems", { kind, names, needs }, () => {
      ruler ??= createRuler(parseFonts());
      return place(ruler).problems;
    }),
  );
  return [...found, ...namesTaken(planned)];
}

const addressOf = (name: string): string => `cards/${name}.pdf`;

/** How the cards are written. */
interface CardOptions {
  /** One lake's slug: its card alone is written, the rest stays as it is. */
  readonly only?: string | undefined;
  /** Files that need not be made again. */
  readonly kept?: KeptFiles | undefined;
  /** Told of every file of cards. */
  readonly progress?: Progress;
}

/**
 * Writes `cards/SLUG.pdf` for every lake, its map's card behind its own, `cards/sheets-SHEET.pdf` with all of them
 * (`cards/sheets-1-SHEET.pdf` and on where they are too many for one file); the rig cards, and `cards/rigs-SHEET.pdf` with those of A6; the leader boards' labels: `cards/labels-SHEET.pdf` for the club and
 * its listed trips, `cards/labels-TRIP-SHEET.pdf` for each trip that needs any; `cards/trip-TRIP.pdf`, each trip's own card,
 * `cards/box-TRIP.pdf`, its fly box and tying list, and `cards/trip-TRIP-SHEET.pdf` with both; `cards/report-slip-a6.pdf` and `cards/report-slips-SHEET.pdf`, the slip to report on. SHEET is `a4` or `letter`.
 * One file is placed, written and forgotten before the next.
 * @returns what does not fit; then `outDir` holds some of the cards, and must not be published
 * @throws naming the card that cannot be made; a system error when a file cannot be written
 */
export async function writeCards(
  guide: Guide,
  outDir: string,
  { only, kept = keptNothing, progress }: CardOptions = {},
): Promise<CardProblem[]> {
  progress?.("cards", 0, 0);
  const planned = planCards(guide, only);
  const fonts = parseFonts();
  const ruler = createRuler(fonts);
  const taken = namesTaken(planned);
  const problems: CardProblem[] = [];
  const total = planned.reduce((sum, { names }) => sum + names.length, 0);
  let done = 0;
  await mkdir(path.join(outDir, "cards"), { recursive: true });
  for (const { names, kind, needs, place } of planned) {
    progress?.("cards", done, total);
    done += names.length;
    if (taken.length === 0 && kept.reuse(kind, needs, names.map(addressOf))) continue;
    const placed = place(ruler);
    problems.push(...placed.problems);
    if (problems.length + taken.length > 0) continue;
    const inked = await placed.ink(fonts);
    for (const [i, name] of names.entries())
      await writeFile(path.join(outDir, addressOf(name)), inked[i] ?? "");
  }
  progress?.("cards", done, total);
  return [...problems, ...taken];
}
