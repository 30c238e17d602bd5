import { type Effects, EXIT, type Exit } from "../effects.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { type GuideRequest, makeGuide, RequestError } from "../pipeline.ts";
import { PublishError } from "../publish/publish.ts";

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** "2 errors, 1 warning", or "no problems". */
export function problemCount(problems: readonly Diagnostic[]): string {
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const warnings = problems.length - errors;
  const parts = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(warnings > 0 ? [counted(warnings, "warning")] : []),
  ];
  return parts.length === 0 ? "no problems" : parts.join(", ");
}

/** The main job: club folder in, site and cards out. */
export async function guideCommand(request: GuideRequest, effects: Effects): Promise<Exit> {
  try {
    const { guide, problems } = await makeGuide(request);
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    if (guide === undefined) {
      effects.warn(`${problemCount(problems)}: nothing written, ${request.outDir} is as it was.`);
      return EXIT.badData;
    }
    effects.say(
      `${guide.club.name}, as of ${guide.asOf}: ${counted(guide.lakes.length, "lake")} in ${request.outDir}`,
    );
    effects.say(`Pages: open ${request.outDir}/index.html`);
    effects.say(`Cards: print ${request.outDir}/cards/sheets-a4.pdf or sheets-letter.pdf`);
    return EXIT.done;
  } catch (error) {
    if (!(error instanceof PublishError || error instanceof RequestError)) throw error;
    effects.warn(error.message);
    return error instanceof RequestError ? EXIT.badUsage : EXIT.cannotWrite;
  }
}
