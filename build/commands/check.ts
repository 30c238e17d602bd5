import { openCache } from "../incremental/cache.ts";
import { upToDateProblems } from "../incremental/up-to-date.ts";
import { type Diagnostic, formatDiagnostic } from "../model/diagnostic.ts";
import { type Effects, EXIT, type Exit, problemCount } from "./effects.ts";
import { refusedPlace } from "./refused-places.ts";

export interface CheckRequest {
  readonly dataDir: string;
  readonly format: "text" | "json";
  readonly version: string;
  /** Where results are kept from one run to the next; false for nowhere, undefined for the operating system's cache folder. */
  readonly cache?: string | false;
}

/** Looks for problems only where the folder is another than at the last check: what finds them takes long to load, too. */
async function problemsOf({ dataDir, version, cache: wanted }: CheckRequest): Promise<readonly Diagnostic[]> {
  const cache = openCache(wanted);
  try {
    return await upToDateProblems(dataDir, version, cache, async () => {
      const { findProblems } = await import("./find-problems.ts");
      return findProblems(dataDir, version, cache.memoize);
    });
  } finally {
    cache.close();
  }
}

/** Validates the club folder, doubtful reports and overfull cards included, and prints every problem found. */
export async function checkCommand(request: CheckRequest, effects: Effects): Promise<Exit> {
  const refused = await refusedPlace(request);
  if (refused !== undefined) {
    effects.warn(refused);
    return EXIT.badUsage;
  }
  const problems = await problemsOf(request);
  if (request.format === "json") effects.say(JSON.stringify(problems, null, 2));
  else {
    for (const problem of problems) effects.say(formatDiagnostic(problem));
    effects.say(`${request.dataDir}: ${problemCount(problems)}`);
  }
  return problems.some(({ severity }) => severity === "error") ? EXIT.badData : EXIT.done;
}
