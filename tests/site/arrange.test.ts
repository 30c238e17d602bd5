import { describe, expect, test } from "vitest";
import { addDays } from "../../build/model/calendar.ts";
import { arrangeBoard } from "../../build/site/arrange-board.ts";
import { day } from "../lake-fixture.ts";
import { siteGuide } from "./site-fixture.ts";

const order = (guide: Parameters<typeof arrangeBoard>[0]): [string, string[]][] =>
  arrangeBoard(guide).groups.map(({ id, rows }) => [id, rows.map(({ lake }) => lake.slug)]);

describe("the board", () => {
  const guide = siteGuide();

  test("puts lakes to go to first, then what comes soonest, then what is past", () => {
    expect(order(guide)).toEqual([
      ["weekend", ["willow", "ember"]],
      ["soon", ["kettle", "larch"]],
      ["later", ["high"]],
      ["past", ["cinder"]],
    ]);
  });

  test("counts a day as good in ice-off and in the best weeks, meant over Saturday and Sunday", () => {
    const [first] = guide.lakes;
    if (first === undefined) throw new Error("no lake");
    const zero = { iced: 0, iceOff: 0, turnover: 0, postTurnover: 0, summer: 0 };
    const lake = {
      ...first,
      daily: [
        { ...zero, date: day("2026-05-15"), summer: 1 },
        { ...zero, date: day("2026-05-16"), iceOff: 0.5, postTurnover: 0.25, iced: 0.25 },
        { ...zero, date: day("2026-05-17"), iceOff: 0.25, turnover: 0.75 },
      ],
    };
    const board = arrangeBoard({ lakes: [lake], asOf: day("2026-05-14") });
    expect(board.weekend).toEqual([day("2026-05-16"), day("2026-05-17")]);
    expect(board.groups.flatMap(({ rows }) => rows.map(({ weekend }) => weekend))).toEqual([0.5]);
  });

  test("knows no weekend outside the guide's window", () => {
    const after = { lakes: guide.lakes, asOf: addDays(guide.window.to, 30) };
    expect(arrangeBoard(after).groups.flatMap(({ rows }) => rows.map(({ weekend }) => weekend))).toEqual(
      guide.lakes.map(() => null),
    );
  });
});
