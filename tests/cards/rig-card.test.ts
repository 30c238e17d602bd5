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

const shotNamed = (rigs: Rigs, text: string): Rigs => ({
  ...rigs,
  shot: {
    ...rigs.shot,
    rows: rigs.shot.rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell) => ({ ...cell, text, problem: null })),
    })),
  },
});

describe.each(Object.keys(SIZES_MM))("%s", (slug) => {
  test("all lettering is large enough, 3 mm from the edge, and clear of other lettering", () => {
    const card = cardOf(slug, rigGuide());
    expect([card.misfits, card.faults]).toEqual([[], []]);
  });

  test("depths, drifts, countdowns and set depths can be read at a glance", () => {
    const { faces } = cardOf(slug, rigGuide());
    const large = faces
      .flatMap(textsOf)
      .filter((piece) => xHeight_mm(piece) >= LEGIBLE.glance_mm)
      .map(({ text }) => text);
    // 6, 12 and 18 ft at 1.5 in/s are 48, 96 and 144 s. Long: 9 ft knotted of 21 ft, half a foot from either end.
    expect(large).toEqual(expect.arrayContaining(["6", "12", "18", "120", "60", "20", "48", "96", "144"]));
    expect(large).toContain("9.5–20.5");
  });

  test("it holds every table: shot, leaders, tippet by the rule of 11, countdown, settling and swing", () => {
    const { words } = cardOf(slug, rigGuide());
    const wanted = [
      "Shot against drift",
      "as of 16 May 2026",
      "Count the seconds in which the indicator drifts one rod length (9 ft)",
      "A planning aid: lower the rig beside the boat",
      "12 ft 3X, 6 ft 4X, 3 ft 5X",
      "0X 0.011",
      "1X 0.010",
      "8X 0.003",
      "Glass",
      "Settle: Fly alone",
      "Swing",
    ];
    expect(wanted.filter((text) => !words.includes(text))).toEqual([]);
  });

  test("every row of shot is the guide's own, cell by cell", () => {
    const guide = rigGuide();
    const { words } = cardOf(slug, guide);
    const rows = guide.rigs.shot.rows.filter((_, i) => slug === "rig-a6" || i % 2 === 1);
    for (const { cells } of rows)
      expect(words).toContain(cells.map(({ text }) => text.replaceAll(" + ", " ")).join(" "));
  });

  test("swing: R/u ln(tan(phi/2) / tan 5 degrees) seconds, in minutes, by drift", () => {
    const { words } = cardOf(slug, rigGuide());
    // 12 m of line, a rod of 9 ft, 60 degrees: 60 s a rod length is 0.0457 m/s, so 495 s, about 8 min.
    const minutes = [120, 60, 30].map((rod_s) => {
      const speed_mps = (9 * 0.3048) / rod_s;
      const seconds = (12 / speed_mps) * Math.log(Math.tan(Math.PI / 6) / Math.tan(Math.PI / 36));
      return `${Math.round(seconds / 60)} min`;
    });
    if (slug === "rig-5x3")
      for (const [i, rod_s] of [120, 60, 30].entries()) expect(words).toContain(`${minutes[i]} at ${rod_s}`);
    else {
      const row = /60°((?: \d+ (?:min|s))+)/.exec(words)?.[1];
      for (const text of minutes) expect(row).toContain(text);
    }
  });

  test("a longer box shows as many rows as fit and says in words how many there are", () => {
    const many = Array.from({ length: 9 }, (_, i) => leader(`Board ${i}`, [9 + i, 3], [2, 4], [2, 5]));
    const { words, misfits, faults } = cardOf(slug, rigGuide({ rigs: rigsWith(many) }));
    expect([misfits, faults]).toEqual([[], []]);
    expect(words).toContain(`Leader, ${slug === "rig-a6" ? 6 : 4} of 9`);
    expect(words).toContain("more: rigs page");
  });

  test("no box with short names overfills a card, however many pieces of shot a cell names", () => {
    const line = rigsWith(LEADERS).lines[1];
    if (line === undefined) throw new Error("no line");
    const boxes = fc.record({
      leaders: fc.integer({ min: 0, max: 9 }),
      lines: fc.integer({ min: 0, max: 7 }),
      cells: fc.array(fc.constantFrom("none", "BB", "2 × No. 4 + AB", "AB + No. 1 + No. 4"), {
        minLength: 36,
        maxLength: 36,
      }),
    });
    fc.assert(
      fc.property(boxes, ({ leaders, lines, cells }) => {
        const rigs = rigsWith(
          Array.from({ length: leaders }, (_, i) => leader(`Board ${i}`, [12, 3], [6.5, 4], [3.5, 5])),
        );
        const { shot } = rigs;
        const rows = shot.rows.map((row, i) => ({
          ...row,
          cells: row.cells.map((cell, j) => ({ ...cell, problem: null, text: cells[6 * i + j] ?? "none" })),
        }));
        const change: Rigs = {
          ...rigs,
          shot: { ...shot, rows },
          lines: Array.from({ length: lines }, (_, i) => ({ ...line, name: `Line ${i}` })),
        };
        const card = cardOf(slug, rigGuide({ rigs: change }));
        expect([card.misfits, card.faults]).toEqual([[], []]);
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    [
      "shot",
      "shot names",
      shotNamed(rigsWith(LEADERS), "3 × Extra heavy moulded sinker + 2 × Extra fine moulded sinker"),
    ],
    [
      "a leader",
      "leader names",
      rigsWith([
        leader(
          "The long one of the old brown reel that stands at the very back of the boat ".repeat(6),
          [12, 3],
          [6, 4],
          [3, 5],
        ),
      ]),
    ],
    [
      "a line",
      "line names",
      {
        ...rigsWith(LEADERS),
        lines: rigsWith(LEADERS).lines.map((line) => ({
          ...line,
          name: "The slow clear one on the old brown reel ".repeat(4),
        })),
      },
    ],
  ] as const)("%s with a name too long is named, not shrunk", async (_what, field, rigs) => {
    const { misfits } = cardOf(slug, rigGuide({ rigs }));
    expect(misfits.map((misfit) => misfit.field)).toContain(field);
    const { problems, files } = await cardsOf(rigGuide({ rigs }));
    expect(problems.filter(({ card }) => card === slug).map(({ file }) => file)).toContain("rigs.yaml");
    expect([...files.keys()]).not.toContain(`${slug}.pdf`);
  });
});

test("the small card says that it leaves out depths, and the deepest is on it", () => {
  expect(cardOf("rig-5x3", rigGuide()).words).toContain(
    "Every other depth only: between two, take the deeper.",
  );
  expect(cardOf("rig-a6", rigGuide()).words).not.toContain("Every other depth");
});

test("the caution for lead shot stands first on both, with the agency it follows", () => {
  const always = rigGuide().cautions;
  const lead = { id: "lead", when: ["always" as const], short: "Read the lead rules.", agency: "An agency" };
  for (const { slug } of RIG_CARD_DESIGNS) {
    const { words } = cardOf(slug, rigGuide({ cautions: [...always, lead] }));
    expect(words).toContain("Read the lead rules. (An agency)");
    const jacket = words.indexOf("Wear the life jacket");
    expect(jacket === -1 || jacket > words.indexOf("Read the lead rules.")).toBe(true);
  }
});

describe("the files", () => {
  test("both are two pages of their real size, tagged, titled, with bookmarks", async () => {
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
        "(Rig card, front)",
        "(Rig card, back)",
      ];
      expect(keys.filter((key) => !text.includes(key))).toEqual([]);
    }
  });

  test("the text can be read out of the small one, leaders before countdowns", async () => {
    const { files } = await cardsOf(rigGuide());
    const words = await withPdf(need(files, "rig-5x3.pdf"), async (pdf) => pdf.getPage(1).getText());
    const places = ["Shallow", "Long", "Stout", "Glass", "0X", "Swing"].map((word) => words.indexOf(word));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});
