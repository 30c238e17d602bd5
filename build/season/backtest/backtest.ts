import type { Lake } from "../../model/club.ts";
import { type Memoize, unmemoized } from "../../model/memoize.ts";
import type { BacktestRow } from "../forecast.ts";
import { meanOf } from "../numbers.ts";
import { pastOf } from "../records.ts";
import { USUAL_GRID } from "../season-grid.ts";
import {
  type Case,
  casesOn,
  dayOfShare,
  type LakeWithPast,
  seasonsLeftOut,
  simulatedSeason,
} from "./leave-one-out.ts";
import { crps, quantile, shareBelow } from "./scoring.ts";
import { REPORTING_MODES, type ReportingMode } from "./simulated-reports.ts";

/** Where one stands: before any news, when the first lake is reported open, and when a share of the reporting lakes is. */
const MOMENTS = [
  { moment: "before", share: undefined },
  { moment: "first", share: 0 },
  { moment: "25%", share: 0.25 },
  { moment: "50%", share: 0.5 },
  { moment: "75%", share: 0.75 },
] as const;

const SAID = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/** A coarser grid than a forecast uses: under 1 % in CRPS. */
const GRID = { ...USUAL_GRID, s: 81, k: 9 };

/** Of a larger club only every so many-th lake takes part, in evidence as in scores: its score is that of a club this large. */
const MOST_LAKES = 60;

export interface BacktestSettings {
  readonly modes: readonly ReportingMode[];
  /** True to fit each season to earlier ones only, not to all others. */
  readonly pastOnly: boolean;
}
const USUAL_SETTINGS: BacktestSettings = { modes: REPORTING_MODES, pastOnly: false };

const meanBy = <T>(values: readonly T[], measure: (value: T) => number): number =>
  meanOf(values.map(measure));

function rowOf(reporting: ReportingMode, moment: BacktestRow["moment"], all: readonly Case[]): BacktestRow {
  const cases = all.filter(({ reported }) => !reported);
  const score = (some: readonly Case[], which: "usual" | "shifted" | "model"): BacktestRow["baseline"] => ({
    mae: meanBy(some, (one) => Math.abs(quantile(one[which], 0.5) - one.observed)),
    crps: meanBy(some, (one) => crps(one[which], one.observed)),
  });
  const came = (said: number): number =>
    meanBy(cases, ({ model, observed }) => shareBelow(model, observed, said));
  const opened = all.filter(({ reported }) => reported);
  return {
    moment,
    reporting,
    n: cases.length,
    seasons: new Set(cases.map(({ season }) => season)).size,
    baseline: score(cases, "usual"),
    shifted: score(cases, "shifted"),
    model: { ...score(cases, "model"), cover50: came(0.75) - came(0.25), cover80: came(0.9) - came(0.1) },
    opening: opened.length === 0 ? null : { n: opened.length, ...score(opened, "model") },
    calibration: SAID.map((said) => ({ said, came: came(said) })),
  };
}

/**
 * How well the model would have called past seasons: each season is left out in turn, the model fitted to all others, and every lake not
 * yet reported open is forecast at a few moments of it, from what was known then.
 * @param season the season in progress, which is not scored
 * @returns `null` when no season can be scored: it takes 6 lakes with 3 other seasons each
 */
export function backtest(
  club: readonly Lake[],
  season?: number,
  memoize: Memoize = unmemoized,
  settings: BacktestSettings = USUAL_SETTINGS,
): BacktestRow[] | null {
  const every = Math.ceil(club.length / MOST_LAKES);
  const some = club.filter((_, place) => place % every === 0);
  const lakes = some.map((lake) => ({ ...pastOf(lake), slug: lake.slug }));
  return memoize("backtest", { lakes, season: season ?? null, settings }, scoreSeasons);
}

interface PastSeasons {
  readonly lakes: readonly LakeWithPast[];
  /** Not scored. */
  readonly season: number | null;
  readonly settings: BacktestSettings;
}

function scoreSeasons({ lakes, season, settings: { modes, pastOnly } }: PastSeasons): BacktestRow[] | null {
  const rows = modes.flatMap((mode) =>
    MOMENTS.filter(({ share }) => share !== undefined || mode === "perfect").map(({ moment, share }) => ({
      mode,
      moment,
      share,
      cases: [] as Case[],
    })),
  );
  for (const leftOut of seasonsLeftOut(lakes, season, pastOnly))
    for (const mode of modes) {
      const simulated = simulatedSeason(leftOut, mode);
      for (const { share, cases } of rows.filter((row) => row.mode === mode)) {
        const today = share === undefined ? undefined : dayOfShare(simulated.values(), share);
        if (share === undefined || today !== undefined)
          cases.push(...casesOn(leftOut, simulated, today, GRID));
      }
    }
  const scored = rows
    .filter(({ cases }) => cases.some(({ reported }) => !reported))
    .map(({ mode, moment, cases }) => rowOf(mode, moment, cases));
  return scored.length === 0 ? null : scored;
}
