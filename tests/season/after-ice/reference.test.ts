import { describe, expect, test } from "vitest";
import { bareCard } from "../../../build/season/after-ice/bare-card.ts";
import { type FreezingEvidence, REFUSALS, refusalOf } from "../../../build/season/after-ice/freezing.ts";
import { launchCard } from "../../../build/season/after-ice/launch-card.ts";
import { clearByDay, clearLaw, warmLaw } from "../../../build/season/after-ice/own-records.ts";
import {
  layeredChance,
  secchiGate,
  twoDepths,
  warmChance,
} from "../../../build/season/after-ice/readings.ts";
import { CHANGES, chanceBy, dayBy, type SeasonStates } from "../../../build/season/after-ice/states.ts";
import { stratificationOf } from "../../../build/season/after-ice/stratification.ts";
import {
  climateOf,
  shownByDay,
  surfaceTemperature,
} from "../../../build/season/after-ice/surface-temperature.ts";
import reference from "../../reference/after-ice-states.json" with { type: "json" };
import {
  type CaseLake,
  type CaseLaw,
  type CaseOwn,
  type CaseReading,
  clocksOf,
  lawOf,
  readingOf,
  readingsOf,
  statesOfCase,
  traitsOf,
} from "./reference-cases.ts";

interface CaseInput {
  readonly lake: CaseLake & {
    readonly freezes?: FreezingEvidence["lake"]["freezes"];
    readonly own_records?: number;
  };
  readonly law: CaseLaw;
  readonly readings?: readonly CaseReading[];
  readonly own: CaseOwn;
  readonly x: number;
  readonly reads: CaseReading;
  readonly today: number;
  readonly recorded: readonly (readonly number[])[];
  readonly usual: number;
  readonly usual_sd: number;
}

/** By the name of what is computed: what this program says, under the names that the case expects. */
const COMPUTED: Readonly<Record<string, (input: CaseInput, whole: object) => Record<string, unknown>>> = {
  place: (_, lake) => {
    const climate = climateOf(traitsOf(lake as CaseLake));
    return {
      mean: climate.mean_C,
      sd: Math.sqrt(climate.variance),
      tau: climate.lag_d,
      weight_lapse: climate.placeWeight,
      anchor: climate.anchor_C,
    };
  },
  trajectory: ({ lake, x }) => {
    const climate = climateOf(traitsOf(lake));
    const surface = surfaceTemperature(climate, lake.usual)(x);
    const days = [0, 7, 21, 35, 60, 90].map((d) => [`d${d}`, surface[d]]);
    return { ...Object.fromEntries(days), shown21: shownByDay(climate)[21] };
  },
  never_layers: (_, lake) => {
    const { never, at_C, mixingDepth_m } = stratificationOf(traitsOf(lake as CaseLake));
    return { never, at_C, mixing_depth_m: mixingDepth_m };
  },
  clear_law: (_, whole) => {
    const { own, rule } = whole as { own: number[]; rule: number | null };
    const { mean_d, sd_d } = clearLaw(own, rule ?? undefined);
    return { mean: mean_d, sd: sd_d };
  },
  clear_days: () => {
    const by = clearByDay(clearLaw([], undefined));
    return Object.fromEntries([0, 10, 20, 26, 35, 50].map((d) => [`by${d}`, by[d]]));
  },
  warm_law: ({ lake }, whole) => {
    const { own } = whole as { own: number[][] };
    const past = own.map(([iceOff = 0, last = 0]) => ({ iceOff, last }));
    const { offset_C, placeVariance } = warmLaw(traitsOf(lake), climateOf(traitsOf(lake)), past);
    // the threshold's own sd, 1 degree, is fixed by the model
    return { offset: offset_C, sd: 1, place_variance: placeVariance };
  },
  l_two_depth: ({ lake }, whole) => {
    const { after, by } = twoDepths(readingOf(whole as CaseReading), stratificationOf(traitsOf(lake)));
    return { mixed: after, layered: by };
  },
  l_secchi: (_, whole) => {
    const { by, after } = secchiGate((whole as { ratio: number }).ratio);
    return { before: after, after: by };
  },
  p_layered: (_, whole) => {
    const { T, area } = whole as { T: number; area: number };
    return { p: layeredChance(T, { area_ha: area }) };
  },
  p_warm: (_, whole) => ({ p: warmChance((whole as { T: number }).T, 0) }),
  forecast: ({ lake, law, readings, own }) => {
    const states = statesOfCase(lake, law, readings, own);
    const middle = Number(law[1]);
    const days = [7, 14, 21, 28, 35, 42, 56, 70].map((d) => [`d${d}`, rowOf(states, middle + d)]);
    const quantiles = { iceOff: "iceOff", onset: "onset", clear: "clear", end: "later" } as const;
    return {
      ...Object.fromEntries(days),
      quantiles: Object.fromEntries(
        Object.entries(quantiles).map(([name, change]) => [
          name,
          [0.1, 0.5, 0.9].map((chance) => dayBy(states, change, chance)),
        ]),
      ),
      log_evidence: states.logEvidence,
      ice_off_mean: states.iceOff.reduce((sum, chance, i) => sum + chance * (states.firstDay + i), 0),
    };
  },
  guard: ({ lake, law, readings, own }) => {
    const { takeCare, stop, firstDay } = statesOfCase(lake, law, readings, own);
    const place = Number(law[1]) - firstDay;
    return Object.fromEntries(
      [7, 14, 21, 28, 35, 42, 56, 70].map((d) => [`d${d}`, [takeCare[place + d], stop[place + d]]]),
    );
  },
  launch_card: ({ lake, law, readings, own, today, reads }) => {
    const card = launchCard(clocksOf(lake, own), lawOf(law, readings), readingsOf(readings), today);
    return { ...card(readingOf(onCard(reads))) };
  },
  bare_card: ({ lake, reads }) => {
    const { turnover, best, later } = bareCard(traitsOf(lake), readingOf(onCard(reads)));
    return { turnover, best, later };
  },
  may_forecast: ({ lake, recorded, usual, usual_sd, readings }) => {
    const refusal = refusalOf({
      lake: {
        latitude_deg: lake.lat,
        ...(lake.elevation_m === undefined ? {} : { elevation_m: lake.elevation_m }),
        ...(lake.freezes === undefined ? {} : { freezes: lake.freezes }),
      },
      ownRecords: lake.own_records ?? 0,
      dated: recorded.map(([latitude_deg = 0, elevation_m = 0]) => ({ latitude_deg, elevation_m })),
      usual,
      usualSd: usual_sd,
      ice: (readings ?? []).flatMap(({ t = 0, ice }) =>
        ice === undefined ? [] : [{ day: t, ice: ice as "on" | "none" }],
      ),
    });
    return { answer: refusal === undefined ? null : REFUSALS[refusal] };
  },
};

/** On a card the depth below the surface is 4.5 m (15 ft). */
const onCard = (read: CaseReading): CaseReading => (read.depth === undefined ? read : { z: 4.5, ...read });

function rowOf(states: SeasonStates, day: number): number[] {
  const by = CHANGES.map((change) => chanceBy(states, change, day));
  return [1, ...by].map((chance, i) => chance - (by[i] ?? 0));
}

/** Every number of a value, whatever its shape. */
const numbersIn = (value: unknown): unknown[] =>
  typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [value];

const TOLERANCE = 1e-4;

describe("states after ice-off against values computed by two other programs", () => {
  reference.cases.forEach(({ name, function: computed, input, expect: expected }, i) => {
    test(`${i}: ${computed}: ${name}`, () => {
      const answer = COMPUTED[computed]?.(input as unknown as CaseInput, input) ?? {};
      expect(Object.keys(answer).sort()).toEqual(Object.keys(expected).sort());
      for (const [key, value] of Object.entries(expected)) {
        const [ours, theirs] = [numbersIn(answer[key]), numbersIn(value)];
        expect(ours.length).toBe(theirs.length);
        theirs.forEach((number, place) => {
          const our = ours[place];
          if (typeof number !== "number" || typeof our !== "number") expect(our).toEqual(number);
          else if (key === "quantiles") expect(our, key).toBe(number);
          else expect(Math.abs(our - number), `${key}: ${our} for ${number}`).toBeLessThanOrEqual(TOLERANCE);
        });
      }
    });
  });
});
