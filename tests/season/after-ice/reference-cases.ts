import type { Looks } from "../../../build/model/club.ts";
import type { Phase } from "../../../build/model/phase.ts";
import {
  factorsOfReadings,
  type LakeClocks,
  lakeClocks,
} from "../../../build/season/after-ice/lake-clocks.ts";
import type { LakeTraits } from "../../../build/season/after-ice/lake-traits.ts";
import type { PastSpring, ThisSpring } from "../../../build/season/after-ice/own-records.ts";
import type { Reading } from "../../../build/season/after-ice/readings.ts";
import { type IceOffLaw, seasonStates, statesAfterIceOff } from "../../../build/season/after-ice/states.ts";
import { t4Cdf } from "../../../build/season/student-t.ts";

/** A lake as the reference cases write it. */
export interface CaseLake {
  readonly lat: number;
  readonly elevation_m?: number;
  readonly area_ha?: number;
  readonly mean_depth_m?: number;
  readonly max_depth_m?: number;
  readonly usual: number;
  readonly usual_variance?: number;
  readonly layers?: string;
  readonly turns_over?: boolean;
  readonly fedBy?: string;
  readonly onset?: readonly number[];
  readonly clear_rule?: number;
}

export interface CaseReading {
  readonly t?: number;
  readonly surface?: number;
  readonly deep?: number;
  readonly depth?: string;
  readonly z?: number;
  readonly secchi?: number;
  readonly looks?: string;
  readonly phase?: string;
  readonly ice?: string;
}

export interface CaseOwn {
  readonly onset?: readonly number[];
  readonly clear?: readonly number[];
  readonly last_good?: readonly (readonly number[])[];
  readonly turnover_now?: readonly (number | null)[];
  readonly last_good_now?: number;
}

export type CaseLaw = readonly (string | number)[];

export const traitsOf = (lake: CaseLake): LakeTraits => ({
  latitude_deg: lake.lat,
  usualIceOff: lake.usual,
  turnsOver: lake.turns_over ?? true,
  fedBySnow: lake.fedBy === "snow",
  onset: { from: lake.onset?.[0] ?? 8, to: lake.onset?.[1] ?? 15 },
  ...(lake.elevation_m === undefined ? {} : { elevation_m: lake.elevation_m }),
  ...(lake.area_ha === undefined ? {} : { area_ha: lake.area_ha }),
  ...(lake.mean_depth_m === undefined ? {} : { meanDepth_m: lake.mean_depth_m }),
  ...(lake.max_depth_m === undefined ? {} : { maxDepth_m: lake.max_depth_m }),
  ...(lake.usual_variance === undefined ? {} : { usualIceOffVariance: lake.usual_variance }),
  ...(lake.layers === undefined ? {} : { stratifies: lake.layers === "yes" }),
  ...(lake.clear_rule === undefined ? {} : { clearRule: lake.clear_rule }),
});

const PHASES: Readonly<Record<string, Phase>> = {
  "ice-off": "ice-off",
  turnover: "turnover",
  "post-turnover": "post-turnover",
  later: "later-weeks",
};

export function readingOf(read: CaseReading): Reading {
  const { t = 0, surface, deep, depth, z, secchi, looks, phase } = read;
  const water = deep ?? (depth as "same" | "colder" | undefined);
  const named = phase === undefined ? undefined : PHASES[phase];
  return {
    day: t,
    ...(surface === undefined ? {} : { surface_C: surface }),
    ...(water === undefined ? {} : { deep: { water, ...(z === undefined ? {} : { depth_m: z }) } }),
    ...(secchi === undefined ? {} : { secchiRatio: secchi }),
    ...(looks === undefined ? {} : { looks: looks as Looks }),
    ...(named === undefined ? {} : { phase: named }),
  };
}

export const readingsOf = (reads: readonly CaseReading[] = []): readonly Reading[] =>
  reads.filter(({ ice }) => ice === undefined).map(readingOf);

/** Chance of a report of ice were `x` the ice-off day, as the reference cases take it. */
function iceFactor({ ice, t = 0 }: CaseReading, x: number): number {
  if (ice === "on") return x > t ? 0.98 : Math.max(1e-5, 0.02 * Math.exp(-(t - x) / 2));
  if (ice === "part") return t <= x && x <= t + 7 ? 0.98 : 0.02;
  if (ice === "off") return x <= t ? 0.98 : 0.02;
  return 1;
}

/** The law of a case with its reports of ice. */
export function lawOf([kind, middle, scale = 1]: CaseLaw, reads: readonly CaseReading[] = []): IceOffLaw {
  const m = Number(middle);
  const s = Number(scale);
  const [from, days] = kind === "known" ? [m, 1] : [m - 30, 61];
  const chances = Float64Array.from({ length: days }, (_, i) => {
    const x = from + i;
    return kind === "known" ? 1 : t4Cdf((x + 0.5 - m) / s) - t4Cdf((x - 0.5 - m) / s);
  });
  const evidence = chances.map((_, i) =>
    reads.reduce((chance, read) => chance * iceFactor(read, from + i), 1),
  );
  return { from, chances, evidence };
}

export function clocksOf(lake: CaseLake, own: CaseOwn = {}): LakeClocks {
  const past: PastSpring = {
    onset: own.onset ?? [],
    clear: own.clear ?? [],
    lastGood: (own.last_good ?? []).map(([iceOff = 0, last = 0]) => ({ iceOff, last })),
  };
  const [onset, lastTurnover] = own.turnover_now ?? [];
  const now: ThisSpring = {
    ...(onset == null ? {} : { onset }),
    ...(lastTurnover == null ? {} : { lastTurnover }),
    ...(own.last_good_now === undefined ? {} : { lastGood: own.last_good_now }),
  };
  return lakeClocks(traitsOf(lake), past, now);
}

export function statesOfCase(
  lake: CaseLake,
  law: CaseLaw,
  reads: readonly CaseReading[] = [],
  own: CaseOwn = {},
) {
  const clocks = clocksOf(lake, own);
  return seasonStates(
    lawOf(law, reads),
    statesAfterIceOff(clocks, factorsOfReadings(clocks, readingsOf(reads))),
  );
}
