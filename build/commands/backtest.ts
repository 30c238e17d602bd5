import { loadClub } from "../input/load-club.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { backtest } from "../season/backtest/backtest.ts";
import { scoreClearDays } from "../season/backtest/clear-days.ts";
import { REPORTING_MODES, type ReportingMode } from "../season/backtest/simulated-reports.ts";
import type { BacktestRow, ClearDayScore } from "../season/forecast.ts";
import { evidenceOfClub } from "../season/season-evidence.ts";
import { type Effects, EXIT, type Exit } from "./effects.ts";

const HEADINGS = [
  "moment",
  "n",
  "seasons",
  "usual MAE",
  "usual CRPS",
  "shifted MAE",
  "shifted CRPS",
  "model MAE",
  "model CRPS",
  "50 % held",
  "80 % held",
  "opened CRPS",
];

/** How the openings of past seasons are reported. */
const REPORTING_TEXT: Readonly<Record<ReportingMode, string>> = {
  perfect: "perfect: every opening is known on its day, and every other lake was seen iced that day",
  dates4:
    "dates4: openings are known to within four days, looks at ice are up to a week old, 3 lakes in 10 are silent",
  delay4: "delay4: openings are reported four days late on average, looks as above, 3 lakes in 10 are silent",
  offonly: "offonly: openings are reported four days late on average, and nothing else",
};

const cellsOf = ({ moment, n, seasons, baseline, shifted, model, opening }: BacktestRow): string[] => [
  moment,
  String(n),
  String(seasons),
  ...[baseline, shifted, model].flatMap(({ mae, crps }) => [mae.toFixed(2), crps.toFixed(2)]),
  model.cover50.toFixed(2),
  model.cover80.toFixed(2),
  opening === null ? "-" : opening.crps.toFixed(2),
];

function tableText(rows: readonly BacktestRow[]): string[] {
  const cells = rows.map(cellsOf);
  const widths = HEADINGS.map((heading, i) =>
    Math.max(heading.length, ...cells.map((row) => row[i]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    row.map((cell, i) => cell.padStart(widths[i] ?? 0)).join("  ");
  return [
    "Days. Moments: share of the reporting lakes reported open. Scored: lakes not reported open; “opened”: the day of those that were.",
    "Usual: each lake's own mean and spread; shifted: moved as the lakes reported open were early or late.",
    ...REPORTING_MODES.flatMap((mode) => {
      const of = rows.flatMap((row, i) => (row.reporting === mode ? [cells[i] ?? []] : []));
      return of.length === 0 ? [] : ["", REPORTING_TEXT[mode], line(HEADINGS), ...of.map(line)];
    }),
  ];
}

const clearDaysText = ({ n, seasons, mae, cover50, cover80 }: ClearDayScore): string =>
  `\nEnd of turnover, called on the day of ice-off from earlier springs: ${n} records of ${seasons} springs, MAE ${mae.toFixed(2)} days, 50 % held ${cover50.toFixed(2)}, 80 % held ${cover80.toFixed(2)}`;

/**
 * How well the season model would have called this club's past seasons, beside each lake's own past mean.
 * @param options.pastOnly true to forecast each season from earlier ones alone
 */
export async function backtestCommand(
  dataDir: string,
  { format, pastOnly }: { readonly format: "text" | "json"; readonly pastOnly: boolean },
  effects: Effects,
): Promise<Exit> {
  const { club, problems } = await loadClub(dataDir);
  if (club === undefined) {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    return EXIT.badData;
  }
  const rows = backtest(club.lakes, club.season, undefined, { modes: REPORTING_MODES, pastOnly }) ?? [];
  if (format === "json") effects.say(JSON.stringify(rows, null, 2));
  else if (rows.length === 0)
    effects.say(
      "Too few seasons to score: it takes seasons with six lakes or more, and three other records a lake.",
    );
  else for (const line of tableText(rows)) effects.say(line);
  const clearDays = scoreClearDays(evidenceOfClub(club));
  if (format === "text" && clearDays !== null) effects.say(clearDaysText(clearDays));
  return EXIT.done;
}
