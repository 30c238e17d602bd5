import type { Hemisphere } from "../model/calendar.ts";
import { type Fit, fitPastSeasons } from "./fit.ts";
import type { Covariate, FitInput, PastRecord } from "./fit-input.ts";
import { type DaySpan, evidenceOf, type LakeEvidence } from "./lake-evidence.ts";
import { dayChances, type LakeLaw, lawOf, spanOf } from "./lake-law.ts";
import { meanOf } from "./numbers.ts";
import { type Spring, springOfLake } from "./phases.ts";
import { type IceOffDays, iceOffBySeason, type PastLake } from "./records.ts";
import type { SeasonEvidence, SeasonLake } from "./season-evidence.ts";
import { priorGrid } from "./season-grid.ts";
import { type SeasonPosterior, updateSeason } from "./season-posterior.ts";
import type { Statement } from "./statements.ts";
import { type TurnoverCase, turnoverCases } from "./turnover-times.ts";

/**
 * Days of ice-off by place: 4 days per degree of latitude and per 400 ft.
 * @source A. D. Hopkins (1918), Periodical events and natural law as guides to agricultural research and practice
 */
const LATITUDE = { daysPerUnit: 4, sd: 1.5 };
const ELEVATION_100_M = { daysPerUnit: 3.3, sd: 1 };

/**
 * Where a club without one record starts: day 110 of the year (20 April) at 46 degrees and 490 m, the middle of the open records of
 * northern Wisconsin (NSIDC G01377), carried elsewhere by latitude and elevation, give or take 25 days. A guess, and a wide one.
 */
const START = { day: 110, latitude_deg: 46, elevation_m: 490, sd: 25 };

function covariatesOf(lakes: readonly PastLake[]): Covariate[] {
  const elevations = lakes.flatMap(({ elevation_m }) =>
    elevation_m === undefined ? [] : [elevation_m / 100],
  );
  return [
    { ...LATITUDE, values: lakes.map(({ position }) => Math.abs(position.lat)) },
    ...(elevations.length === lakes.length ? [{ ...ELEVATION_100_M, values: elevations }] : []),
  ];
}

function levelWithoutRecords(lakes: readonly PastLake[]): FitInput["levelWithoutRecords"] {
  const latitude = meanOf(lakes.map(({ position }) => Math.abs(position.lat)));
  const elevation_m = meanOf(lakes.map((lake) => lake.elevation_m ?? START.elevation_m));
  return {
    day:
      START.day +
      LATITUDE.daysPerUnit * (latitude - START.latitude_deg) +
      (ELEVATION_100_M.daysPerUnit * (elevation_m - START.elevation_m)) / 100,
    sd: START.sd,
  };
}

/** Each lake's region as a number from 0; lakes without one share a region of their own. */
export function regionsOf(lakes: readonly PastLake[]): readonly number[] {
  const names = [...new Set(lakes.map(({ region }) => region ?? ""))];
  return lakes.map(({ region }) => names.indexOf(region ?? ""));
}

/** What the fit needs of a club's records. */
export function fitInputOf(
  lakes: readonly PastLake[],
  past: readonly ReadonlyMap<number, IceOffDays>[],
  regions: readonly number[],
): FitInput {
  const seasons = new Map<string, number>();
  const records = past.flatMap((bySeason, lake): PastRecord[] =>
    [...bySeason].map(([season, days]) => {
      const key = `${regions[lake]} ${season}`;
      const index = seasons.get(key) ?? seasons.size;
      seasons.set(key, index);
      return { lake, season: index, ...days };
    }),
  );
  return {
    regions,
    covariates: covariatesOf(lakes),
    seasons: seasons.size,
    records,
    levelWithoutRecords: levelWithoutRecords(lakes),
  };
}

/** One lake with all that is known of it. */
export interface LakeSeason {
  readonly lake: SeasonLake;
  readonly law: LakeLaw;
  readonly past: ReadonlyMap<number, IceOffDays>;
  readonly cases: readonly TurnoverCase[];
  readonly statements: readonly Statement[];
  readonly evidence: LakeEvidence | undefined;
  readonly span: DaySpan;
  readonly spring: Spring;
}

/** The lakes that share one spring, and that spring. */
export interface RegionSeason {
  readonly lakes: readonly LakeSeason[];
  readonly posterior: SeasonPosterior;
}

function regionSeason(
  fit: Fit,
  region: number,
  members: readonly number[],
  lakes: readonly Omit<LakeSeason, "law" | "evidence" | "span" | "spring">[],
): RegionSeason {
  const grid = priorGrid(fit, region);
  const known = members.flatMap((place) => {
    const lake = lakes[place];
    if (lake === undefined) return [];
    const law = lawOf(fit, place);
    const span = spanOf(law, grid);
    const evidence = lake.statements.length === 0 ? undefined : evidenceOf(lake.statements, lake.cases, span);
    return [{ ...lake, law, span, evidence }];
  });
  const posterior = updateSeason(fit, region, known);
  return {
    posterior,
    lakes: known.map((lake, place) => ({
      ...lake,
      spring: springOfLake(
        dayChances(lake.law, posterior.grid, posterior.without(place), lake.span),
        lake.span,
        lake.cases,
        lake.statements,
      ),
    })),
  };
}

/** Fits all past seasons and updates this one, region by region, from what was known on the as-of date. */
export function regionSeasons(
  club: Pick<SeasonEvidence, "season" | "asOf" | "lakes">,
  hemisphere: Hemisphere,
  statements: ReadonlyMap<string, readonly Statement[]>,
): readonly RegionSeason[] {
  if (club.lakes.length === 0) return [];
  const regions = regionsOf(club.lakes);
  const past = club.lakes.map((lake) => {
    const bySeason = new Map(iceOffBySeason(lake, hemisphere, club.asOf));
    bySeason.delete(club.season);
    return bySeason;
  });
  const fit = fitPastSeasons(fitInputOf(club.lakes, past, regions));
  const lakes = club.lakes.map((lake, place) => {
    const bySeason = past[place] ?? new Map<number, IceOffDays>();
    return {
      lake,
      past: bySeason,
      cases: turnoverCases(lake, bySeason, club.season, club.asOf, hemisphere),
      statements: statements.get(lake.slug) ?? [],
    };
  });
  return [...new Set(regions)].map((region) =>
    regionSeason(
      fit,
      region,
      regions.flatMap((own, place) => (own === region ? [place] : [])),
      lakes,
    ),
  );
}
