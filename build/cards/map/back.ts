import { paperInk } from "../../draw/ink.ts";
import { windRose } from "../../draw/map/wind-rose.ts";
import { anchorPlan } from "../../draw/rig/anchor-plan.ts";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { LOCAL_RULES_TEXT } from "../card-words.ts";
import {
  addDrawing,
  addRule,
  addText,
  type Column,
  columnOverflow,
  createColumn,
  ROUNDING_PT,
  type Ruler,
  run,
} from "../layout/column.ts";
import { addCardHead, addTable, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import type { FaceLayout } from "../layout/page.ts";
import { BOTTOM, LEFT, SMALL, STRONG, TOP, WIDTH } from "../layout/page.ts";
import { addLight, longestFetchText, placeCautions, sidesText, waveTexts } from "./words-and-light.ts";

type Wind = NonNullable<GuideLake["place"]["wind"]>;
type Direction = Wind["directions"][number];

/** How much is set, from the fullest layout down to the least that must be there. */
interface Extent {
  readonly winds: (direction: Direction, place: number, wind: Wind) => boolean;
  /** How many angles of the rod holder are explained. */
  readonly holders: number;
}
const eight: Extent["winds"] = (_, place) => place % 2 === 0;
const four: Extent["winds"] = (_, place) => place % 4 === 0;
const alongLongest: Extent["winds"] = ({ from }, _, { longest }) => longest.along.includes(from);
const LEAST: Extent = { winds: alongLongest, holders: 0 };
const EXTENTS: readonly Extent[] = [
  { winds: eight, holders: 2 },
  { winds: eight, holders: 1 },
  { winds: eight, holders: 0 },
  { winds: four, holders: 2 },
  { winds: four, holders: 1 },
  { winds: four, holders: 0 },
];

const ROSE_PT = 80;
const WIND_PT = 31;
const RODS_PT = 26;
const ANCHOR_PT = 92;
const GAP_PT = 0.5;
const BESIDE_PT = 5;

/** A part of the column's width, from its present height on. */
const beside = (column: Column, indent_pt: number, width_pt: number): Column => ({
  ...column,
  left_pt: column.left_pt + indent_pt,
  width_pt,
});

/** The rose; beside it the longest fetch and, wind by wind, the shores and where rods point. */
function addWinds(
  column: Column,
  lake: GuideLake,
  wind: Wind,
  { units }: Guide["club"],
  isShown: Extent["winds"],
): void {
  const rose = windRose(lake, { ink: paperInk, units, width: ROSE_PT, bare: true });
  const left = beside(column, 0, ROSE_PT);
  if (rose !== null) addDrawing(left, rose);
  const right = beside(column, ROSE_PT + BESIDE_PT, column.width_pt - ROSE_PT - BESIDE_PT);
  addText(right, [run("Longest ", STRONG), run(longestFetchText(wind, units), SMALL)], {
    role: "P",
    field: "shape",
  });
  const side_pt = (right.width_pt - WIND_PT - RODS_PT) / 2;
  addTable(
    right,
    [
      [
        headCell("Wind", STRONG),
        headCell("Sheltered", SMALL),
        headCell("Washed", SMALL),
        headCell("Rods", STRONG),
      ],
      ...wind.directions
        .filter((direction, i) => isShown(direction, i, wind))
        .map(({ from, rods, sheltered, washed }) => [
          headCell(from, STRONG),
          dataCell(sidesText(sheltered.sides), SMALL),
          dataCell(sidesText(washed.sides), SMALL),
          dataCell(rods, STRONG),
        ]),
    ],
    { tracks: tableTracks([WIND_PT, side_pt, side_pt, RODS_PT]), field: "shape" },
  );
  column.y_pt = Math.max(left.y_pt, right.y_pt) + GAP_PT;
}

function addWaves(column: Column, wind: Wind, { units }: Guide["club"]): void {
  addRule(column, 0.6);
  column.y_pt += 1;
  addText(column, [run("Single waves: nearly twice as high.", STRONG)], {
    role: "P",
    field: "shape",
  });
  for (const { forces, boats } of waveTexts(wind, units))
    addText(column, [run(`${forces}  `, STRONG), run(boats, SMALL)], { role: "P", field: "shape" });
  column.y_pt += GAP_PT;
}

/** How the boat lies: a drawing, with its description beside it. */
function addAnchor(column: Column, { rigs: { anchor } }: GuideFrame, holders: number): void {
  addRule(column, 0.6);
  column.y_pt += 1;
  const left = beside(column, 0, ANCHOR_PT);
  addDrawing(left, anchorPlan({ ink: paperInk, width: ANCHOR_PT }));
  const right = beside(column, ANCHOR_PT + BESIDE_PT, column.width_pt - ANCHOR_PT - BESIDE_PT);
  for (const { name, words } of anchor.moorings)
    addText(right, [run(`${name}  `, STRONG), run(words, SMALL)], { role: "P", field: "anchor" });
  column.y_pt = Math.max(left.y_pt, right.y_pt);
  for (const { name, words } of anchor.holders.slice(0, holders))
    addText(column, [run(`Rod holder, ${name}  `, STRONG), run(words, SMALL)], {
      role: "P",
      field: "anchor",
    });
  column.y_pt += GAP_PT;
}

function addCautions(column: Column, guide: GuideFrame): void {
  addRule(column, 0.6);
  column.y_pt += 1;
  const cautions = placeCautions(guide).map(({ words, agency }) => `${words} ${agency} `);
  const last = [run(LOCAL_RULES_TEXT, STRONG), run(" Anchoring: common practice, no source.", SMALL)];
  for (const words of cautions.slice(0, -1))
    addText(column, [run(words, SMALL)], { role: "P", field: "cautions" });
  addText(column, [...cautions.slice(-1).map((words) => run(words, SMALL)), ...last], {
    role: "P",
    field: "cautions",
  });
}

/**
 * The wind, what it does to boats, how they lie at anchor and, where the front has no room for it, the light; less of
 * it where words run long.
 */
export function layoutMapBack(
  guide: GuideFrame,
  lake: GuideLake,
  wind: Wind,
  { ruler, withLight }: { readonly ruler: Ruler; readonly withLight: boolean },
): FaceLayout {
  const set = ({ winds, holders }: Extent): Column => {
    const column = createColumn(ruler, LEFT, WIDTH, TOP);
    addCardHead(column, guide.asOf, {
      title: lake.name,
      side: withLight ? "wind and light" : "wind",
      field: "name",
    });
    addWinds(column, lake, wind, guide.club, winds);
    addWaves(column, wind, guide.club);
    addAnchor(column, guide, holders);
    if (withLight) {
      addLight(column, guide, lake);
      column.y_pt += GAP_PT;
    }
    addCautions(column, guide);
    return column;
  };
  const fits = ({ y_pt }: Column): boolean => y_pt <= BOTTOM + ROUNDING_PT;
  const fullest = EXTENTS.find((extent) => fits(set(extent))) ?? LEAST;
  const column = set(fullest);
  return {
    face: { title: `${lake.name}, wind`, parts: column.parts, decoration: column.decoration },
    misfits: [...column.misfits, ...columnOverflow(column, BOTTOM, { name: 20, cautions: 90 })],
  };
}
