import { guideFrame } from "../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { sheetVolumes } from "../guide/sheet-volumes.ts";
import { type LastOutputs, noOutputs } from "../incremental/outputs.ts";
import { runInThreads } from "../incremental/threads.ts";
import { ADDRESS } from "../model/addresses.ts";
import { type Memoize, unmemoized } from "../model/memoize.ts";
import type { Progress } from "../model/progress.ts";
import { programModule } from "../program/program-files.ts";
import type { CardFiles } from "./card-kind.ts";
import { type CardProblem, overflowProblem } from "./card-kind.ts";
import { openCardWriter, placeCards } from "./card-writer.ts";
import { planLabels } from "./labels/labels.ts";
import { planLakeCards, planSheets } from "./lake/lake-cards.ts";
import { planLaunchCard } from "./launch-card.ts";
import type { Ruler } from "./layout/column.ts";
import { createRuler, parseFonts } from "./pdf/document.ts";
import { planReportSlips } from "./report-slip.ts";
import { planRigCards } from "./rig/rig-cards.ts";
import { planTripCards } from "./trip/trip-cards.ts";

/** Every file of cards, or one lake's own alone, in batches to be made one after another: a volume's lakes, then its sheets. */
function planCards(guide: Guide, only?: string): CardFiles[][] {
  const frame = guideFrame(guide);
  const ofLake = (lake: GuideLake): CardFiles[] => [planLakeCards(frame, lake), planLaunchCard(frame, lake)];
  if (only !== undefined) return [guide.lakes.filter(({ slug }) => slug === only).flatMap(ofLake)];
  return [
    ...sheetVolumes(guide.lakes).map((volume) => [
      ...volume.lakes.flatMap(ofLake),
      planSheets(frame, volume),
    ]),
    [
      ...guide.lakesWithoutForecast.map((lake) => planLaunchCard(frame, lake)),
      planRigCards(frame),
      ...planLabels(frame, guide),
      planReportSlips(frame),
      ...planTripCards(frame, guide),
    ],
  ];
}

/** Two cards that would be one file: a lake's slug that is also the name of a sheet, a rig card or a label sheet. */
function duplicateNames(planned: readonly CardFiles[]): CardProblem[] {
  const names = planned.flatMap((files) => files.names);
  const seen = new Set<string>();
  const twice = names.filter((name) => seen.size === seen.add(name).size);
  return twice.map((name) => ({
    ...overflowProblem(name, {
      field: "file name",
      message: `${ADDRESS.card(name)} is made by the program`,
      hint: "give the lake’s file another name",
    }),
    code: "card-name-taken",
  }));
}

/**
 * What would not fit on the cards; inks nothing.
 * @param memoize keeps problems from one run to the next: a card is placed only where its inputs have changed
 */
export function cardProblems(guide: Guide, memoize: Memoize = unmemoized): CardProblem[] {
  const planned = planCards(guide).flat();
  let ruler: Ruler | undefined;
  const found = planned.flatMap((files) =>
    memoize("card problems", files, () => {
      ruler ??= createRuler(parseFonts());
      return placeCards(files, { ruler, lakes: [] }).problems;
    }),
  );
  return [...found, ...duplicateNames(planned)];
}

/** How the cards are written. */
interface CardOptions {
  /** One lake's slug: its card alone is written, the rest stays as it is. */
  readonly only?: string | undefined;
  /** Files that need not be made again. */
  readonly kept?: LastOutputs | undefined;
  /** Told of every file of cards. */
  readonly progress?: Progress;
}

/** Fewer are made sooner than threads are begun. */
const BATCHES_FOR_THREADS = 3;

/** Makes batches of files one after another, or many of them in threads. */
async function makeBatches(
  batches: readonly (readonly CardFiles[])[],
  outDir: string,
  made: (files: number) => void,
): Promise<readonly CardProblem[]> {
  if (batches.length >= BATCHES_FOR_THREADS) {
    const problems: (readonly CardProblem[])[] = [];
    await runInThreads<readonly CardFiles[], number, readonly CardProblem[]>({
      script: programModule("build/cards/card-thread.ts"),
      data: { outDir },
      jobs: batches,
      onProgress: made,
      onResult: (found, batch) => {
        problems[batch] = found;
      },
    });
    return problems.flat();
  }
  return batches.length === 0 ? [] : openCardWriter(outDir)(batches.flat(), made);
}

/**
 * Writes what goes under `cards/`; SHEET is `a4` or `letter`:
 * - `SLUG.pdf` for every lake, the cards of its map and its search behind its own; `sheets-SHEET.pdf` with all of them,
 *   `sheets-1-SHEET.pdf` and on where they are too many for one file
 * - `SLUG-launch.pdf` for every lake, also one without a forecast: what its water says at the launch
 * - the rig cards, and `rigs-SHEET.pdf` with those of A6
 * - the leader boards' labels: `labels-SHEET.pdf` for the club and its listed trips, `labels-TRIP-SHEET.pdf` for each
 *   trip that needs any
 * - `trip-TRIP.pdf`, each trip's own card, `box-TRIP.pdf`, its fly box and tying list, `trip-TRIP-SHEET.pdf` with both
 * - `report-slip-a6.pdf` and `report-slips-SHEET.pdf`, the slip to report on
 *
 * @returns what does not fit; then `outDir` holds some of the cards, and must not be published
 * @throws naming the card that cannot be made; a system error when a file cannot be written
 */
export async function writeCards(
  guide: Guide,
  outDir: string,
  { only, kept = noOutputs, progress }: CardOptions = {},
): Promise<CardProblem[]> {
  progress?.("cards", 0, 0);
  const batches = planCards(guide, only);
  const all = batches.flat();
  const taken = duplicateNames(all);
  const total = all.reduce((sum, { names }) => sum + names.length, 0);
  const toMake = batches
    .map((batch) =>
      batch.filter(
        ({ kind, inputs, names }) => taken.length > 0 || !kept.reuse(kind, inputs, names.map(ADDRESS.card)),
      ),
    )
    .filter((batch) => batch.length > 0);
  let done = total - toMake.flat().reduce((sum, { names }) => sum + names.length, 0);
  progress?.("cards", done, total);
  const problems = await makeBatches(toMake, outDir, (files) => {
    done += files;
    progress?.("cards", done, total);
  });
  return [...problems, ...taken];
}
