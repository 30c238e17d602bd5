import { describe, expect, test } from "vitest";
import { launchCard } from "../../../build/season/after-ice/launch-card.ts";
import { CHANGES, chanceBy, dayBy, type SeasonStates } from "../../../build/season/after-ice/states.ts";
import {
  type CaseLake,
  type CaseReading,
  clocksOf,
  lawOf,
  readingOf,
  readingsOf,
  statesOfCase,
} from "./reference-cases.ts";

const HIGH: CaseLake = { lat: 41.2, elevation_m: 2700, area_ha: 20, max_depth_m: 12, usual: 145 };
const LAKES: Readonly<Record<string, CaseLake>> = {
  high: HIGH,
  reservoir: { lat: 41.2, elevation_m: 1480, area_ha: 300, max_depth_m: 18, usual: 84 },
  low: { lat: 43, elevation_m: 300, area_ha: 50, max_depth_m: 12, usual: 100 },
  middling: { lat: 50.7, elevation_m: 1100, area_ha: 40, max_depth_m: 15, usual: 118 },
  snow: { lat: 40.3, elevation_m: 3100, area_ha: 5, max_depth_m: 5, usual: 158, fedBy: "snow" },
  alpine: { lat: 41.2, elevation_m: 3300, area_ha: 5, max_depth_m: 10, usual: 190 },
  bare: { lat: 43, usual: 110 },
};
const EACH = Object.entries(LAKES);

/** States of a lake that opened on its usual day, with these readings so many days later. */
const after = (lake: CaseLake, reads: readonly CaseReading[] = [], x = lake.usual): SeasonStates =>
  statesOfCase(
    lake,
    ["known", x],
    reads.map((read) => ({ ...read, t: x + (read.t ?? 0) })),
  );

/** Arithmetic may be off by this in sums of a few hundred chances. */
const EXACT = 1e-9;

/** True where no change comes earlier by `late` than by `early`, on any day of season from `since` on. */
function neverEarlier(
  early: SeasonStates,
  late: SeasonStates,
  changes: readonly (typeof CHANGES)[number][],
  since = early.firstDay,
): boolean {
  return changes.every((change) =>
    Array.from({ length: 200 }, (_, i) => since + i).every(
      (day) => chanceBy(late, change, day) <= chanceBy(early, change, day) + EXACT,
    ),
  );
}

/** Chances of the five states on a day. */
const statesOn = (states: SeasonStates, day: number): number[] => {
  const by = CHANGES.map((change) => chanceBy(states, change, day));
  return [1, ...by].map((chance, i) => chance - (by[i] ?? 0));
};

describe("states after ice-off", () => {
  test.each(EACH)(
    "%s: on every day five chances of 0 to 1 that sum to 1, with and without readings",
    (_, lake) => {
      const reads: CaseReading[] = [
        { t: 4, phase: "ice-off" },
        { t: 9, surface: 7, secchi: 0.6 },
        { t: 12, phase: "turnover", looks: "cloudy" },
        { t: 30, surface: 12, deep: 8, z: 5 },
      ];
      for (const law of [
        ["known", lake.usual],
        ["t4", lake.usual, 4],
      ])
        for (const read of [[], reads.map(({ t = 0, ...rest }) => ({ ...rest, t: lake.usual + t }))]) {
          const states = statesOfCase(lake, law, read);
          for (let day = lake.usual - 40; day < lake.usual + 200; day++) {
            const row = statesOn(states, day);
            expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
            for (const chance of row) expect(chance).toBeGreaterThanOrEqual(-EXACT);
            expect(states.takeCare[day - states.firstDay] ?? 0).toBeGreaterThanOrEqual(
              states.stop[day - states.firstDay] ?? 0,
            );
          }
        }
    },
  );

  test.each(EACH)("%s: a warmer surface never means an earlier state from its day on", (_, lake) => {
    for (const d of [5, 20, 40, 70]) {
      const read = Array.from({ length: 12 }, (_, i) => after(lake, [{ t: d, surface: -1 + 3 * i }]));
      read.slice(1).forEach((warmer, i) => {
        const colder = read[i];
        if (colder !== undefined)
          expect(
            neverEarlier(warmer, colder, ["clear", "later"], lake.usual + d),
            `day ${d}, ${3 * i - 1} C`,
          ).toBe(true);
      });
    }
  });

  test.each(EACH)("%s: murkier water never means a clearer lake", (_, lake) => {
    for (const d of [5, 20, 40, 70])
      for (const surface of [undefined, 9, 17]) {
        const heat = surface === undefined ? {} : { surface };
        const ratios = [0.3, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.5];
        const read = ratios.map((secchi) => after(lake, [{ t: d, secchi, ...heat }]));
        read.slice(1).forEach((clearer, i) => {
          const murkier = read[i];
          if (murkier !== undefined)
            expect(neverEarlier(clearer, murkier, ["clear"]), `day ${d}, ${ratios[i]}`).toBe(true);
        });
        const [cloudy, clear] = (["cloudy", "clear"] as const).map((looks) =>
          after(lake, [{ t: d, looks, ...heat }]),
        );
        if (cloudy !== undefined && clear !== undefined)
          expect(neverEarlier(clear, cloudy, ["clear"])).toBe(true);
      }
  });

  test.each(EACH)("%s: a later ice-off never brings a state earlier", (_, lake) => {
    for (let x = lake.usual - 20; x < lake.usual + 20; x += 5)
      expect(neverEarlier(after(lake, [], x), after(lake, [], x + 5), CHANGES), `ice-off ${x}`).toBe(true);
  });

  test.each(EACH.filter(([name]) => name !== "bare"))(
    "%s: no single reading turns a state of 88 % into one of under 27 %",
    (_, lake) => {
      const readings: CaseReading[] = [
        ...[0, 4, 8, 12, 16, 20, 25].map((surface) => ({ surface })),
        { surface: 9, deep: 9, z: 5 },
        { surface: 14, deep: 6, z: 5 },
        ...[0.4, 0.7, 1, 1.3].map((secchi) => ({ secchi })),
        { looks: "cloudy" },
        { looks: "clear" },
        { looks: "cloudy", surface: 18 },
      ];
      const before = after(lake);
      for (let d = 5; d <= 80; d += 5) {
        const said = statesOn(before, lake.usual + d);
        for (const reading of readings) {
          const now = statesOn(after(lake, [{ ...reading, t: d }]), lake.usual + d);
          said.forEach((chance, state) => {
            if (chance >= 0.88)
              expect(now[state], `day ${d}: ${JSON.stringify(reading)}`).toBeGreaterThan(0.27);
          });
        }
      }
    },
  );
});

describe("an own record of this season", () => {
  test("is taken at its word by every later day", () => {
    const states = statesOfCase(HIGH, ["t4", 145, 4], [], { turnover_now: [156, 170], last_good_now: 182 });
    expect([0.1, 0.5, 0.9].map((chance) => dayBy(states, "onset", chance))).toEqual([156, 156, 156]);
    expect([0.1, 0.5, 0.9].map((chance) => dayBy(states, "clear", chance))).toEqual([171, 171, 171]);
    expect([0.1, 0.5, 0.9].map((chance) => dayBy(states, "later", chance))).toEqual([183, 183, 183]);
  });
});

describe("the launch card", () => {
  const cases: readonly [string, CaseLake, readonly CaseReading[]][] = [
    ["nothing read so far", HIGH, []],
    [
      "readings of the same kinds so far",
      HIGH,
      [
        { t: 165, surface: 8, secchi: 0.7 },
        { t: 171, surface: 10, deep: 7, z: 5 },
      ],
    ],
    [
      "states named so far",
      HIGH,
      [
        { t: 150, phase: "ice-off" },
        { t: 160, phase: "turnover" },
        { t: 169, looks: "cloudy" },
      ],
    ],
    ["a lake that does not turn over", { ...HIGH, turns_over: false }, [{ t: 150, phase: "ice-off" }]],
    ["a lake that wind may keep mixed", { ...HIGH, max_depth_m: 4, area_ha: 150 }, [{ t: 160, surface: 9 }]],
  ];
  const reads: readonly CaseReading[] = [
    {},
    { surface: 9, depth: "same", z: 4.5, secchi: 0.65 },
    { surface: 15, secchi: 1 },
    { surface: 18, depth: "colder", z: 4.5, looks: "cloudy" },
    { looks: "clear" },
  ];
  test.each(cases)("%s: says what the season says with the reading added", (_, lake, sofar) => {
    const today = 173;
    const card = launchCard(clocksOf(lake), lawOf(["t4", 145, 4]), readingsOf(sofar), today);
    for (const read of reads) {
      const [iced = 0, ...open] = statesOn(
        statesOfCase(lake, ["t4", 145, 4], [...sofar, { ...read, t: today }]),
        today,
      );
      Object.values(card(readingOf(read))).forEach((chance, state) => {
        expect(chance).toBeCloseTo((open[state] ?? 0) / (1 - iced), 9);
      });
    }
  });
});
