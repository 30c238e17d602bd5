import { loadClub } from "../input/load-club.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { backtest } from "../season/backtest.ts";
import type { BacktestRow } from "../season/forecast.ts";
import { type Effects, EXIT, type Exit } from "./effects.ts";

const HEADINGS = [
  "moment",
  "n",
  "usual MAE",
  "usual CRPS",
  "model MAE",
  "model CRPS",
  "50 % held",
  "80 % held",
];

function tableText(rows: readonly BacktestRow[]): string[] {
  const cells = rows.map(({ moment, n, baseline, model }) => [
    moment,
    String(n),
    ...[baseline.mae, baseline.crps, model.mae, model.crps, model.cover50, model.cover80].map((x) =>
      x.toFixed(2),
    ),
  ]);
  const widths = HEADINGS.map((heading, i) =>
    Math.max(heading.length, ...cells.map((row) => row[i]?.length ?? 0)),
  );
  return [HEADINGS, ...cells].map((row) => row.map((cell, i) => cell.padStart(widths[i] ?? 0)).join("  "));
}

/** How well the season model would have called this club's past seasons, beside each lake's own past mean. */
export async function backtestCommand(
  dataDir: string,
  format: "text" | "json",
  effects: Effects,
): Promise<Exit> {
  const { club, problems } = await loadClub(dataDir);
  if (club === undefined) {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    return EXIT.badData;
  }
  const rows = backtest(club.lakes, club.season) ?? [];
  if (format === "json") effects.say(JSON.stringify(rows, null, 2));
  else if (rows.length === 0)
    effects.say(
      "Too few seasons to score: it takes seasons with six lakes or more, and three other records a lake.",
    );
  else for (const line of tableText(rows)) effects.say(line);
  return EXIT.done;
}
