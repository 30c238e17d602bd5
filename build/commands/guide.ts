import { LAKES_PER_VOLUME } from "../guide/sheet-volumes.ts";
import type { Cache } from "../incremental/cache.ts";
import { type GuideRequest, type GuideSummary, upToDateGuide } from "../incremental/up-to-date.ts";
import { formatDiagnostic, printable } from "../model/diagnostic.ts";
import { PublishError, recoverOutput } from "../publish/publish.ts";
import { counted, type Effects, EXIT, type Exit, printInternalError, problemCount } from "./effects.ts";
import { durationText } from "./progress-line.ts";
import { refusedPlace } from "./refused-places.ts";

const sheetsToPrint = (lakes: number): string =>
  lakes > LAKES_PER_VOLUME
    ? "sheets-1-a4.pdf or sheets-1-letter.pdf and on"
    : "sheets-a4.pdf or sheets-letter.pdf";

/** The guide stands in the output folder: packs it where that is asked for, and says what was made, where, and what to do with it. */
async function printResult(
  { club, asOf, lakes, pages, cards }: GuideSummary,
  how: () => string,
  { outDir, only }: GuideRequest,
  effects: Effects,
  zipFile: string | undefined,
): Promise<Exit> {
  if (zipFile !== undefined)
    try {
      await (await import("../site/zip.ts")).zipGuide({ asOf }, outDir, zipFile);
    } catch (error) {
      effects.warn(`cannot write ${zipFile}: ${error instanceof Error ? error.message : error}`);
      return EXIT.cannotWrite;
    }
  const parts = [
    only === undefined ? counted(lakes, "lake") : `the lake ${only}`,
    counted(pages, "page"),
    counted(cards, "card file"),
  ];
  effects.say(`${printable(club)}, as of ${asOf}: ${parts.join(", ")} in ${outDir} (${how()})`);
  effects.say(`Open:  ${outDir}/index.html`);
  const sheets = only === undefined ? sheetsToPrint(lakes) : `${only}.pdf`;
  effects.say(`Print: ${outDir}/cards/${sheets}, at 100 %, two-sided`);
  effects.say(`Share: ${zipFile ?? `copy the folder ${outDir} to any web space or stick`}`);
  return EXIT.done;
}

/**
 * The main job: club folder in, site and cards out. Whether there is anything to do is looked up before the libraries that
 * do it are loaded.
 * @param zipFile where the guide is packed into one file as well, to hand on
 * @param cache of a process that builds more than once
 */
export async function guideCommand(
  request: GuideRequest,
  effects: Effects,
  zipFile?: string,
  cache?: Cache,
): Promise<Exit> {
  const started_ms = effects.now_ms();
  const refused = await refusedPlace(request, zipFile);
  if (refused !== undefined) {
    effects.warn(refused);
    return EXIT.badUsage;
  }
  await recoverOutput(request.outDir);
  const upToDate = upToDateGuide(request);
  if (upToDate !== undefined) {
    for (const problem of upToDate.problems) effects.warn(formatDiagnostic(problem));
    return printResult(upToDate, () => "nothing changed, nothing built", request, effects, zipFile);
  }
  const { makeGuide, RequestError } = await import("../pipeline.ts");
  try {
    const { guide, made, problems } = await makeGuide(request, effects.progress, cache);
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    if (guide === undefined) {
      effects.warn(`${problemCount(problems)}: nothing written, ${request.outDir} is as it was.`);
      return EXIT.badData;
    }
    const { club, asOf, lakes } = guide;
    const summary = { club: club.name, asOf, lakes: lakes.length, ...made, problems };
    const how = () => durationText(effects.now_ms() - started_ms);
    return await printResult(summary, how, request, effects, zipFile);
  } catch (error) {
    if (error instanceof PublishError || error instanceof RequestError) effects.warn(error.message);
    else printInternalError(error, request.outDir, effects);
    return error instanceof RequestError ? EXIT.badUsage : EXIT.cannotWrite;
  }
}
