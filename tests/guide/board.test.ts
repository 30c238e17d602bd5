import { describe, expect, test } from "vitest";
import { arrangeBoard } from "../../build/guide/board.ts";
import type { Board, Guide } from "../../build/guide/guide-schema.ts";
import { addDays } from "../../build/model/calendar.ts";
import { day } from "../lake-fixture.ts";
import { siteGuide } from "../site/site-fixture.ts";

const order = ({ lakes, asOf }: Guide): [string, string[]][] =>
  arrangeBoard(lakes, asOf).groups.map((group) => [group.id, group.lakes.map(({ slug }) => slug)]);
const weekends = ({ groups }: Board): (number | null)[] =>
  groups.flatMap((group) => group.lakes.map(({ weekend }) => weekend));

describe("the board", () => {
  const guide = siteGuide();

  test("puts lakes to go to first, then what comes soonest, then what can still be fished", () => {
    expect(order(guide)).toEqual([
      ["weekend", ["willow", "ember"]],
      ["soon", ["kettle", "larch"]],
      ["fishable", ["cinder"]],
      ["later", ["high"]],
    ]);
  });

  test("counts a day as good in ice-off and in the best weeks, meant over Saturday and Sunday", () => {
    const [first] = guide.lakes;
    if (first === undefined) throw new Error("no lake");
    const zero = { iced: 0, iceOff: 0, turnover: 0, postTurnover: 0, laterWeeks: 0 };
    const lake = {
      ...first,
      daily: [
        { ...zero, date: day("2026-05-15"), laterWeeks: 1 },
        { ...zero, date: day("2026-05-16"), iceOff: 0.5, postTurnover: 0.25, iced: 0.25 },
        { ...zero, date: day("2026-05-17"), iceOff: 0.25, turnover: 0.75 },
      ],
    };
    const board = arrangeBoard([lake], day("2026-05-14"));
    expect(board.weekend).toEqual([day("2026-05-16"), day("2026-05-17")]);
    expect(weekends(board)).toEqual([0.5]);
  });

  test("a good lake behind a closed road waits for the road", () => {
    const behind = (opens: string): string | undefined =>
      order({
        ...guide,
        lakes: guide.lakes.map((lake) => ({
          ...lake,
          access: { text: "Gated.", opens: day(opens), travel_h: null },
        })),
      }).find(([, lakes]) => lakes.includes("willow"))?.[0];
    const sunday = guide.board.weekend.at(-1);
    expect(sunday).toBeDefined();
    expect(behind(sunday ?? "")).toBe("weekend");
    expect(behind(addDays(sunday ?? guide.asOf, 1))).toBe("soon");
    expect(behind(addDays(guide.asOf, 15))).toBe("later");
  });

  test("knows no weekend outside the guide's window", () => {
    const after = addDays(guide.window.to, 30);
    expect(weekends(arrangeBoard(guide.lakes, after))).toEqual(guide.lakes.map(() => null));
  });
});
