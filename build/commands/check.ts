import { type Effects, EXIT, type Exit } from "../effects.ts";
import { composeGuide } from "../guide/compose.ts";
import { loadClub } from "../load/load-club.ts";
import { loadContent } from "../load/load-content.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { problemCount } from "./guide.ts";

export interface CheckRequest {
  readonly dataDir: string;
  readonly format: "text" | "json";
  readonly version: string;
}

/** Validates the club folder, doubtful reports included, and prints every problem found. */
export async function checkCommand(
  { dataDir, format, version }: CheckRequest,
  effects: Effects,
): Promise<Exit> {
  const { club, problems } = await loadClub(dataDir);
  const all =
    club === undefined
      ? problems
      : [...problems, ...composeGuide(club, await loadContent(), { version }).problems];
  if (format === "json") effects.say(JSON.stringify(all, null, 2));
  else {
    for (const problem of all) effects.say(formatDiagnostic(problem));
    effects.say(`${dataDir}: ${problemCount(all)}`);
  }
  return all.some(({ severity }) => severity === "error") ? EXIT.badData : EXIT.done;
}
