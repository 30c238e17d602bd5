import type { GuideFrame } from "../guide/guide-frame.ts";
import { type CardFiles, type CardKind, cardFiles } from "./card-file.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import { CARDS_PER_SHEET } from "./imposition.ts";
import { A6, SHEET_NAMES } from "./paper.ts";
import { layoutReportSlip } from "./report-slip.ts";
import { sheetsPdfs } from "./sheets.ts";

const ALONE = "report-slip-a6";

/** The report slip alone, and a sheet full of them. */
export const REPORT_SLIPS: CardKind<{ guide: GuideFrame }> = {
  kind: "report slips",
  place: ({ guide }, { ruler }) => {
    const { front, back } = layoutReportSlip(guide, ruler);
    const slip = { name: "report slip", front: front.face, back: back.face };
    const cards = Array.from({ length: CARDS_PER_SHEET }, () => slip);
    return {
      problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(ALONE, misfit)),
      ink: async (fonts) => [
        await cardPdf(guide, [slip.front, slip.back], { title: "Report slip, A6,", paper: A6 }, fonts),
        ...(await sheetsPdfs(guide, { what: "Report slips", cards, count: cards.length }, fonts)),
      ],
    };
  },
};

export const planReportSlips = (guide: GuideFrame): CardFiles =>
  cardFiles(REPORT_SLIPS, [ALONE, ...SHEET_NAMES.map((sheet) => `report-slips-${sheet}`)], { guide });
