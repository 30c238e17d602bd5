import { beforeAll, describe, expect, test } from "vitest";
import { layoutLabel } from "../../build/cards/labels/labels.ts";
import { LEGIBLE, LIBPAPER_PT, POINT_MM, US_LETTER_PT } from "../reference/paper.ts";
import { leader } from "../rigs/box-fixture.ts";
import { cardsOf, need, ruler } from "./card-fixture.ts";
import { pageContents, type Stroke } from "./content-stream.ts";
import { faults, textsOf, written, xHeight_mm } from "./legibility.ts";
import { withPdf } from "./rasterise.ts";
import { LEADERS, OPEN, QUIET, rigGuide, rigsWith, tripOf } from "./rig-fixture.ts";

/** The size a label is meant to have, mm. */
const LABEL_MM = [90, 30] as const;
const SHEETS = { a4: LIBPAPER_PT.A4, letter: US_LETTER_PT } as const;

let files: ReadonlyMap<string, Buffer>;
beforeAll(async () => {
  files = (await cardsOf(rigGuide())).files;
});

const textOf = (name: string): Promise<string> =>
  withPdf(need(files, name), async (pdf) => {
    const pages: string[] = [];
    for (let page = 0; page < pdf.getPageCount(); page++) pages.push(pdf.getPage(page).getText());
    return pages.join("\n").replaceAll("\u00a0", " ").replace(/\s+/g, " ");
  });
const countOf = (text: string, words: string): number => text.split(words).length - 1;

/** The distinct levels of marks outside the labels, sorted, points. */
function levels(strokes: readonly Stroke[], axis: 0 | 1, least: number, most: number): number[] {
  const across = axis === 0 ? 1 : 0;
  const marks = strokes.filter(
    ({ from, to }) =>
      from[axis] === to[axis] &&
      [from, to].every((end) => end[across] < least || end[across] > most) &&
      Math.abs(Math.abs(from[across] - to[across]) * POINT_MM - 4) < 0.01,
  );
  return [...new Set(marks.map(({ from }) => from[axis]))].sort((a, b) => a - b);
}

describe.each(["a4", "letter"] as const)("labels on %s", (sheet) => {
  const [width, height] = SHEETS[sheet];
  const contents = () => pageContents(need(files, `labels-${sheet}.pdf`));

  test("the sheet has its real size", () => {
    const text = need(files, `labels-${sheet}.pdf`).toString("latin1");
    for (const [, wide, high] of text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)) {
      expect(Number(wide)).toBeCloseTo(width, 2);
      expect(Number(high)).toBeCloseTo(height, 2);
    }
  });

  test("between neighbouring cut marks lie 90 by 30 mm, by the page's own coordinates", () => {
    for (const { strokes, height: flipped } of contents()) {
      expect(flipped).toBeCloseTo(height, 2);
      const middle = [width / 2, height / 2] as const;
      const xs = levels(strokes, 0, middle[1] - 100 / POINT_MM, middle[1] + 100 / POINT_MM);
      const ys = levels(strokes, 1, middle[0] - 80 / POINT_MM, middle[0] + 80 / POINT_MM);
      expect([xs.length, ys.length]).toEqual([3, 9]);
      for (const [i, x] of xs.slice(1).entries())
        expect((x - (xs[i] ?? 0)) * POINT_MM).toBeCloseTo(LABEL_MM[0], 2);
      for (const [i, y] of ys.slice(1).entries())
        expect((y - (ys[i] ?? 0)) * POINT_MM).toBeCloseTo(LABEL_MM[1], 2);
    }
  });

  test("every label begins where two cuts meet, and no two at one place", () => {
    for (const { strokes, origins } of contents()) {
      const xs = levels(strokes, 0, height / 2 - 100 / POINT_MM, height / 2 + 100 / POINT_MM);
      const ys = levels(strokes, 1, width / 2 - 80 / POINT_MM, width / 2 + 80 / POINT_MM);
      const corners = xs.slice(0, -1).flatMap((x) => ys.slice(0, -1).map((y) => `${x} ${y}`));
      const places = origins.map(([x, y]) => `${x} ${y}`);
      expect(places.length).toBeGreaterThan(0);
      expect(places.filter((place) => !corners.includes(place))).toEqual([]);
      expect(new Set(places).size).toBe(places.length);
    }
  });

  test("the bar to check the printer by is 50 mm long", () => {
    for (const { strokes } of contents()) {
      const lengths = strokes.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) * POINT_MM);
      expect(lengths.filter((length) => Math.abs(length - 50) < 0.01)).toHaveLength(1);
    }
  });

  test("there is a label for each board tied, for each leader not tied yet, and for each a listed trip needs", async () => {
    const text = await textOf(`labels-${sheet}.pdf`);
    // Tied: Shallow 2, Long 3, Stout 0. Over 4 to 18 ft of water the fly hangs 3.42 to 17.42 ft down. Half a foot from
    // either end of its taper, Long reaches 9.5 to 20.5 ft and so serves 7.9 ft of that, Shallow 2.5 to 10.5 ft and so 7.1.
    // The first is wanted on each of 2 rods with a spare for up to 6 rod-days, the second once for 2 rods: common
    // practice, no source.
    const [long, shallow] = [2 + 1, 1];
    const counts = ["9 ft taper to 3X", "12 ft taper to 3X", "12 ft taper to 2X"].map((make) =>
      countOf(text, make),
    );
    expect(counts).toEqual([2 + shallow, 3 + long, 1]);
  });
});

describe("a label", () => {
  const [board] = OPEN.gear.boards.boards;
  if (board === undefined) throw new Error("no board");
  const layoutOf = (why: readonly string[], made = board.leader) =>
    layoutLabel({ leader: made, why }, rigGuide(), ruler);

  test("its lettering is large enough, 3 mm from the edge, and clear of other lettering", () => {
    const { face, misfits } = layoutOf([board.why]);
    expect([misfits, faults(face, LABEL_MM)]).toEqual([[], []]);
  });

  test("name and set depths can be read at a glance", () => {
    const sizes = textsOf(layoutOf([board.why]).face)
      .filter(({ text }) => text === "Shallow" || /^[\d.]+–[\d.]+\sft$/.test(text))
      .map(xHeight_mm);
    expect(sizes).toHaveLength(2);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(LEGIBLE.glance_mm);
  });

  test("it says what the leader is made of, how long it is, what it serves and what it is for", () => {
    const words = written(layoutOf([board.why]).face).replaceAll("\u00a0", " ");
    for (const part of [
      "Shallow",
      // A piece shorter than a foot is cut in inches.
      "9 ft taper to 3X + 6 in of 4X + 1.5 ft of 5X",
      "whole 11 ft",
      "Sets",
      board.why,
    ])
      expect(words).toContain(part);
  });

  test("below two lines of what it is for, 6 mm are left to write on", () => {
    const { face, misfits } = layoutOf(["For one lake and another, in the best weeks. ".repeat(2).trim()]);
    expect(misfits).toEqual([]);
    const last_mm = Math.max(...textsOf(face).map(({ y_pt }) => y_pt)) * POINT_MM;
    expect(LABEL_MM[1] - 3 - last_mm).toBeGreaterThanOrEqual(6);
  });

  test("of several wordings the fullest that fits is printed", () => {
    const long = "For the far end of the lake. ".repeat(20);
    expect(written(layoutOf([long, "For a trip."]).face)).toContain("For a trip.");
    expect(written(layoutOf(["For two lakes.", "For a trip."]).face)).toContain("For two lakes.");
  });

  test("a leader that no indicator slides on says so", () => {
    const words = written(layoutOf([""], { ...board.leader, serves: null }).face).replaceAll("\u00a0", " ");
    expect(words).toContain("no indicator");
    expect(words).not.toContain("Sets");
  });
});

describe("an unlisted trip", () => {
  test("has labels of its own", async () => {
    const text = await textOf("labels-quiet-walk-a4.pdf");
    expect(countOf(text, "Hidden Tarn")).toBe(
      QUIET.gear.boards.boards.reduce((sum, { needed }) => sum + needed, 0),
    );
    expect(text).toContain("Quiet walk");
  });

  test("is given away by no other file: neither its name nor its water", async () => {
    for (const name of [
      "labels-a4.pdf",
      "labels-letter.pdf",
      "labels-open-days-a4.pdf",
      "rig-a6.pdf",
      "rig-5x3.pdf",
    ]) {
      const text = `${await textOf(name)} ${need(files, name).toString("latin1")}`;
      expect([
        name,
        ["Quiet walk", "quiet-walk", "Hidden Tarn"].filter((word) => text.includes(word)),
      ]).toEqual([name, []]);
    }
  });
});

describe("the files", () => {
  test("are tagged, titled and have a bookmark for each sheet that names its leaders", () => {
    const text = need(files, "labels-a4.pdf").toString("latin1");
    const keys = [
      "/Marked true",
      "/Lang (en)",
      "(Leader labels as of 16 May 2026, A4 sheets)",
      "/FontFile2 ",
    ];
    expect(keys.filter((key) => !text.includes(key))).toEqual([]);
    expect(text).toContain("(Leader labels as of 16 May 2026: sheet 1 of 1: Shallow, Long, Stout)");
  });

  test("two runs give the same bytes", async () => {
    const again = (await cardsOf(rigGuide())).files;
    const ours = [...files.keys()].filter((name) => /^(labels|rig)-/.test(name));
    expect(ours).toHaveLength(9);
    for (const name of ours)
      expect([name, need(again, name).equals(need(files, name))]).toEqual([name, true]);
  });

  test("no leaders and no trips: no labels, but rig cards all the same", async () => {
    const { problems, files: few } = await cardsOf(rigGuide({ rigs: rigsWith([]), trips: [] }));
    expect(problems).toEqual([]);
    const names = [...few.keys()];
    expect(names.filter((name) => name.startsWith("labels"))).toEqual([]);
    expect(names).toContain("rig-a6.pdf");
  });

  test("one lake alone makes neither labels nor rig cards", async () => {
    const { files } = await cardsOf(rigGuide(), "ember");
    expect([...files.keys()].sort()).toEqual(["ember-launch.pdf", "ember.pdf"]);
  });
});

describe("what does not fit is named", () => {
  test("a leader's name", async () => {
    const rigs = rigsWith([leader("The one for the deep end", [12, 3], [6, 4], [3, 5])]);
    const { problems, files: none } = await cardsOf(rigGuide({ rigs, trips: [] }));
    const [problem] = problems.filter(({ card }) => card === "labels");
    expect(problem).toMatchObject({ field: "leader names", file: "rigs.yaml", code: "card-overflow" });
    expect(problem?.message).toMatch(/2 lines long, 1 fit/);
    expect([...none.keys()].filter((name) => name.startsWith("labels"))).toEqual([]);
  });

  test("a trip's name, too long for the sheet or with a character that the typeface lacks", async () => {
    const long = tripOf("long", "A very long walk round all of the seven lakes", false, "Ember Lake");
    const arrow = tripOf("arrow", "North → south", false, "Ember Lake");
    const { problems } = await cardsOf(rigGuide({ trips: [long, arrow] }));
    expect(problems.map(({ card, field }) => [card, field])).toEqual([
      ["labels-long", "trip names"],
      ["labels-arrow", "trip names"],
      ["trip-arrow", "trip names"],
    ]);
    expect(problems[1]?.message).toContain("U+2192");
  });
});

test("every leader of the box stands on some label, whatever the lakes ask for", async () => {
  const text = await textOf("labels-a4.pdf");
  expect(LEADERS.map(({ name }) => name).filter((name) => !text.includes(name))).toEqual([]);
  expect(text).toContain("No lake's plan calls for it");
});
