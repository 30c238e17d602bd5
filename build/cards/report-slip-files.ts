import type { Guide } from "../guide/guide-schema.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import { CARDS_PER_SHEET } from "./imposition.ts";
import { A6, SHEET_NAMES } from "./paper.ts";
import type { Planned } from "./planned.ts";
import { layoutReportSlip } from "./report-slip.ts";
import { sheetsPdf } from "./sheets.ts";

/** The report slip alone, and a sheet full of them. */
export function planReportSlips(guide: Guide, ruler: Ruler): Planned[] {
  const { front, back } = layoutReportSlip(guide, ruler);
  const slip = { name: "report slip", front: front.face, back: back.face };
  const sheetful = Array.from({ length: CARDS_PER_SHEET }, () => slip);
  return [
    {
      name: "report-slip-a6",
      problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf("report-slip-a6", misfit)),
      make: (fonts) =>
        cardPdf(guide, [slip.front, slip.back], { title: "Report slip, A6,", paper: A6 }, fonts),
    },
    ...SHEET_NAMES.map(
      (sheet): Planned => ({
        name: `report-slips-${sheet}`,
        problems: [],
        make: (fonts) => sheetsPdf(guide, "Report slips", sheetful, sheet, fonts),
      }),
    ),
  ];
}
