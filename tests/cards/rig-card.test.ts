import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layoutRigCard, RIG_CARD_DESIGNS } from "../../build/cards/rig/rig-card.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { INDEX_CARD_PT, ISO_216_MM, LEGIBLE, POINT_MM } from "../reference/paper.ts";
import { leader } from "../rigs/box-fixture.ts";
import { cardsOf, need, ruler } from "./card-fixture.ts";
import { faults, textsOf, written, xHeight_mm } from "./legibility.ts";
import { withPdf } from "./rasterise.ts";
import { LEADERS, rigGuide, rigsWith } from "./rig-fixture.ts";

type Rigs = Guide["rigs"];

const SIZES_MM: Readonly<Record<string, readonly [number, number]>> = {
  "plumb-a6": ISO_216_MM.A6,
  "rig-a6": ISO_216_MM.A6,
  "rig-5x3": [INDEX_CARD_PT[0] * POINT_MM, INDEX_CARD_PT[1] * POINT_MM],
};

/** Both sides of one size of card, with its faults and what it says does not fit. */
function cardOf(slug: string, guide: Guide) {
  const design = RIG_CARD_DESIGNS.find((one) => one.slug === slug);
  if (design === undefined) throw new Error(`no card ${slug}`);
  const { front, back } = layoutRigCard(guide, design, ruler);
  const faces = [front.face, back.face];
  return {
    faces,
    words: faces.map(written).join(" ").replaceAll("\u00a0", " "),
    misfits: [...front.misfits, ...back.misfits],
    faults: faces.flatMap((face) => faults(face, SIZES_MM[slug])),
  };
}

type Cell = Rigs["plumb"]["depths"][number]["rows"][number]["cells"][number];

/** The same rigs with every cell of the plumb table changed. */
const withCells = (rigs: Rigs, change: (cell: Cell) => Partial<Cell>): Rigs => ({
  ...rigs,
  plumb: {
    ...rigs.plumb,
    depths: rigs.plumb.depths.map((depth) => ({
      ...depth,
      rows: depth.rows.map((row) => ({
        ...row,
        cells: row.cells.map((cell) => ({ ...cell, ...change(cell) })),
      })),
    })),
  },
});

describe.each(Object.keys(SIZES_MM))("%s", (slug) => {
  test("all lettering is large enough, 3 mm from the edge, and clear of other lettering", () => {
    const card = cardOf(slug, rigGuide());
    expect([card.misfits, card.faults]).toEqual([[], []]);
  });

  test("an empty box has its cards too", () => {
    const rigs = rigsWith([]);
    const bare = { ...rigs, drifting: null, lean: null, naked: { ...rigs.naked, rows: [] }, lines: [] };
    const depths = rigs.plumb.depths.map((depth) => ({ ...depth, board: null, rows: [] }));
    const card = cardOf(slug, rigGuide({ rigs: { ...bare, plumb: { ...rigs.plumb, depths } } }));
    expect([card.misfits, card.faults]).toEqual([[], []]);
  });

  test("a longer box shows as many rows as fit and says in words how many there are", () => {
    if (slug === "plumb-a6") return;
    const many = Array.from({ length: 9 }, (_, i) => leader(`Board ${i}`, [9 + i, 3], [2, 4], [2, 5]));
    const { words, misfits, faults } = cardOf(slug, rigGuide({ rigs: rigsWith(many) }));
    expect([misfits, faults]).toEqual([[], []]);
    expect(words).toContain(`Leader, ${slug === "rig-a6" ? 6 : 4} of 9`);
    expect(words).toContain("more: rigs page");
  });

  test("no box with short names overfills a card", () => {
    const line = rigsWith(LEADERS).lines[1];
    if (line === undefined) throw new Error("no line");
    const boxes = fc.record({
      leaders: fc.integer({ min: 0, max: 9 }),
      lines: fc.integer({ min: 0, max: 7 }),
    });
    const cells = fc.array(fc.constantFrom("none", "BB", "No. 4", "2 × BB", "hold"), {
      minLength: 9,
      maxLength: 9,
    });
    fc.assert(
      fc.property(boxes, cells, ({ leaders, lines }, texts) => {
        const rigs = rigsWith(
          Array.from({ length: leaders }, (_, i) => leader(`Board ${i}`, [12, 3], [6.5, 4], [3.5, 5])),
        );
        let k = 0;
        const change = withCells(rigs, () => {
          const text = texts[k++ % texts.length] ?? "none";
          const hold = text === "hold";
          return {
            text: hold ? "2 × BB" : text,
            hold,
            shot: text === "none" ? [] : [{ name: "BB", count: hold ? 2 : 1, diameter_mm: 4.7 }],
          };
        });
        const card = cardOf(
          slug,
          rigGuide({
            rigs: {
              ...change,
              lines: Array.from({ length: lines }, (_, i) => ({ ...line, name: `Line ${i}` })),
            },
          }),
        );
        expect([card.misfits, card.faults]).toEqual([[], []]);
      }),
      { numRuns: 40 },
    );
  });
});

test.each(Object.keys(SIZES_MM))("%s says of which day it is", (slug) => {
  expect(cardOf(slug, rigGuide()).words).toContain("as of 16 May 2026");
});

describe("the plumb card", () => {
  const guide = rigGuide();
  const { faces, words } = cardOf("plumb-a6", guide);
  const { plumb } = guide.rigs;

  test("depths, sets and waits can be read at a glance", () => {
    const large = faces
      .flatMap(textsOf)
      .filter((piece) => xHeight_mm(piece) >= LEGIBLE.glance_mm)
      .map(({ text }) => text);
    // 3 to 24 ft by 3; sets are 7 in less, to the half foot.
    expect(large).toEqual(expect.arrayContaining(["3", "12", "24", "2½", "11½", "23½"]));
  });

  test("every row of the table's own fly stands on the front, cell by cell, and those of the others on the back", () => {
    const front = faces.slice(0, 1).map(written).join(" ").replaceAll("\u00a0", " ");
    for (const { rows } of plumb.depths) {
      const row = rows.find(({ fly }) => fly === plumb.fly);
      if (row === undefined) continue;
      const said = row.cells.map(({ text, hold }) => `${text}${hold ? " hold" : ""}`).join(" ");
      const wait =
        row.wait === null ? "–" : `${row.wait.from_s} ${row.wait.to_s}${row.wait.long ? " long" : ""}`;
      expect(front).toContain(`${said} ${wait}`);
    }
    for (const { rows } of plumb.depths)
      for (const { cells } of rows.filter(({ fly }) => fly !== plumb.fly))
        expect(words).toContain(cells.map(({ text, hold }) => `${text}${hold ? ", hold" : ""}`).join(" "));
  });

  test("shot is drawn at its true size: BB of 0.4 g in tin of 7310 kg/m3 is 4.71 mm across", () => {
    const diameters = plumb.depths.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.flatMap(({ shot }) => shot.filter(({ name }) => name === "BB"))),
    );
    expect(new Set(diameters.map(({ diameter_mm }) => diameter_mm))).toEqual(new Set([4.7]));
    const circles = (faces[0]?.decoration ?? []).flatMap((piece) =>
      piece.kind === "shape" && /a([\d.]+) \1 0 1 0/.test(piece.path)
        ? [Number(/a([\d.]+) /.exec(piece.path)?.[1])]
        : [],
    );
    expect(circles.some((r) => Math.abs(2 * r * POINT_MM - 4.7) < 0.01)).toBe(true);
  });

  test("nothing asks for a wait over 90 s without saying that it is long", () => {
    for (const { rows } of plumb.depths)
      for (const { wait } of rows) if (wait !== null) expect(wait.long).toBe(wait.to_s > 90);
    expect(words).toContain("long");
  });

  test("names the columns by seconds of foam past the rod: 9 ft at 0.045, 0.09 and 0.15 m/s, to 5 s", () => {
    // 2.7432 m: 60.96, 30.5 and 18.3 s.
    for (const text of ["60+ s", "30–60 s", "20–30 s"]) expect(words).toContain(text);
  });
});

test("leaders, tippet by the rule of 11, counts, naked line and swing stand on the rig card", () => {
  const { words } = cardOf("rig-a6", rigGuide());
  const wanted = [
    "as of 16 May 2026",
    "12 ft 3X, 6 ft 4X, 3 ft 5X",
    "6 in 4X",
    "0X 0.011",
    "8X 0.003",
    "Glass",
    "Naked line",
    "Rod holder, swing",
    "Swing",
  ];
  expect(wanted.filter((text) => !words.includes(text))).toEqual([]);
  // 9 ft at 1.5 in/s is 72 s, over the longest count of 60 s.
  expect(words).toContain("72*");
});

test.each([
  [
    "plumb-a6",
    "shot",
    "shot names",
    withCells(rigsWith(LEADERS), () => ({
      text: "2 × Extra heavy moulded sinker",
      shot: [{ name: "X", count: 2, diameter_mm: 4 }],
    })),
  ],
  [
    "rig-a6",
    "a leader",
    "leader names",
    rigsWith([
      leader(
        "The long one of the old brown reel at the very back of the boat ".repeat(8),
        [12, 3],
        [6, 4],
        [3, 5],
      ),
    ]),
  ],
  [
    "rig-a6",
    "a line",
    "line names",
    {
      ...rigsWith(LEADERS),
      lines: rigsWith(LEADERS).lines.map((line) => ({
        ...line,
        name: "The slow clear one on the old brown reel ".repeat(9),
      })),
    },
  ],
] as const)("%s: %s with a name too long is named, not shrunk", async (slug, _what, field, rigs) => {
  const { misfits } = cardOf(slug, rigGuide({ rigs }));
  expect(misfits.map((misfit) => misfit.field)).toContain(field);
  const { problems, files } = await cardsOf(rigGuide({ rigs }));
  expect(problems.filter(({ card }) => card === slug).map(({ file }) => file)).toContain("rigs.yaml");
  expect([...files.keys()]).not.toContain(`${slug}.pdf`);
});

test("the small card holds the whole plumb table, a line a depth", () => {
  const guide = rigGuide();
  const { words } = cardOf("rig-5x3", guide);
  for (const { rows } of guide.rigs.plumb.depths)
    for (const { cells } of rows.filter(({ fly }) => fly === guide.rigs.plumb.fly))
      expect(words).toContain(cells.map(({ text, hold }) => `${text}${hold ? " h" : ""}`).join(" "));
});

test("the caution for lead shot stands first on both, with the agency it follows", () => {
  const always = rigGuide().cautions;
  const lead = { id: "lead", when: ["always" as const], short: "Read the lead rules.", agency: "An agency" };
  for (const { slug } of RIG_CARD_DESIGNS.filter(({ slug: one }) => one !== "plumb-a6")) {
    const { words } = cardOf(slug, rigGuide({ cautions: [...always, lead] }));
    expect(words).toContain("Read the lead rules. (An agency)");
    const jacket = words.indexOf("Wear the life jacket");
    expect(jacket === -1 || jacket > words.indexOf("Read the lead rules.")).toBe(true);
  }
});

describe("the files", () => {
  test("all are two pages of their real size, tagged, titled, with bookmarks", async () => {
    const { files } = await cardsOf(rigGuide());
    for (const [slug, [width, height]] of Object.entries(SIZES_MM)) {
      const text = need(files, `${slug}.pdf`).toString("latin1");
      const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      expect(boxes).toHaveLength(2);
      for (const [, wide, high] of boxes) {
        expect(Number(wide) * POINT_MM).toBeCloseTo(width, 2);
        expect(Number(high) * POINT_MM).toBeCloseTo(height, 2);
      }
      const keys = [
        "/Marked true",
        "/Lang (en)",
        "/DisplayDocTitle true",
        slug === "plumb-a6" ? "(Plumb card, front)" : "(Rig card, front)",
        slug === "plumb-a6" ? "(Plumb card, back)" : "(Rig card, back)",
      ];
      expect(keys.filter((key) => !text.includes(key))).toEqual([]);
    }
  });

  test("the text can be read out of the small one, leaders before countdowns", async () => {
    const { files } = await cardsOf(rigGuide());
    const words = await withPdf(need(files, "rig-5x3.pdf"), async (pdf) => pdf.getPage(1).getText());
    const places = ["Shallow", "Long", "Stout", "Glass", "0X"].map((word) => words.indexOf(word));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});
