import { describe, expect, test } from "vitest";
import { CHANGES, chanceBy } from "../../../build/season/after-ice/states.ts";
import { seeded } from "../../seeded-random.ts";
import { normal, placeByWeight, studentT } from "../draws.ts";
import { type CaseLake, type CaseOwn, type CaseReading, statesOfCase } from "./reference-cases.ts";

/*
 * The story of a lake after its ice told by drawing, not by laying out chances: ice-off, the year's warmth, every threshold and every
 * wait are drawn, and the days of change are read off one temperature curve a draw. Written from the model's description alone; nothing
 * is shared with the program but the lakes.
 */

const DRAWS = 20_000;
const LAST = 150;
const YEAR = (2 * Math.PI) / 365.25;

interface Story {
  readonly name: string;
  readonly lake: CaseLake;
  readonly middle: number;
  readonly scale: number;
  readonly own?: CaseOwn;
  readonly reads?: readonly CaseReading[];
}

const STORIES: readonly Story[] = [
  {
    name: "2,700 m",
    lake: { lat: 41.2, elevation_m: 2700, area_ha: 20, max_depth_m: 12, usual: 145 },
    middle: 145,
    scale: 4,
  },
  {
    name: "reservoir",
    lake: { lat: 41.2, elevation_m: 1480, area_ha: 300, max_depth_m: 18, usual: 84 },
    middle: 90,
    scale: 6,
  },
  {
    name: "300 m",
    lake: { lat: 43, elevation_m: 300, area_ha: 50, max_depth_m: 12, usual: 100 },
    middle: 96,
    scale: 3,
  },
  {
    name: "1,100 m, 50.7 N",
    lake: { lat: 50.7, elevation_m: 1100, area_ha: 40, max_depth_m: 15, usual: 118 },
    middle: 118,
    scale: 5,
  },
  {
    name: "wind-stirred",
    lake: { lat: 43.05, elevation_m: 258, area_ha: 140, max_depth_m: 6.7, mean_depth_m: 2.7, usual: 90 },
    middle: 92,
    scale: 4,
  },
  {
    name: "fed by snow",
    lake: { lat: 40.3, elevation_m: 3100, area_ha: 5, max_depth_m: 5, usual: 158, fedBy: "snow" },
    middle: 165,
    scale: 5,
  },
  {
    name: "south",
    lake: { lat: -42.8, elevation_m: 1050, area_ha: 12, max_depth_m: 14, usual: 104 },
    middle: 104,
    scale: 4,
  },
  {
    name: "does not turn over",
    lake: { lat: 44, elevation_m: 700, area_ha: 9, max_depth_m: 3, usual: 110, turns_over: false },
    middle: 108,
    scale: 4,
  },
  {
    name: "own rule and records",
    lake: { lat: 47, elevation_m: 500, usual: 115, onset: [5, 10], clear_rule: 20 },
    middle: 115,
    scale: 3,
    own: { onset: [7, 12, 12], clear: [18, 24] },
  },
  {
    name: "read once",
    lake: { lat: 45, elevation_m: 1900, area_ha: 60, max_depth_m: 20, usual: 128 },
    middle: 128,
    scale: 3,
    reads: [{ t: 152, surface: 9.5, secchi: 0.7 }],
  },
];

const logit = (u: number): number => Math.log(u / (1 - u));
const K = Math.sqrt(3) / Math.PI;

/** Numbers of `count` equal parts of 0 to 1, one of each, in a drawn order: a draw that leaves no part out. */
function evenly(random: () => number): Float64Array {
  const values = Float64Array.from({ length: DRAWS }, (_, i) => (i + random()) / DRAWS);
  for (let i = DRAWS - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    const kept = values[i] ?? 0;
    values[i] = values[j] ?? 0;
    values[j] = kept;
  }
  return values;
}

function placeOf(lake: CaseLake): { mean: number; variance: number } {
  const lat = Math.abs(lake.lat);
  const anchor = 8.8 - 14.3 * Math.cos(YEAR * (lake.usual - 199));
  let [mean, variance] = [anchor, 2.5 ** 2];
  if (lake.elevation_m !== undefined) {
    const km = lake.elevation_m / 1000 - 0.4;
    const place = 10.1 - 0.3 * (lat - 43) - 4.3 * km;
    const unsure =
      1.44 + (1.5 * Math.max(0, Math.abs(km) - 0.15)) ** 2 + (0.15 * Math.max(0, 41 - lat, lat - 61)) ** 2;
    const sum = 1 / unsure + 1 / variance;
    [mean, variance] = [(place / unsure + anchor / variance) / sum, 1 / sum];
  }
  variance +=
    (0.05 * Math.max(0, 60 - lake.usual, lake.usual - 215)) ** 2 + (lake.area_ha === undefined ? 1 : 0);
  return lake.fedBy === "snow" ? { mean: mean - 2.5, variance: variance + 1 } : { mean, variance };
}

function simulate({ lake, middle, scale, own = {}, reads = [] }: Story): (day: number) => number[] {
  const random = seeded(20_250_625);
  const area = lake.area_ha ?? 20;
  const tau = 6.7 * (area / 20) ** 0.205;
  const zmix = 4.6 * (area / 100) ** 0.205;
  const depth = lake.mean_depth_m ?? (lake.max_depth_m ?? 0) / 2.2;
  const windy =
    lake.area_ha === undefined || depth === 0 ? 0.1 : 1 / (1 + (depth / zmix / 0.57) ** (1 / 0.3));
  const place = placeOf(lake);
  const clearDays = own.clear ?? [];
  const rule = lake.clear_rule === undefined ? 1 : 4;
  const clearMean =
    (rule * (lake.clear_rule ?? 26) + clearDays.reduce((a, b) => a + b, 0)) / (rule + clearDays.length);
  const clearSd = 7 * Math.sqrt(1 + 1 / (rule + clearDays.length));
  const [first = 8, last = 15] = lake.onset ?? [];
  const onsetWeights = Array.from({ length: 61 }, (_, day) => {
    const seen = (own.onset ?? []).filter((own) => own === day).length;
    return (day >= first && day <= last ? 8 / (last - first + 1) : 0) + seen;
  });
  const all = onsetWeights.reduce((a, b) => a + b, 0);
  const drawOnset = placeByWeight(
    onsetWeights.map((weight) => weight / all),
    random,
  );
  const uniform = {
    m: evenly(random),
    h: evenly(random),
    s: evenly(random),
    e: evenly(random),
    c: evenly(random),
    wind: evenly(random),
  };
  const clearOn = (draw: number): number =>
    Math.max(0, Math.ceil(clearMean + clearSd * K * logit(draw) - 0.5));

  const changes: number[][] = [];
  const weights: number[] = [];
  for (let i = 0; i < DRAWS; i++) {
    let ice = 99;
    while (Math.abs(ice) > 30) ice = Math.round(scale * studentT(random, 4));
    const x = middle + ice;
    const warmth = Math.sqrt(place.variance + 1.4 ** 2) * normal(random);
    const of = (values: Float64Array): number => values[i] ?? 0.5;
    const balance = (t: number): number =>
      place.mean -
      0.03 * (x - lake.usual) +
      (14.3 / Math.sqrt(1 + (YEAR * tau) ** 2)) * Math.cos(YEAR * (t - 199) - Math.atan(YEAR * tau));
    const usual = (d: number): number => balance(x + d) + (3.3 - balance(x)) * Math.exp(-d / tau);
    const surface = (d: number): number => usual(d) + warmth * (1 - Math.exp(-d / tau));
    const layersAt = 8.1 + 0.46 * Math.log(area / 20) + 1.6 * logit(of(uniform.m));
    const warmAt = 16 + K * logit(of(uniform.s));
    let [layers, warm, warmest] = [LAST, LAST, 0];
    for (let d = LAST; d >= 0; d--) {
      if (surface(d) >= layersAt) layers = d;
      if (surface(d) >= warmAt) warm = d;
      if (usual(d) >= usual(warmest) || d === LAST) warmest = d;
    }
    const height = (draw: number): number => Math.ceil(warmest + 12 * K * logit(draw) - 0.5);
    layers = Math.min(LAST, Math.max(0, Math.min(layers, height(of(uniform.h)))));
    const clear = Math.min(LAST, clearOn(of(uniform.c)));
    const stirred = of(uniform.wind) < windy;
    let [onset, settled] = [drawOnset(), stirred ? clear : Math.max(clear, layers)];
    if (lake.turns_over === false) [onset, settled] = [15, 15];
    const summer = Math.max(height(of(uniform.e)), settled + 14);
    const end = Math.max(onset, settled, Math.min(warm, summer));
    changes.push([x, x + onset, x + Math.max(onset, settled), x + end]);

    let weight = 1;
    for (const { t = 0, surface: read = 0, secchi = 1 } of reads) {
      const d = t - x;
      const bell = (y: number, mean: number, sd: number): number =>
        Math.exp(-(((y - mean) / sd) ** 2) / 2) / sd;
      if (d < 0) {
        weight *=
          0.02 * ((0.98 * bell(read, 2, 1.5)) / Math.sqrt(2 * Math.PI) + 0.0008) * 3 * Math.sqrt(2 * Math.PI);
        continue;
      }
      const limited = (p: number): number => Math.min(0.85, Math.max(0.15, p));
      const pWarm = limited(1 / (1 + Math.exp(16.5 - read)));
      const pLayers = limited(
        1 / (1 + Math.exp(-(read - 8.3 - 0.33 * Math.log(Math.max(area, 7) / 7)) / 0.9)),
      );
      const g = 1 - Math.exp(-d / tau);
      const most = 1.5 * Math.sqrt(g * g * (place.variance + 1.96) + 9);
      const pull = Math.min(most, Math.max(-most, read - usual(d)));
      const y = Math.min(0.3, Math.max(-0.5, Math.log(secchi)));
      const [cloudy, cleared] = [bell(y, -0.32, 0.23), bell(y, 0, 0.18)].map(
        (b) => b / Math.sqrt(2 * Math.PI) + 0.02,
      ) as [number, number];
      const share = cloudy > cleared ? 1 - pWarm : 1;
      weight *= 3 * bell(pull, warmth * g, 3);
      weight *= warm <= d ? pWarm : 1 - pWarm;
      weight *= stirred ? Math.max(pLayers, 1 - pLayers) : layers <= d ? pLayers : 1 - pLayers;
      weight *= (clear <= d ? cleared : cloudy) ** share;
    }
    weights.push(weight);
  }
  const sum = weights.reduce((a, b) => a + b, 0);
  return (day) =>
    [0, 1, 2, 3].map((change) =>
      changes.reduce(
        (share, days, i) => share + ((days[change] ?? 0) <= day ? (weights[i] ?? 0) / sum : 0),
        0,
      ),
    );
}

describe(`states after ice-off against ${DRAWS} draws of the same story, told apart`, () => {
  for (const story of STORIES)
    test(`${story.name}: every chance within 0.01`, () => {
      const drawn = simulate(story);
      const states = statesOfCase(story.lake, ["t4", story.middle, story.scale], story.reads, story.own);
      let worst = 0;
      for (let d = -10; d <= 110; d += 4) {
        const share = drawn(story.middle + d);
        const chances = CHANGES.map((change) => chanceBy(states, change, story.middle + d));
        // iced, ice-off, turnover, best weeks, later weeks: what lies between two changes
        for (let state = 0; state <= CHANGES.length; state++) {
          const between = (by: readonly number[]): number => (by[state - 1] ?? 1) - (by[state] ?? 0);
          worst = Math.max(worst, Math.abs(between(chances) - between(share)));
        }
      }
      expect(worst).toBeLessThan(0.01);
    });
});
