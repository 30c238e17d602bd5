import { describe, expect, test } from "vitest";
import { layoutBoxPlan } from "../../build/cards/trip/box-card.ts";
import { type Drawing, textNodes } from "../../build/draw/drawing.ts";
import { boxPlan } from "../../build/flies/box-plan.ts";
import type { BoxPattern } from "../../build/flies/box-plan-tying.ts";
import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import { type LetteringBox, letteringBoxes } from "../draw/lettering-boxes.ts";
import { lake, pattern, trip } from "../flies/box-plan-fixture.ts";
import { day } from "../lake-fixture.ts";
import { ISO_216_MM, LEGIBLE, POINT_MM } from "../reference/paper.ts";
import { cardsOf, need, ruler } from "./card-fixture.ts";
import { faults, piecesOf, written } from "./legibility.ts";
import { withPdf } from "./rasterise.ts";
import { QUIET, rigGuide } from "./rig-fixture.ts";

const MATERIALS = ["nymph hook", "marabou, one shank", "fine copper wire", "olive dubbing, picked out below"];

/** So many patterns of one lake; every third has none in stock, the others a few. */
const patternsOf = (count: number): BoxPattern[] =>
  Array.from({ length: count }, (_, i) =>
    pattern(`fly-${i + 1}`, {
      name: `Long shank nymph ${i + 1}`,
      stock: i % 3 === 0 ? [] : [{ size: 14, colour: "black", count: 5 }],
      dressing: MATERIALS.map((material, part) => ({
        part: ["hook", "tail", "rib", "body"][part] ?? "",
        material: `${material} ${part === 1 ? i : ""}`,
      })),
    }),
  );

const tripWith = (patterns: readonly BoxPattern[], base: GuideTrip = QUIET): GuideTrip => ({
  ...base,
  from: day("2026-05-29"),
  to: day("2026-05-31"),
  box: boxPlan(
    trip(3, 4, [lake("Hidden Tarn", { iceOff: 1 }, { "ice-off": patterns.map(({ slug }) => slug) })]),
    patterns,
  ),
});

/** The same in one size and colour: a row each. */
const narrow = (patterns: readonly BoxPattern[]): BoxPattern[] =>
  patterns.map((row, i) => ({ ...row, name: `Nymph ${i + 1}`, sizes: [14], colours: ["black"] }));

type Side = ReturnType<typeof layoutBoxPlan>[number]["face"];

const drawingsOf = (face: Side) =>
  face.parts.flatMap(piecesOf).flatMap((piece) => (piece.kind === "drawing" ? [piece] : []));

/** The lettering of a side's drawings where it stands on the card in the card's own type, points. */
const letteringOf = (face: Side): LetteringBox[] =>
  drawingsOf(face).flatMap(({ drawing, x_pt, y_pt }) =>
    letteringBoxes(drawing, (text, size_pt, isBold) =>
      ruler.width_pt(text, { font: isBold ? "bold" : "regular", size_pt }),
    ).map(({ text, size, left, right, top, bottom }) => ({
      text,
      size,
      left: x_pt + left,
      right: x_pt + right,
      top: y_pt + top,
      bottom: y_pt + bottom,
    })),
  );

/** What is drawn of each row of a box. */
const rowsIn = (nodes: Drawing["children"]): Drawing["children"][] =>
  nodes.flatMap((node) => (node.tag === "g" && node.attributes.class === "row" ? [node.children] : []));

const sizes = [1, 4, 9, 20] as const;

describe.each(sizes)("the card of a box with %i patterns", (count) => {
  const planned = tripWith(patternsOf(count));
  const sides = layoutBoxPlan(rigGuide(), planned, ruler);

  test("holds everything: large enough, 3 mm from the edge, clear of other lettering", () => {
    expect(sides.flatMap(({ misfits }) => misfits)).toEqual([]);
    expect(sides.flatMap(({ face }) => faults(face))).toEqual([]);
  });

  test("its drawing is legible, and no word stands on another or over the edge", () => {
    for (const { face } of sides) {
      const words = letteringOf(face);
      for (const { text, size, left, right, bottom } of words) {
        expect(ruler.xHeight_pt({ font: "regular", size_pt: size }) * POINT_MM).toBeGreaterThanOrEqual(
          LEGIBLE.any_mm,
        );
        expect([text, left * POINT_MM >= 3, right * POINT_MM <= 102, bottom * POINT_MM <= 145]).toEqual([
          text,
          true,
          true,
          true,
        ]);
      }
      const over = words.filter((a, i) =>
        words
          .slice(i + 1)
          .some(
            (b) =>
              a.left < b.right &&
              b.left < a.right &&
              Math.abs(a.bottom - b.bottom) < LEGIBLE.leading * a.size - 0.1,
          ),
      );
      expect(over).toEqual([]);
    }
  });

  test("it shows each row of the Guide with its number, its flies and their count", () => {
    const drawn = sides
      .flatMap(({ face }) => drawingsOf(face))
      .flatMap(({ drawing }) => rowsIn(drawing.children))
      .map((row) => {
        const [number, carry, ...fly] = textNodes(row).map(({ runs }) =>
          runs.map(({ text }) => text).join(""),
        );
        const flies = (name: string): number =>
          row.filter((part) => part.tag === "path" && part.attributes.class === name).length;
        return {
          row: Number(number),
          carry: Number(carry),
          fly: fly.join(" "),
          tied: flies("tied"),
          toTie: flies("to-tie"),
        };
      });
    expect(drawn).toEqual(
      planned.box.rows.map(({ row, name, size, colour, carry, tie }) => ({
        row,
        carry,
        fly: `${name} ${size} ${colour}`,
        tied: carry - tie,
        toTie: tie,
      })),
    );
  });

  test("its back names every fly to tie and every material, with the Guide's counts", () => {
    const words = sides
      .map(({ face }) => written(face))
      .join(" ")
      .replaceAll("\u00a0", " ");
    for (const { name, flies } of planned.box.tying) {
      expect(words).toContain(name);
      for (const { size, colour, count } of flies)
        expect(words).toContain(`Size ${size} ${colour}: ${count}`);
    }
    for (const { text } of planned.box.materials) expect(words).toContain(text);
    expect(words).toContain(planned.box.losses.words);
  });
});

describe("sides", () => {
  const sidesOf = (patterns: readonly BoxPattern[]): string[] =>
    layoutBoxPlan(rigGuide(), tripWith(patterns), ruler).map(({ face }) => face.title);

  test("a small box and its list take one each, a large one as many as they need", () => {
    expect(sidesOf(narrow(patternsOf(3)))).toEqual([
      "The box for Quiet walk, rows 1 to 3",
      "To tie for Quiet walk",
    ]);
    expect(sidesOf(patternsOf(20)).filter((title) => title.startsWith("To tie")).length).toBeGreaterThan(1);
    expect(sidesOf(patternsOf(60)).filter((title) => title.startsWith("The box")).length).toBeGreaterThan(1);
  });

  test("thirty rows stand on one side; of more, the first side is filled before the next begins", () => {
    const trip = tripWith(narrow(patternsOf(1)));
    const [row] = trip.box.rows;
    if (row === undefined) throw new Error("no row");
    const boxSides = (count: number) => {
      const rows = Array.from({ length: count }, (_, i) => ({ ...row, row: i + 1 }));
      return layoutBoxPlan(rigGuide(), { ...trip, box: { ...trip.box, rows } }, ruler).filter(({ face }) =>
        face.title.startsWith("The box"),
      );
    };
    expect(boxSides(30).map(({ face }) => face.title)).toEqual(["The box for Quiet walk, rows 1 to 30"]);
    const many = boxSides(40);
    expect(many.length).toBe(2);
    const [first] = many;
    if (first === undefined) throw new Error("no front");
    const lowest = Math.max(...letteringOf(first.face).map(({ bottom }) => bottom));
    // A row more would not fit: less than two lines of the least lettering are left above the margin.
    expect(lowest).toBeGreaterThan((ISO_216_MM.A6[1] - 4) / POINT_MM - 2 * 11);
    expect(many.flatMap(({ face }) => faults(face))).toEqual([]);
  });

  test("a few rows are lettered to be read at a glance", () => {
    const [front] = layoutBoxPlan(rigGuide(), tripWith(narrow(patternsOf(3))), ruler);
    if (front === undefined) throw new Error("no front");
    const heights = letteringOf(front.face).map(
      ({ size }) => ruler.xHeight_pt({ font: "regular", size_pt: size }) * POINT_MM,
    );
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(LEGIBLE.glance_mm);
  });

  test("with nothing to tie the back says so", () => {
    const stocked = patternsOf(2).map((row) => ({
      ...row,
      stock: [{ size: 14, colour: "black", count: 99 }],
    }));
    const back = layoutBoxPlan(rigGuide(), tripWith(stocked), ruler).at(-1);
    expect(back === undefined ? "" : written(back.face)).toContain("Nothing to tie: every fly");
  });
});

describe("the files", () => {
  const quiet = tripWith(patternsOf(9));

  test("an unlisted trip has one, in two runs the same, that no other file gives away", async () => {
    const guide = rigGuide({ trips: [quiet] });
    const [{ problems, files }, again] = [await cardsOf(guide), await cardsOf(guide)];
    expect(problems).toEqual([]);
    const box = need(files, "box-quiet-walk.pdf");
    expect(box.equals(need(again.files, "box-quiet-walk.pdf"))).toBe(true);
    const text = await withPdf(box, async (pdf) =>
      Array.from({ length: pdf.getPageCount() }, (_, page) => pdf.getPage(page).getText()).join(" "),
    );
    for (const { name } of quiet.box.rows) expect(text).toContain(name);
    for (const [name, bytes] of files)
      if (!name.includes("quiet-walk"))
        expect([name, bytes.toString("latin1").includes("Quiet walk")]).toEqual([name, false]);
  });

  test("a trip without flies has none", async () => {
    expect([...(await cardsOf(rigGuide())).files.keys()].filter((name) => name.startsWith("box-"))).toEqual(
      [],
    );
  });

  test("a name too long for the drawing is a problem of the club's pattern, and the card is not written", async () => {
    const name = "The long and winding shank nymph of the far shore in spring";
    const trips = [tripWith(patternsOf(2).map((row) => ({ ...row, name })))];
    const { problems, files } = await cardsOf(rigGuide({ trips }));
    expect(problems[0]).toMatchObject({ card: "box-quiet-walk", field: "patterns", file: "patterns" });
    expect(problems[0]?.message).toContain("too wide");
    expect([...files.keys()]).not.toContain("box-quiet-walk.pdf");
  });
});
