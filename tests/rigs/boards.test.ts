import { describe, expect, test } from "vitest";
import type { DepthBand, RigBox } from "../../build/model/club.ts";
import { doubtfulSteps } from "../../build/rigs/leaders/leader.ts";
import { bandsToFish, leaderBoards } from "../../build/rigs/leaders/leader-boards.ts";
import { leaderCandidates } from "../../build/rigs/leaders/leader-candidates.ts";
import { leaderBoardsSchema } from "../../build/rigs/rig-schemas.ts";
import { setDepthOf } from "../../build/rigs/set-depth.ts";
import { box, FT, lake, leader } from "./box-fixture.ts";

const use = { days: 3, rods: 2 };
const boardsFor = (bands: readonly DepthBand[], changed: Partial<RigBox> = {}) =>
  leaderBoards(
    bands.map((band, i) => ({ name: `Band ${i + 1}`, band })),
    { ...box, ...changed },
    use,
    "imperial",
  );
const deep = { from_m: 3.2, to_m: 5.5 };

test("a lake is fished under an indicator at ice-off and in the best weeks", () =>
  expect(bandsToFish(lake)).toEqual([
    { name: "Wren Lake, ice-off", band: { from_m: 0.6, to_m: 2, source: "usual" } },
    { name: "Wren Lake, best weeks", band: { from_m: 2.5, to_m: 5.5, source: "usual" } },
  ]));

describe("which boards to tie", () => {
  test("keeps its schema and serves every set that can be", () => {
    const bands = [{ from_m: 1, to_m: 2 }, deep];
    const found = boardsFor(bands);
    expect(leaderBoardsSchema.parse(found)).toEqual(found);
    expect(found.uncovered).toEqual([]);
    for (const band of bands) {
      const sets = setDepthOf(band, box) ?? { from_m: Number.NaN, to_m: Number.NaN };
      for (let set_m = sets.from_m; set_m <= sets.to_m; set_m += 0.01)
        expect(
          found.boards.some(
            ({ leader: { serves } }) => serves && serves.from_m <= set_m && set_m <= serves.to_m,
          ),
          `${set_m} m`,
        ).toBe(true);
    }
  });
  test("a leader already tied is used before a better one is tied", () => {
    const leaders = [leader("Short", [9, 3], [3, 4], [3, 5]), leader("Long", [12, 3], [6, 4], [3, 5], 2)];
    const { boards } = boardsFor([deep], { leaders });
    expect(boards.map((board) => board.leader.name)).toEqual(["Long"]);
    expect(boards[0]?.tie).toBe((boards[0]?.needed ?? 0) - 2);
  });
  test("one on each of 2 rods and a spare for every 6 of 6 rod-days: 2 + 1 = 3, and it says so", () => {
    const [first] = boardsFor([deep]).boards;
    expect(first?.needed).toBe(3);
    expect(first?.how).toBe("3: one on each of 2 rods, and a spare for every 6 of 6 rod-days.");
  });
  test("of a board that serves less, one for every second rod", () => {
    const leaders = [
      leader("Edge", [9, 3], [0.5, 4], [1.5, 5], 2),
      leader("Long", [12, 3], [6, 4], [3, 5], 2),
    ];
    const { boards } = boardsFor([{ from_m: 1, to_m: 6 }], { leaders });
    expect(boards.map((one) => [one.leader.name, one.needed])).toEqual([
      ["Edge", 1],
      ["Long", 3],
    ]);
  });
  test("says what each is for", () =>
    expect(boardsFor([deep]).boards[0]?.why).toMatch(/^For Band 1 \(sets /));
  test("prefers the leader with fewer knots", () => {
    const { boards } = boardsFor([{ from_m: 1, to_m: 2 }]);
    expect(boards.map((board) => board.leader.sections.map(({ part }) => part))).toEqual([
      ["taper", "tippet"],
    ]);
  });
  test("too deep and too shallow are named, not dropped", () => {
    expect(boardsFor([{ from_m: 12, to_m: 14 }]).uncovered.join()).toContain("the nearest is");
    expect(boardsFor([{ from_m: 0.2, to_m: 0.3 }])).toMatchObject({
      boards: [],
      uncovered: [expect.stringContaining("too shallow")],
    });
  });
  test("nothing to fish needs no board", () =>
    expect(boardsFor([])).toMatchObject({ boards: [], uncovered: [] }));
});

test("every leader weighed up is cut to the half foot, without a doubtful join, or the club's own", () => {
  for (const { make, stock } of leaderCandidates(box)) {
    if (stock !== undefined) continue;
    expect(doubtfulSteps(make)).toEqual([]);
    for (const { length_m } of [make.middle, make.tippet])
      expect(Math.abs((length_m / FT) * 2 - Math.round((length_m / FT) * 2))).toBeLessThan(1e-9);
  }
});
