import { cardProblems } from "../cards/cards.ts";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import { composeGuide } from "../guide/compose.ts";
import { loadClub } from "../load/load-club.ts";
import { loadContent } from "../load/load-content.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import { problemCount } from "./guide.ts";

export interface CheckRequest {
  readonly dataDir: string;
  readonly format: "text" | "json";
  readonly version: string;
}

async function problemsOf({ dataDir, version }: CheckRequest): Promise<readonly Diagnostic[]> {
  const { club, problems } = await loadClub(dataDir);
  if (club === undefined) return problems;
  const { guide, problems: doubts } = composeGuide(club, await loadContent(), { version });
  return [...problems, ...doubts, ...(guide === undefined ? [] : cardProblems(guide))];
}

/** Validates the club folder, doubtful reports and overfull cards included, and prints every problem found. */
export async function checkCommand(request: CheckRequest, effects: Effects): Promise<Exit> {
  const problems = await problemsOf(request);
  if (request.format === "json") effects.say(JSON.stringify(problems, null, 2));
  else {
    for (const problem of problems) effects.say(formatDiagnostic(problem));
    effects.say(`${request.dataDir}: ${problemCount(problems)}`);
  }
  return problems.some(({ severity }) => severity === "error") ? EXIT.badData : EXIT.done;
}
