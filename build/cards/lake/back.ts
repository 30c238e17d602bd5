import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Caution, Guide, GuideLake } from "../../guide/guide-schema.ts";
import { dayMonthYear } from "../../model/calendar.ts";
import { byAgency, cardCautions, factsText, fetchText, noBreak, qrTarget } from "../card-words.ts";
import {
  addRule,
  addText,
  type Column,
  columnOverflow,
  countLines,
  createColumn,
  group,
  type Ruler,
  type Run,
  run,
  setText,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import type { FaceLayout, Part } from "../layout/page.ts";
import { ascent_pt, BOTTOM, LEFT, mm, SMALL, STRONG, TOP, WIDTH } from "../layout/page.ts";
import { type QrSymbol, QUIET_MODULES, qrSymbol } from "./qr-code.ts";

const QR_PT = mm(24);
/** Room for a pencil in a wet hand. */
const BLANK_ROW_PT = mm(6.5);
const BLANK_ROWS = { least: 2, most: 12 };
/** Ice, a life jacket, cold water, lightning and wind stand on every card, come what may. */
const LEAST_CAUTIONS = 5;
/** Height that each of the club's fields takes on an ordinary back. */
const USUAL_PT = { summary: 22, access: 22, hazards: 44, rules: 33, notice: 44 };

/** What the front leaves unsaid. */
const READING = "Days in brackets hold 8 chances in 10. Set: from fly to stop.";

function addFacts(column: Column, guide: GuideFrame, lake: GuideLake): void {
  const facts = factsText(lake, guide.club.units);
  addCardHead(column, guide.asOf, { title: lake.name, field: "name" });
  if (facts !== "") addText(column, [run(facts, SMALL)], { role: "P", field: "region" });
  if (lake.summary !== null) addText(column, [run(lake.summary, SMALL)], { role: "P", field: "summary" });
  if (lake.access !== null) {
    const opens =
      lake.access.opens === null ? "" : ` Road open from ${noBreak(dayMonthYear(lake.access.opens))}.`;
    addText(column, [run("Access  ", STRONG), run(`${lake.access.text}${opens}`, SMALL)], {
      role: "P",
      field: "access",
    });
  }
  column.y_pt += 3;
}

/** A warning triangle with a bar and a dot, drawn: the typeface has none. */
function triangle(x: number, baseline: number): string {
  const [top, base] = [baseline - 7, baseline + 0.6];
  return `M${x} ${base}L${x + 4.2} ${top}L${x + 8.4} ${base}ZM${x + 4.2} ${top + 2.6}V${baseline - 2}M${x + 4.2} ${baseline - 1.1}V${baseline - 0.4}`;
}

const WARNING_INDENT = 12;

function addWarning(column: Column, runs: readonly Run[], field: string): Part {
  column.decoration.push({
    kind: "shape",
    path: triangle(column.left_pt, column.y_pt + ascent_pt(SMALL)),
    stroke_pt: 0.8,
  });
  const body = setText(column, runs, { role: "LBody", field, indent_pt: WARNING_INDENT });
  return group("LI", [body]);
}

/** The lake's own hazards, then the standing cautions, each with the agency it follows. */
function addWarnings(column: Column, lake: GuideLake, cautions: readonly Caution[]): void {
  addRule(column, 0.6);
  column.y_pt += 2;
  const items = [
    ...lake.hazards.map((hazard) => addWarning(column, [run(hazard, STRONG)], "hazards")),
    ...byAgency(cautions).map(({ words, agency }) =>
      addWarning(column, [run(`${words} ${agency}`, SMALL)], "cautions"),
    ),
  ];
  column.parts.push(group("L", items));
  column.y_pt += 3;
}

function addRules(column: Column, { rules }: GuideLake): void {
  addRule(column, 0.6);
  column.y_pt += 2;
  const words =
    rules === null ? "Not noted for this lake: read the agency's own." : `${rules.text} Check again.`;
  const title = rules === null ? "Rules  " : `Rules as checked on ${dayMonthYear(rules.checked)}  `;
  addText(column, [run(title, STRONG), run(words, SMALL)], { role: "P", field: "rules" });
  column.y_pt += 3;
}

/** The wind's longest way over the water. */
function addFetch(column: Column, lake: GuideLake, units: Guide["club"]["units"]): void {
  const fetch = fetchText(lake, units);
  if (fetch === null) return;
  addText(column, [run(fetch, SMALL)], { role: "P", field: "shape" });
  column.y_pt += 3;
}

/** Columns to fill in by pencil, with their share of the width. */
const blankColumns = (units: Guide["club"]["units"]): readonly (readonly [string, number])[] => [
  ["Date", 0.17],
  [`Water ${units === "imperial" ? "°F" : "°C"}`, 0.17],
  [`Clear to ${units === "imperial" ? "ft" : "m"}`, 0.19],
  ["Depth that worked", 0.28],
  ["Fly", 0.19],
];

function addBlanks(column: Column, rows: number, units: Guide["club"]["units"]): void {
  const heads: Part[] = [];
  const top_pt = column.y_pt;
  let indent_pt = 0;
  const edges: number[] = [];
  for (const [title, share] of blankColumns(units)) {
    column.y_pt = top_pt;
    heads.push(
      setText(column, [run(title, SMALL)], {
        role: "TH",
        field: "blanks",
        indent_pt: indent_pt + 2,
        width_pt: share * WIDTH - 3,
      }),
    );
    edges.push(LEFT + indent_pt);
    indent_pt += share * WIDTH;
  }
  column.parts.push(group("Table", [group("TR", heads)]));
  const bottom_pt = column.y_pt + rows * BLANK_ROW_PT;
  const across = Array.from(
    { length: rows + 1 },
    (_, i) => `M${LEFT} ${column.y_pt + i * BLANK_ROW_PT}H${LEFT + WIDTH}`,
  );
  const down = edges.slice(1).map((x) => `M${x} ${column.y_pt}V${bottom_pt}`);
  column.decoration.push({ kind: "shape", path: [...across, ...down].join(""), stroke_pt: 0.5 });
  column.y_pt = bottom_pt;
}

function qrFigure(uri: string, symbol: QrSymbol, top_pt: number): Part {
  const module_pt = QR_PT / (symbol.modules + 2 * QUIET_MODULES);
  const inset_pt = QUIET_MODULES * module_pt;
  const path = symbol.pathAt(LEFT + inset_pt / 2, top_pt + inset_pt, module_pt);
  return { role: "Figure", alt: `QR code: ${uri}`, parts: [], pieces: [{ kind: "shape", path }] };
}

/** The QR code with what it opens beside it, and where the card comes from. */
function addFoot(column: Column, guide: GuideFrame, lake: GuideLake, symbol: QrSymbol): void {
  const { uri, label } = qrTarget(guide, lake);
  const top_pt = column.y_pt;
  const indent_pt = QR_PT + 2;
  column.parts.push(qrFigure(uri, symbol, column.y_pt));
  column.y_pt = top_pt + 4;
  const where = [run(`${label}  `, STRONG), run(uri, SMALL)];
  const lines = countLines(column, where, WIDTH - indent_pt) > 1 ? where.map((one) => [one]) : [where];
  for (const line of lines) addText(column, line, { role: "P", field: "baseUrl", indent_pt });
  addText(column, [run(`${guide.club.name}, ${guide.season}. ${guide.club.notice ?? ""}`, SMALL)], {
    role: "P",
    field: "notice",
    indent_pt,
  });
  addText(column, [run("Forecasts are estimates. ", STRONG), run(READING, SMALL)], {
    role: "P",
    field: "notice",
    indent_pt,
  });
  column.y_pt = Math.max(column.y_pt, top_pt + QR_PT);
}

interface BackExtent {
  readonly cautions: number;
  /** The map card has it too. */
  readonly fetch: boolean;
}

/** What to set, the fullest first. */
const extents = (cautions: number): BackExtent[] => [
  { cautions, fetch: true },
  ...Array.from({ length: Math.max(1, cautions - LEAST_CAUTIONS + 1) }, (_, i) => ({
    cautions: cautions - i,
    fetch: false,
  })),
];

/** Where shot, set and wait are to be read: they follow from the depth plumbed, not from the lake. */
const PLUMB_POINTER = "See the plumb card.";

/**
 * The back: facts, warnings, rules, wind, room to write, and the way to the lake's page. Of the cautions the most
 * pressing stand there, as many as fit; what is left over is room to write.
 */
export function layoutBack(guide: GuideFrame, lake: GuideLake, ruler: Ruler): FaceLayout {
  const { units } = guide.club;
  const symbol = qrSymbol(qrTarget(guide, lake).uri);
  const cautions = cardCautions(guide, lake);
  const set = (extent: BackExtent, blankRows: number): Column => {
    const column = createColumn(ruler, LEFT, WIDTH, TOP);
    addFacts(column, guide, lake);
    addWarnings(column, lake, cautions.slice(0, extent.cautions));
    addRules(column, lake);
    addText(column, [run("Set, shot, wait, rope  ", STRONG), run(PLUMB_POINTER, SMALL)], {
      role: "P",
      field: "rules",
    });
    column.y_pt += 3;
    if (extent.fetch) addFetch(column, lake, units);
    addBlanks(column, blankRows, units);
    addFoot(column, guide, lake, symbol);
    return column;
  };
  const spare_pt = (extent: BackExtent): number => BOTTOM - set(extent, BLANK_ROWS.least).y_pt;
  const extent = extents(cautions.length).find((one) => spare_pt(one) >= 0) ?? {
    cautions: LEAST_CAUTIONS,
    fetch: false,
  };
  const rows = BLANK_ROWS.least + Math.max(0, Math.floor(spare_pt(extent) / BLANK_ROW_PT));
  const column = set(extent, Math.min(BLANK_ROWS.most, rows));
  return {
    face: { title: `${lake.name}, back`, parts: column.parts, decoration: column.decoration },
    misfits: [...column.misfits, ...columnOverflow(column, BOTTOM, USUAL_PT)],
  };
}
