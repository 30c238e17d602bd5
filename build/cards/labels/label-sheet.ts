import type { GuideFrame } from "../../guide/guide-frame.ts";
import { dayMonthYear } from "../../model/calendar.ts";
import { createColumn, type Ruler, run, setText } from "../layout/column.ts";
import type { Face, Overflow, Piece } from "../layout/page.ts";
import { LABEL, mm, SHEET_SIZES, type SheetName, STRONG } from "../layout/page.ts";
import { drawDecoration, drawFace } from "../pdf/card-pdf.ts";
import type { Fonts } from "../pdf/document.ts";
import { makeDocument } from "../pdf/document.ts";
import { BAR_MM, printerLine, sizeBar } from "../pdf/sheets.ts";

const ACROSS = 2;
const DOWN = 8;
const LABELS_PER_SHEET = ACROSS * DOWN;
const MARK = { gap_pt: mm(1.5), length_pt: mm(4) };
/** Arms of the crosses between labels: they lie on the cut itself. */
const CROSS_PT = mm(1.5);

/** Room for a sheet's heading, beside the bar. */
const HEADING_PT = ACROSS * LABEL.width_pt - mm(BAR_MM) - mm(5);

const headingText = (title: string, guide: GuideFrame, sheet: number, sheets: number): string =>
  `${title} as of ${dayMonthYear(guide.asOf)}: sheet ${sheet} of ${sheets}`;

const sheetsFor = (labels: number): number => Math.ceil(labels / LABELS_PER_SHEET);

/** What of a heading for so many labels cannot be set. */
export function headingOverflows(
  title: string,
  guide: GuideFrame,
  labels: number,
  ruler: Ruler,
): readonly Overflow[] {
  const column = createColumn(ruler, 0, HEADING_PT, 0);
  const last = sheetsFor(labels);
  setText(column, [run(headingText(title, guide, last, last), STRONG)], {
    role: "P",
    field: "trip names",
    maxLines: 1,
  });
  return column.misfits;
}

/** The lines to cut along, points from the sheet's top left corner. */
function cuts(sheet: SheetName) {
  const { width_pt, height_pt } = SHEET_SIZES[sheet];
  const left = (width_pt - ACROSS * LABEL.width_pt) / 2;
  const top = (height_pt - DOWN * LABEL.height_pt) / 2;
  return {
    xs: Array.from({ length: ACROSS + 1 }, (_, i) => left + i * LABEL.width_pt),
    ys: Array.from({ length: DOWN + 1 }, (_, i) => top + i * LABEL.height_pt),
  };
}

/** Marks outside the labels for the knife, crosses between them for scissors. */
function cutMarks(sheet: SheetName): Piece {
  const { xs, ys } = cuts(sheet);
  const { gap_pt, length_pt } = MARK;
  const [left = 0, right = 0, top = 0, bottom = 0] = [xs[0], xs.at(-1), ys[0], ys.at(-1)];
  const across = ys.flatMap((y) => [
    `M${left - gap_pt} ${y}h${-length_pt}`,
    `M${right + gap_pt} ${y}h${length_pt}`,
  ]);
  const down = xs.flatMap((x) => [
    `M${x} ${top - gap_pt}v${-length_pt}`,
    `M${x} ${bottom + gap_pt}v${length_pt}`,
  ]);
  const crosses = xs
    .slice(1, -1)
    .flatMap((x) =>
      ys
        .slice(1, -1)
        .map((y) => `M${x - CROSS_PT} ${y}h${2 * CROSS_PT}M${x} ${y - CROSS_PT}v${2 * CROSS_PT}`),
    );
  return { kind: "shape", path: [...across, ...down, ...crosses].join(""), stroke_pt: 0.4 };
}

/** What the person at the printer must know, above and below the labels. */
function sheetWords(sheet: SheetName, what: string): Piece[] {
  const { height_pt } = SHEET_SIZES[sheet];
  const { xs } = cuts(sheet);
  const [left = 0, right = 0] = [xs[0], xs.at(-1)];
  return [
    printerLine(what, left, mm(11), STRONG),
    printerLine(
      `Print on one side at 100 %. The bar at the top is ${BAR_MM} mm long when the size is right. Cut at the marks.`,
      left,
      height_pt - mm(9),
    ),
    sizeBar(right, mm(10)),
  ];
}

/** Labels at their real size on sheets to cut, in the order they are given. */
export function labelsPdf(
  guide: GuideFrame,
  {
    title,
    faces,
    sheet,
  }: { readonly title: string; readonly faces: readonly Face[]; readonly sheet: SheetName },
  fonts: Fonts,
): Promise<Buffer> {
  const { name, width_pt, height_pt } = SHEET_SIZES[sheet];
  const sheets = sheetsFor(faces.length);
  const asOf = dayMonthYear(guide.asOf);
  const words = {
    title: `${title} as of ${asOf}, ${name} sheets`,
    author: guide.club.name,
    asOf: guide.asOf,
  };
  const { xs, ys } = cuts(sheet);
  return makeDocument(words, fonts, (document, root) => {
    for (let i = 0; i < sheets; i++) {
      const onSheet = faces.slice(i * LABELS_PER_SHEET, (i + 1) * LABELS_PER_SHEET);
      const what = headingText(title, guide, i + 1, sheets);
      document.addPage({ size: [width_pt, height_pt], margin: 0 });
      document.outline.addItem(`${what}: ${[...new Set(onSheet.map((face) => face.title))].join(", ")}`);
      drawDecoration(document, [cutMarks(sheet), ...sheetWords(sheet, what)]);
      for (const [slot, face] of onSheet.entries()) {
        document.save();
        document.translate(xs[slot % ACROSS] ?? 0, ys[Math.floor(slot / ACROSS)] ?? 0);
        drawFace(document, root, face);
        document.restore();
      }
    }
  });
}
