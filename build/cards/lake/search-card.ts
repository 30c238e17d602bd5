import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideLake } from "../../guide/guide-schema.ts";
import { phaseName } from "../../model/phase.ts";
import { depthGlance, depthUnit, elapsedText, rounded } from "../../model/units.ts";
import { LOCAL_RULES_TEXT, leadingPhase, noBreak } from "../card-words.ts";
import {
  addRule,
  addText,
  type Column,
  countLines,
  createColumn,
  group,
  type Ruler,
  type Run,
  run,
  setText,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import {
  A6,
  ascent_pt,
  CARD_MARGIN_PT,
  type FaceLayout,
  frameOf,
  GLANCE,
  mm,
  type Part,
  SMALL,
  STRONG,
  type TypeStyle,
} from "../layout/page.ts";

type Search = GuideLake["search"][number];
type Plan = Search["byRods"][number];
type Step = Plan["steps"][number];

const FRAME = frameOf(A6, CARD_MARGIN_PT);
/** The staff of ten-minute bands between the two rods. */
const STAFF_PT = mm(7);
const BLOCK_PT = (FRAME.width_pt - STAFF_PT - 8) / 2;
const BAND_MIN = 10;
/** A box for a pencil. */
const BOX_PT = mm(4.5);
const PLACE_PT = 15;
/** Lower turns have room for one line, and for two small ones. */
const SHORT_TURN_PT = 23;
const TALL_TURN_PT = 31;
const RODS_PT = 12;
const FOOT_PT = 38;

/** The search to print for a lake: that of the phase at hand, else of the best weeks, else of the first. */
export const cardSearch = (lake: GuideLake): Search | undefined =>
  lake.search.find(({ phase }) => phase === leadingPhase(lake)) ??
  lake.search.find(({ phase }) => phase === "post-turnover") ??
  lake.search[0];

const planFor = ({ byRods }: Search, rods: number): Plan | undefined =>
  byRods.find((one) => one.rods === rods);

const placeText = (lake: GuideLake, name: string): string => {
  const at = lake.places.find((place) => place.name === name)?.at ?? null;
  return at === null ? name : `${name}, ${at}`;
};

const box = (x: number, y: number, side: number): string => `M${x} ${y}h${side}v${side}h${-side}Z`;

/** One rod's turn, as tall as it lasts: depth, when to leave it, a box, and the fly. */
function addTurn(column: Column, step: Step, guide: GuideFrame, height_pt: number): Part {
  const { left_pt, width_pt, y_pt: top_pt } = column;
  column.decoration.push({
    kind: "shape",
    path: `M${left_pt} ${top_pt}h${width_pt}v${height_pt}h${-width_pt}Z`,
    stroke_pt: 1.2,
  });
  const box_pt = Math.min(BOX_PT, height_pt - 6);
  column.decoration.push({
    kind: "shape",
    path: box(left_pt + width_pt - box_pt - 3, top_pt + 3, box_pt),
    stroke_pt: 1,
  });
  const { units } = guide.club;
  const depthRuns = (style: TypeStyle): Run[] => [
    run(`${depthGlance(step.depth_m, units)} `, style),
    run(`${depthUnit(units)}  `, SMALL),
  ];
  const until = run(noBreak(`until ${elapsedText(step.until_min)}`), STRONG);
  const line = (
    runs: readonly Run[],
    down_pt: number,
    field: string,
    width = width_pt - BOX_PT - 8,
  ): Part => {
    column.y_pt = top_pt + down_pt;
    return setText(column, runs, { role: "TD", field, indent_pt: 4, width_pt: width, maxLines: 1 });
  };
  if (height_pt < SHORT_TURN_PT)
    return group("TR", [line([...depthRuns(STRONG), run(step.name, SMALL)], height_pt / 2 - 6, "patterns")]);
  if (height_pt < TALL_TURN_PT)
    return group("TR", [
      line([...depthRuns(STRONG), until], 1, "places"),
      line([run(step.name, SMALL)], 12, "patterns"),
    ]);
  return group("TR", [
    line([...depthRuns(GLANCE), until], 0, "places"),
    line([run(step.name, SMALL)], ascent_pt(GLANCE) + 3, "patterns", width_pt - 8),
  ]);
}

/** Places in the order fished, each with its turns. */
function visits({ steps }: Plan): { name: string; from_min: number; until_min: number; turns: Step[] }[] {
  return [...new Set(steps.map(({ place }) => place))].map((name) => {
    const turns = steps.filter(({ place }) => place === name);
    return {
      name,
      turns,
      from_min: Math.min(...turns.map(({ from_min }) => from_min)),
      until_min: Math.max(...turns.map(({ until_min }) => until_min)),
    };
  });
}

/** The front: two rods side by side, time running down a staff. */
export function layoutSearchFront(
  guide: GuideFrame,
  lake: GuideLake,
  search: Search,
  ruler: Ruler,
): FaceLayout {
  const column = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, FRAME.top_pt);
  addCardHead(column, guide.asOf, {
    title: lake.name,
    side: `search, ${phaseName(search.phase).toLowerCase()}`,
    field: "name",
  });
  const plan = planFor(search, 2);
  const places = plan === undefined ? [] : visits(plan);
  const first = places[0];
  addText(
    column,
    [
      run(`1 ${first === undefined ? "" : placeText(lake, first.name)}  `, STRONG),
      run(noBreak(`two rods, ${elapsedText(search.day_min)}; began ____ : ____`), SMALL),
    ],
    { role: "H2", field: "places", maxLines: 2 },
  );
  const top_pt = column.y_pt + RODS_PT;
  const rods = [0, BLOCK_PT + STAFF_PT + 8].map((indent_pt, i) =>
    setText({ ...column, y_pt: column.y_pt }, [run(`Rod ${i + 1}`, STRONG)], {
      role: "TH",
      field: "places",
      indent_pt: indent_pt + BLOCK_PT / 2 - 14,
    }),
  );
  const perMin_pt = (FRAME.bottom_pt - FOOT_PT - top_pt) / search.day_min;
  const staff_pt = FRAME.left_pt + BLOCK_PT + 4;
  const bands = Array.from({ length: Math.ceil(search.day_min / BAND_MIN) }, (_, i) => i).filter(
    (i) => i % 2 === 0,
  );
  column.decoration.push({
    kind: "shape",
    path: bands
      .map(
        (i) =>
          `M${staff_pt} ${top_pt + i * BAND_MIN * perMin_pt}h${STAFF_PT}v${BAND_MIN * perMin_pt}h${-STAFF_PT}Z`,
      )
      .join(""),
  });
  column.decoration.push({
    kind: "shape",
    path: `M${staff_pt} ${top_pt}h${STAFF_PT}v${search.day_min * perMin_pt}h${-STAFF_PT}Z`,
    stroke_pt: 0.8,
  });
  const rows: Part[] = [group("TR", rods)];
  for (const [i, { name, from_min, turns }] of places.entries()) {
    if (i > 0) {
      const move = { ...column, y_pt: top_pt + from_min * perMin_pt - search.move_min * perMin_pt };
      move.y_pt += Math.max(0, (search.move_min * perMin_pt - PLACE_PT) / 2) + 2;
      const left = elapsedText(places[i - 1]?.until_min ?? 0);
      const full = [run(`${left}: up anchor, ${name}`, STRONG)];
      const words = countLines(move, full, BLOCK_PT) === 1 ? full : [run(`${left}: ${name}`, STRONG)];
      rows.push(
        setText(move, words, { role: "TH", field: "places", width_pt: BLOCK_PT, maxLines: 1 }),
        setText(
          { ...move, y_pt: move.y_pt - 11 },
          [run(`${rounded(search.move_min)} min: move, plumb`, SMALL)],
          { role: "TD", field: "places", indent_pt: BLOCK_PT + STAFF_PT + 8, maxLines: 1 },
        ),
      );
    }
    for (const turn of turns) {
      const side: Column = {
        ...column,
        left_pt: FRAME.left_pt + (turn.rod === 1 ? 0 : BLOCK_PT + STAFF_PT + 8),
        width_pt: BLOCK_PT,
        y_pt: top_pt + turn.from_min * perMin_pt,
      };
      rows.push(addTurn(side, turn, guide, (turn.until_min - turn.from_min) * perMin_pt));
    }
  }
  column.parts.push(group("Table", rows));
  column.y_pt = FRAME.bottom_pt - FOOT_PT + 4;
  for (const [lead, words] of [
    ["A take: stay, ", "and copy that rod. Nothing by the time: leave."],
    ["Set, shot and wait: ", `the plumb card. A change costs ${rounded(search.change_min)} min.`],
    [LOCAL_RULES_TEXT, ""],
  ] as const)
    addText(column, [run(lead, STRONG), run(words, SMALL)], { role: "P", field: "places", maxLines: 1 });
  return {
    face: { title: `${lake.name}, search`, parts: column.parts, decoration: column.decoration },
    misfits: column.misfits,
  };
}

/** A plan as a list with boxes. */
function addList(column: Column, { rods, steps }: Plan, lake: GuideLake, guide: GuideFrame): void {
  addText(column, [run(rods === 1 ? "One rod" : `${rods} rods`, STRONG)], { role: "H2", field: "places" });
  for (const { name, turns } of visits({ rods, steps })) {
    addText(column, [run(placeText(lake, name), STRONG)], { role: "P", field: "places", indent_pt: 4 });
    for (const { rod, depth_m, name: fly, until_min } of turns) {
      column.decoration.push({
        kind: "shape",
        path: box(column.left_pt + 6, column.y_pt + 2, 7.5),
        stroke_pt: 0.8,
      });
      addText(
        column,
        [
          run(rods === 1 ? "" : `rod ${rod}  `, SMALL),
          run(noBreak(`${depthGlance(depth_m, guide.club.units)} ${depthUnit(guide.club.units)} `), STRONG),
          run(`${fly}, until ${noBreak(elapsedText(until_min))}`, SMALL),
        ].filter(({ text }) => text !== ""),
        { role: "P", field: "patterns", indent_pt: 18, maxLines: 1 },
      );
    }
  }
  column.y_pt += 3;
}

/** The back: the same for one rod and for three. */
export function layoutSearchBack(
  guide: GuideFrame,
  lake: GuideLake,
  search: Search,
  ruler: Ruler,
): FaceLayout {
  const column = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, FRAME.top_pt);
  addCardHead(column, guide.asOf, { title: lake.name, side: "search, 1 and 3 rods", field: "name" });
  for (const rods of [1, 3]) {
    const plan = planFor(search, rods);
    if (plan !== undefined) addList(column, plan, lake, guide);
  }
  addRule(column, 0.6);
  column.y_pt += 2;
  addText(
    column,
    [
      run("A take: stay, and copy that rod. ", STRONG),
      run("Times count from the first cast. A plan from common practice, not from reports of places.", SMALL),
    ],
    { role: "P", field: "places" },
  );
  const over_pt = column.y_pt - FRAME.bottom_pt;
  return {
    face: { title: `${lake.name}, search, back`, parts: column.parts, decoration: column.decoration },
    misfits: [
      ...column.misfits,
      ...(over_pt > 0
        ? [{ field: "places", message: "too many places and depths", hint: "Name fewer places or depths." }]
        : []),
    ],
  };
}
