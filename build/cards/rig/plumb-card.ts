import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide } from "../../guide/guide-schema.ts";
import {
  ballSizeText,
  depthGlance,
  depthText,
  depthUnit,
  rounded,
  smallLengthText,
  toBase,
} from "../../model/units.ts";
import { LOCAL_RULES_TEXT, noBreak } from "../card-words.ts";
import {
  addRule,
  addText,
  type Column,
  createColumn,
  group,
  missingGlyphs,
  ROUNDING_PT,
  type Ruler,
  run,
} from "../layout/column.ts";
import { addCardHead, addTable, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import {
  A6,
  ascent_pt,
  CARD_MARGIN_PT,
  type FaceLayout,
  frameOf,
  GLANCE,
  leading_pt,
  mm,
  NUMBER,
  type Overflow,
  type Part,
  type Piece,
  SMALL,
  STRONG,
  type TypeStyle,
} from "../layout/page.ts";

type Plumb = Guide["rigs"]["plumb"];
type Depth = Plumb["depths"][number];
type Row = Depth["rows"][number];
type Cell = Row["cells"][number];

const FRAME = frameOf(A6, CARD_MARGIN_PT);
/** Digits of the waits and ropes. */
const DIGITS: TypeStyle = { font: "regular", size_pt: 12 };
const DIGITS_BOLD: TypeStyle = { font: "bold", size_pt: 12 };
const LIGHT: TypeStyle = { font: "regular", size_pt: 10.5 };
const LIGHT_BOLD: TypeStyle = { font: "bold", size_pt: 10.5 };

/** Left edges of the card's columns, from the frame's left. */
const AT = {
  staff: 0,
  depth: mm(3),
  set: mm(15.5),
  board: mm(27.5),
  shot: mm(42),
  wait: mm(80),
  rope: mm(89),
  right: FRAME.width_pt,
} as const;
const SHOT_PT = (AT.wait - AT.shot) / 3;
const HEAD_PT = 41;
const FOOT_PT = 59;

/** What is placed on the card. */
interface Canvas {
  readonly ruler: Ruler;
  readonly parts: Part[];
  readonly decoration: Piece[];
  readonly misfits: Overflow[];
}

interface Spot {
  /** From the frame's left. */
  readonly x_pt: number;
  /** Of the baseline. */
  readonly y_pt: number;
  readonly width_pt: number;
  readonly align?: "left" | "middle" | "right";
}

const SHIFT = { left: 0, middle: 0.5, right: 1 } as const;

/** A line of text in a box, and a misfit where it is too wide for it. */
function textAt(
  { ruler, misfits }: Canvas,
  text: string,
  style: TypeStyle,
  { x_pt, y_pt, width_pt, align = "middle" }: Spot,
  field = "rig",
): Piece {
  const free_pt = width_pt - ruler.width_pt(text, style);
  misfits.push(...missingGlyphs([run(text, style)], field, ruler));
  if (free_pt < -ROUNDING_PT)
    misfits.push({
      field,
      message: `“${text}” does not fit its box of the plumb card`,
      hint: `Shorten ${field}.`,
    });
  return {
    kind: "text",
    text,
    x_pt: FRAME.left_pt + x_pt + free_pt * SHIFT[align],
    y_pt,
    style,
    reversed: false,
  };
}

const cell = (role: "TH" | "TD", pieces: readonly Piece[]): Part => ({ role, pieces, parts: [] });
const rule = (x1: number, y: number, x2: number): string =>
  `M${FRAME.left_pt + x1} ${y}H${FRAME.left_pt + x2}`;
const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** "70+ s", "35–70". */
const secondsText = ({ from_s, to_s }: Plumb["columns"][number]): string =>
  to_s === null ? `${rounded(from_s)}+ s` : `${rounded(from_s)}–${rounded(to_s)} s`;

/** The shot of a cell at true size, its name below; where it must be held, name and "hold" in a heavy box. */
function shotCell(
  canvas: Canvas,
  { text, shot, hold, tooQuick }: Cell,
  left_pt: number,
  top_pt: number,
  height_pt: number,
): Part {
  const spot = (y_pt: number): Spot => ({ x_pt: left_pt + 1, y_pt: top_pt + y_pt, width_pt: SHOT_PT - 2 });
  if (tooQuick)
    return cell("TD", [
      textAt(canvas, "too", SMALL, spot(height_pt / 2 - 2)),
      textAt(canvas, "quick", SMALL, spot(height_pt / 2 + 9)),
    ]);
  if (shot.length === 0) return cell("TD", [textAt(canvas, text, DIGITS, spot(height_pt / 2 + 4))]);
  const name = noBreak(text.replace(" × ", "\u00a0×\u00a0"));
  if (hold) {
    canvas.decoration.push({
      kind: "shape",
      path: `M${FRAME.left_pt + left_pt + 1.2} ${top_pt + 1.2}h${SHOT_PT - 2.4}v${height_pt - 2.4}h${-(SHOT_PT - 2.4)}Z`,
      stroke_pt: 2,
    });
    return cell("TD", [
      textAt(canvas, name, LIGHT, spot(height_pt / 2 - 1), "shot names"),
      textAt(canvas, "hold", STRONG, spot(height_pt / 2 + 11)),
    ]);
  }
  const balls = shot.flatMap(({ count, diameter_mm }) =>
    Array.from({ length: count }, () => mm(diameter_mm) / 2),
  );
  const widest_pt = balls.reduce((sum, r) => sum + 2 * r, 0) + (balls.length - 1) * 0.8;
  let x = FRAME.left_pt + left_pt + (SHOT_PT - widest_pt) / 2;
  for (const r of balls) {
    canvas.decoration.push({ kind: "shape", path: circle(x + r, top_pt + 8, r) });
    x += 2 * r + 0.8;
  }
  return cell("TD", [textAt(canvas, name, LIGHT, spot(height_pt - 6), "shot names")]);
}

/** Two numbers one above the other, and a word below where there is one. */
function stacked(
  canvas: Canvas,
  lines: readonly (readonly [text: string, style: TypeStyle])[],
  { x_pt, width_pt, align }: Omit<Spot, "y_pt">,
  top_pt: number,
  height_pt: number,
): Part {
  const leads = lines.map(([, style]) => leading_pt(style));
  let y_pt = top_pt + (height_pt - leads.reduce((sum, lead) => sum + lead, 0)) / 2;
  return cell(
    "TD",
    lines.map(([text, style], i) => {
      const piece = textAt(canvas, text, style, {
        x_pt,
        width_pt,
        align: align ?? "middle",
        y_pt: y_pt + ascent_pt(style),
      });
      y_pt += leads[i] ?? 0;
      return piece;
    }),
  );
}

const waitLines = ({ wait }: Row): [string, TypeStyle][] =>
  wait === null
    ? [["–", DIGITS]]
    : wait.long
      ? [
          [rounded(wait.from_s), LIGHT],
          [rounded(wait.to_s), LIGHT_BOLD],
          ["long", SMALL],
        ]
      : [
          [rounded(wait.from_s), DIGITS],
          [rounded(wait.to_s), DIGITS_BOLD],
        ];

function addHead(canvas: Canvas, guide: GuideFrame): void {
  const { plumb, rod_m } = guide.rigs;
  const { units } = guide.club;
  const [top, unit] = [FRAME.top_pt, depthUnit(units)];
  const whole = { x_pt: 0, width_pt: FRAME.width_pt };
  canvas.parts.push({
    role: "H1",
    parts: [],
    pieces: [
      textAt(canvas, "Plumb, read across", GLANCE, { ...whole, y_pt: top + 13, align: "left" }),
      textAt(canvas, `for a ${plumb.fly}`, STRONG, { ...whole, y_pt: top + 13, align: "right" }),
    ],
  });
  const y = top + 18;
  canvas.decoration.push({ kind: "shape", path: rule(0, y, AT.right), stroke_pt: 1.6 });
  const head = (x_pt: number, width_pt: number, lines: readonly (readonly [string, TypeStyle])[]): Part =>
    cell(
      "TH",
      lines.map(([text, style], i) => textAt(canvas, text, style, { x_pt, width_pt, y_pt: y + 22 + i * 11 })),
    );
  canvas.parts.push({
    role: "P",
    parts: [],
    pieces: [
      textAt(canvas, `shot, by foam past a ${depthText(rod_m, units)} rod`, SMALL, {
        x_pt: AT.board,
        width_pt: AT.wait - AT.board + mm(6),
        y_pt: y + 10,
        align: "right",
      }),
    ],
  });
  canvas.parts.push(
    group("TR", [
      head(AT.staff, AT.set - AT.staff, [
        ["depth", SMALL],
        [unit, SMALL],
      ]),
      head(AT.set, AT.board - AT.set, [
        ["set", SMALL],
        [unit, SMALL],
      ]),
      head(AT.board, AT.shot - AT.board, [
        ["board", SMALL],
        ["float", SMALL],
      ]),
      ...plumb.columns.map((column, i) =>
        head(AT.shot + i * SHOT_PT, SHOT_PT, [
          [column.condition, STRONG],
          [secondsText(column), SMALL],
        ]),
      ),
      head(AT.wait, AT.rope - AT.wait, [
        ["wait", SMALL],
        ["s", SMALL],
      ]),
      head(AT.rope, AT.right - AT.rope, [
        ["rope", SMALL],
        [unit, SMALL],
      ]),
    ]),
  );
}

/** A depth's row for the fly the table is for. */
const tableRow = ({ rows }: Depth, { fly }: Plumb): Row | undefined => rows.find((row) => row.fly === fly);

/** Board and indicator of a row; rows that share both share a box. */
const boardKey = (depth: Depth, plumb: Plumb): string =>
  `${depth.board} ${tableRow(depth, plumb)?.indicator_mm}`;

/** A name broken at spaces and behind hyphens into lines that fit. */
function brokenName(name: string, width_pt: number, ruler: Ruler): string[] {
  const lines: string[] = [];
  for (const word of name.split(/(?<=[ -])/)) {
    const last = lines.at(-1);
    if (last !== undefined && ruler.width_pt((last + word).trimEnd(), STRONG) <= width_pt)
      lines[lines.length - 1] = last + word;
    else lines.push(word);
  }
  return lines.map((line) => line.trimEnd());
}

function addBoards(
  canvas: Canvas,
  depths: readonly Depth[],
  guide: GuideFrame,
  top_pt: number,
  row_pt: number,
): Part[] {
  const { plumb } = guide.rigs;
  const width_pt = AT.shot - AT.board - 3;
  const keys = depths.map((depth) => boardKey(depth, plumb));
  const parts: Part[] = [];
  depths.forEach((depth, i) => {
    if (i > 0 && keys[i - 1] === keys[i]) return;
    const after = depths.findIndex((_, k) => k > i && keys[k] !== keys[i]);
    const rows = (after < 0 ? depths.length : after) - i;
    const size = tableRow(depth, plumb)?.indicator_mm ?? null;
    const names = depth.board === null ? ["none", "fits"] : brokenName(depth.board, width_pt, canvas.ruler);
    const lines: [string, TypeStyle][] = [
      ...names.map((line): [string, TypeStyle] => [line, STRONG]),
      ...(size === null ? [] : ([[ballSizeText(size, guide.club.units), SMALL]] as [string, TypeStyle][])),
    ];
    const first_pt = top_pt + i * row_pt + (rows * row_pt - lines.length * 11) / 2 + 8;
    parts.push(
      cell(
        "TD",
        lines.map(([text, style], k) =>
          textAt(
            canvas,
            text,
            style,
            { x_pt: AT.board + 1.5, width_pt, y_pt: first_pt + k * 11 },
            "leader names",
          ),
        ),
      ),
    );
    if (i > 0)
      canvas.decoration.push({
        kind: "shape",
        path: rule(AT.board, top_pt + i * row_pt, AT.shot),
        stroke_pt: 1.6,
      });
  });
  return parts;
}

/** The words under the table, a line each. */
function footLines({ rigs, club }: GuideFrame): readonly (readonly [lead: string, rest: string])[] {
  const chop_s = rounded(rigs.plumb.columns.at(-1)?.from_s ?? 0);
  return [
    ["Set", "fly to stop, for the depth just plumbed."],
    [
      "Shot",
      `${smallLengthText(toBase(18, "in", "length"), club.units)} above the fly. Foam under ${chop_s} s: shelter.`,
    ],
    ["Hold", "the line still, or the fly lifts. On one anchor: bow to the waves."],
    ["Wait", "above, slack thrown; below, tight line. Float upright: down."],
    ["Rope", "above, calm and ripple; below, chop. Shot: local rules first."],
  ];
}

/** The front: what to set, pinch on and wait, by the depth just plumbed. Inks nothing. */
export function layoutPlumbFront(guide: GuideFrame, ruler: Ruler): FaceLayout {
  const canvas: Canvas = { ruler, parts: [], decoration: [], misfits: [] };
  const { units } = guide.club;
  const { depths } = guide.rigs.plumb;
  addHead(canvas, guide);
  const top_pt = FRAME.top_pt + 18 + HEAD_PT - 4;
  const row_pt = (FRAME.bottom_pt - FOOT_PT - top_pt) / Math.max(1, depths.length);
  canvas.decoration.push({ kind: "shape", path: rule(0, top_pt, AT.right), stroke_pt: 1.6 });
  const boards = addBoards(canvas, depths, guide, top_pt, row_pt);
  const rows = depths.map((depth, i): Part => {
    const y = top_pt + i * row_pt;
    const middle_pt = y + row_pt / 2;
    const row = tableRow(depth, guide.rigs.plumb);
    if (i > 0)
      canvas.decoration.push({
        kind: "shape",
        path: rule(AT.staff, y, AT.board) + rule(AT.shot, y, AT.right),
        stroke_pt: 0.5,
      });
    canvas.decoration.push({
      kind: "shape",
      path: `M${FRAME.left_pt} ${y}h${mm(2.4)}v${row_pt}h${-mm(2.4)}Z`,
      ...(i % 2 === 0 ? {} : { stroke_pt: 0.6 }),
    });
    const spot = (x_pt: number, right_pt: number, down_pt: number): Spot => ({
      x_pt,
      width_pt: right_pt - x_pt,
      y_pt: middle_pt + down_pt,
    });
    return group("TR", [
      cell("TH", [textAt(canvas, depthGlance(depth.depth_m, units), NUMBER, spot(AT.depth, AT.set, 7.5))]),
      cell("TD", [
        textAt(
          canvas,
          depth.set_m === null ? "–" : depthGlance(depth.set_m, units),
          GLANCE,
          spot(AT.set, AT.board, 5),
        ),
      ]),
      ...(row === undefined
        ? [
            cell("TD", [
              textAt(
                canvas,
                depth.set_m === null ? "too shallow" : "no board",
                SMALL,
                spot(AT.shot, AT.wait, 3),
              ),
            ]),
          ]
        : [
            ...row.cells.map((one, k) => shotCell(canvas, one, AT.shot + k * SHOT_PT, y, row_pt)),
            stacked(canvas, waitLines(row), { x_pt: AT.wait, width_pt: AT.rope - AT.wait }, y, row_pt),
          ]),
      stacked(
        canvas,
        [0, 2].map((k): [string, TypeStyle] => [depthGlance(depth.rope[k]?.length_m ?? 0, units), LIGHT]),
        { x_pt: AT.rope, width_pt: AT.right - AT.rope, align: "right" },
        y,
        row_pt,
      ),
    ]);
  });
  canvas.parts.push(group("Table", [...rows, group("TR", boards)]));
  const bottom_pt = top_pt + depths.length * row_pt;
  canvas.decoration.push({ kind: "shape", path: rule(0, bottom_pt, AT.right), stroke_pt: 1.6 });
  for (const x of [AT.board, AT.shot, AT.wait])
    canvas.decoration.push({
      kind: "shape",
      path: `M${FRAME.left_pt + x} ${top_pt}V${bottom_pt}`,
      stroke_pt: 0.8,
    });
  const foot = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, bottom_pt + 4);
  for (const [lead, rest] of footLines(guide))
    addText(foot, [run(`${lead} `, STRONG), run(rest, SMALL)], { role: "P", field: "rig", maxLines: 1 });
  return {
    face: {
      title: "Plumb card, front",
      parts: [...canvas.parts, ...foot.parts],
      decoration: [...canvas.decoration, ...foot.decoration],
    },
    misfits: [...canvas.misfits, ...foot.misfits],
  };
}

/** The other classes of fly, each a table of shot by depth and condition. */
function addOtherFlies(column: Column, { rigs, club }: GuideFrame): void {
  const { plumb } = rigs;
  const others = [...new Set(plumb.depths.flatMap(({ rows }) => rows.map(({ fly }) => fly)))].filter(
    (fly) => fly !== plumb.fly,
  );
  for (const fly of others) {
    addText(
      column,
      [
        run(`${fly.charAt(0).toUpperCase()}${fly.slice(1)}  `, STRONG),
        run("shot, and the wait in calm", SMALL),
      ],
      {
        role: "H2",
        field: "rig",
      },
    );
    const each_pt = (column.width_pt - 28 - 54) / plumb.columns.length;
    addTable(
      column,
      [
        [
          headCell(depthUnit(club.units), SMALL),
          ...plumb.columns.map(({ condition }) => headCell(condition, STRONG)),
          headCell("wait, s", SMALL),
        ],
        ...plumb.depths.map(({ depth_m, rows }) => {
          const row = rows.find((one) => one.fly === fly);
          return [
            headCell(depthGlance(depth_m, club.units), STRONG),
            ...plumb.columns.map(({ condition }) => {
              const found = row?.cells.find((one) => one.condition === condition);
              return dataCell(
                found === undefined ? "–" : `${found.text}${found.hold ? ", hold" : ""}`,
                SMALL,
              );
            }),
            dataCell(waitText(row?.wait ?? null), SMALL),
          ];
        }),
      ],
      { tracks: tableTracks([28, ...plumb.columns.map(() => each_pt), 54]), field: "shot names" },
    );
    column.y_pt += 3;
  }
}

/** "35–70", and `long` behind a wait that is. */
export function waitText(wait: Row["wait"], long = " long"): string {
  if (wait === null) return "–";
  const [from, to] = [rounded(wait.from_s), rounded(wait.to_s)];
  return `${from === to ? to : `${from}–${to}`}${wait.long ? long : ""}`;
}

/** Longest sets for a boat that drifts. */
function addDrifting(column: Column, { rigs: { drifting, rod_m }, club: { units } }: GuideFrame): void {
  if (drifting === null) return;
  addText(
    column,
    [
      run("Drifting boat  ", STRONG),
      run(
        `longest set, ${depthUnit(units)}, by the seconds in which the boat passes one rod (${noBreak(depthText(rod_m, units))})`,
        SMALL,
      ),
    ],
    { role: "H2", field: "rig" },
  );
  const head_pt = 48;
  const each_pt = (column.width_pt - head_pt) / drifting.columns.length;
  addTable(
    column,
    [
      [headCell("", SMALL), ...drifting.columns.map((rod_s) => headCell(`${rounded(rod_s)} s`, SMALL))],
      ...drifting.rows.map(({ text, sets }) => [
        headCell(text, STRONG),
        ...sets.map(({ set_m, whole }) => dataCell(`${depthGlance(set_m, units)}${whole ? "+" : ""}`, SMALL)),
      ]),
    ],
    { tracks: tableTracks([head_pt, ...drifting.columns.map(() => each_pt)]), field: "shot names" },
  );
}

/** The back: lighter and heavier flies, the drifting boat, what the words of the columns mean. */
export function fillPlumbBack(column: Column, guide: GuideFrame): void {
  const { plumb } = guide.rigs;
  addCardHead(column, guide.asOf, { title: "Other flies, drifting boat", field: "rig" });
  addOtherFlies(column, guide);
  addDrifting(column, guide);
  column.y_pt += 3;
  addRule(column, 0.6);
  column.y_pt += 2;
  const looks = plumb.columns.map(({ condition, looks: words }) => `${condition}: ${words}`).join("; ");
  for (const [lead, words] of [
    ["Time foam, a bubble or a leaf past the rod. ", `${looks.charAt(0).toUpperCase()}${looks.slice(1)}.`],
    [
      "A planning aid, timed on no real lake. ",
      "If the leader streams from a held float, one step up. Heavier fly: a step less.",
    ],
    [LOCAL_RULES_TEXT, ""],
  ] as const)
    addText(column, [run(lead, STRONG), run(words, SMALL)], { role: "P", field: "rig" });
}
