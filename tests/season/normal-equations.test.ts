import { describe, expect, test } from "vitest";
import type { Blocks, Known } from "../../build/season/fit/normal-equations.ts";
import { type Row, rowsOf, solveNormalEquations } from "../../build/season/fit/normal-equations.ts";
import published from "../reference/season-mixed-models.json" with { type: "json" };
import { seeded } from "../seeded-random.ts";
import { normal } from "./draws.ts";

interface Written {
  readonly row: Row;
  readonly value: number;
  readonly precision: number;
}

const known = (written: readonly Written[]): Known => ({
  rows: rowsOf(written.map(({ row }) => row)),
  value: Float64Array.from(written, ({ value }) => value),
  precision: Float64Array.from(written, ({ precision }) => precision),
});

/** A flat prior that leaves the system solvable. */
const FLAT = 1e-12;

/** `value = mean + effect of its group + error`: unknown 0 is the mean, then the groups. */
function groupEffects(
  groups: Readonly<Record<string, readonly number[]>>,
  groupVariance: number,
  errorVariance: number,
): ReadonlyMap<string, number> {
  const names = Object.keys(groups);
  const written = names.flatMap((name, g): Written[] => [
    { row: [[1 + g, 1]], value: 0, precision: 1 / groupVariance },
    ...(groups[name] ?? []).map(
      (value): Written => ({
        row: [
          [0, 1],
          [1 + g, 1],
        ],
        value,
        precision: 1 / errorVariance,
      }),
    ),
  ]);
  const { mean } = solveNormalEquations(
    [known([{ row: [[0, 1]], value: 0, precision: FLAT }, ...written])],
    1 + names.length,
    { first: 1, count: names.length, width: 1 },
  );
  return new Map(names.map((name, g) => [name, mean[1 + g] ?? Number.NaN]));
}

describe("random effects with their variances given", () => {
  const { sleepstudy, dyestuff, robinson } = published;

  test.each(Object.entries(sleepstudy.effects))("sleepstudy, lme4: subject %s", (subject, effect) => {
    const { variances, reaction } = sleepstudy;
    const effects = groupEffects(reaction, variances.subject, variances.residual);
    expect(Math.abs((effects.get(subject) ?? 0) - effect)).toBeLessThan(1e-3);
  });

  test.each(Object.entries(dyestuff.effects))("Dyestuff, lme4 and closed form: batch %s", (batch, effect) => {
    const { variances, yield: yields } = dyestuff;
    const effects = groupEffects(yields, variances.batch, variances.residual);
    expect(Math.abs((effects.get(batch) ?? 0) - effect)).toBeLessThan(1e-3);
  });

  test("Robinson (1991): herds are fixed, sires random", () => {
    const [herds, sires] = [Object.keys({ 1: 0, 2: 0, 3: 0 }), ["A", "B", "C", "D"]];
    const { mean } = solveNormalEquations(
      [
        known([
          ...herds.map((_, h): Written => ({ row: [[h, 1]], value: 0, precision: FLAT })),
          ...sires.map((_, s): Written => ({ row: [[3 + s, 1]], value: 0, precision: robinson.ratio })),
          ...robinson.records.map(
            ([herd, sire, value]): Written => ({
              row: [
                [herds.indexOf(String(herd)), 1],
                [3 + sires.indexOf(String(sire)), 1],
              ],
              value: Number(value),
              precision: 1,
            }),
          ),
        ]),
      ],
      7,
      { first: 3, count: 4, width: 1 },
    );
    for (const [herd, value] of Object.entries(robinson.herds))
      expect(Math.abs((mean[herds.indexOf(herd)] ?? 0) - value)).toBeLessThan(0.005);
    for (const [sire, value] of Object.entries(robinson.sires))
      expect(Math.abs((mean[3 + sires.indexOf(sire)] ?? 0) - value)).toBeLessThan(0.005);
  });
});

describe("elimination", () => {
  const random = seeded(7);
  const LAKES = 5;
  const SEASONS = 4;
  const written: Written[] = [
    { row: [[0, 1]], value: 0, precision: 1e-3 },
    ...Array.from(
      { length: LAKES },
      (_, i): Written => ({
        row: [
          [1 + i, 1],
          [0, -1],
        ],
        value: 0,
        precision: 0.1,
      }),
    ),
    ...Array.from(
      { length: 2 * SEASONS },
      (_, j): Written => ({ row: [[6 + j, 1]], value: 0, precision: j % 2 === 0 ? 0.02 : 4 }),
    ),
    ...Array.from({ length: 13 }, (_, n): Written => {
      const s = 6 + 2 * (n % SEASONS);
      return {
        row: [
          [1 + (n % LAKES), 1],
          [s, 1],
          [s + 1, normal(random)],
        ],
        value: 5 * normal(random),
        precision: 0.3,
      };
    }),
  ];
  const rows = rowsOf(written.map(({ row }) => row));
  const solve = (blocks: Blocks) => solveNormalEquations([known(written)], 6 + 2 * SEASONS, blocks);
  const none = solve({ first: 0, count: 0, width: 1 });

  test.each([
    ["lakes", { first: 1, count: LAKES, width: 1 }],
    ["seasons", { first: 6, count: SEASONS, width: 2 }],
  ] as const)("eliminating the %s changes no mean and no variance", (_, blocks) => {
    const solution = solve(blocks);
    solution.mean.forEach((value, i) => {
      expect(value).toBeCloseTo(none.mean[i] ?? Number.NaN, 9);
    });
    solution.variancesOf(rows).forEach((variance, t) => {
      expect(variance).toBeCloseTo(none.variancesOf(rows)[t] ?? Number.NaN, 9);
    });
    const lakes = [1, 2, 3, 4, 5];
    expect(solution.varianceOfSum(lakes)).toBeCloseTo(none.varianceOfSum(lakes), 9);
  });

  test("what nothing is known of is an error", () => {
    const lost = [{ row: [[0, 1]], value: 1, precision: 1 }] as const;
    expect(() => solveNormalEquations([known(lost)], 2, { first: 2, count: 0, width: 1 })).toThrow(
      RangeError,
    );
  });
});
