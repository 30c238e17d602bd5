import type { GuideFrame } from "../guide/guide-frame.ts";
import type { BareLake, Caution } from "../guide/guide-schema.ts";
import { CARD } from "../model/addresses.ts";
import { dayMonth } from "../model/calendar.ts";
import { DAY_STATES, type DayState, STATE_WORDS } from "../model/phase.ts";
import { chanceNumber, depthText, temperatureText, type UnitSystem } from "../model/units.ts";
import { STOP_C, TAKE_CARE_C } from "../model/warm-water.ts";
import { type CardFiles, type CardKind, cardFiles, overflowProblem } from "./card-kind.ts";
import { agencyText, noBreak } from "./card-words.ts";
import { addRule, addText, type Column, type Ruler, run } from "./layout/column.ts";
import {
  addCardHead,
  addTable,
  type Cell,
  dataCell,
  headCell,
  tableTracks,
} from "./layout/head-and-table.ts";
import { A6, CARD_MARGIN_PT, type FaceLayout, frameOf, SMALL, STRONG } from "./layout/page.ts";
import { cardPdf } from "./pdf/card-pdf.ts";
import { addParagraph, fits, layoutSide } from "./rig/rig-card.ts";

/** What a launch card shows of a lake, with a forecast or without. */
type LaunchLake = Pick<BareLake, "slug" | "name" | "hazards" | "launch">;
type LaunchRow = LaunchLake["launch"]["rows"][number];
type LaunchCell = LaunchRow["cells"][number];

const ROW_HEAD_PT = 74;
const GAP_PT = 4;
const NO_SAFE_ICE = "Local rules and licensed instruction come first. This card says nothing about safe ice.";

const letterOf = (state: DayState): string => STATE_WORDS[state].name.charAt(0);

const rowHead = ({ clarity, below }: LaunchRow): Cell => ({
  role: "TH",
  lines: [
    [run(clarity ?? "not looked", STRONG)],
    [run(below === null ? "surface only" : `${below} below`, SMALL)],
  ],
});

const columnHead = ({ surface_C, heat }: LaunchCell, units: UnitSystem): Cell => ({
  role: "TH",
  lines: [
    [run(noBreak(temperatureText(surface_C, units)), STRONG)],
    ...(heat === "take care" ? [[run("take", SMALL)], [run("care", SMALL)]] : []),
  ],
});

function chanceCell({ heat, states, mixedSigns }: LaunchCell): Cell {
  if (heat === "stop") return dataCell("STOP", STRONG);
  return {
    role: "TD",
    lines: [
      ...states.map(({ state, chance }) => [
        run(noBreak(`${letterOf(state)} ${chanceNumber(chance)}`), STRONG),
      ]),
      ...(mixedSigns ? [[run("mixed", SMALL)]] : []),
    ],
  };
}

/** The states that a table names, in the order of a spring. */
function statesIn({ rows }: LaunchLake["launch"]): DayState[] {
  const named = rows.flatMap(({ cells }) => cells.flatMap(({ states }) => states.map(({ state }) => state)));
  return DAY_STATES.filter((state) => named.includes(state));
}

function addFront(column: Column, guide: GuideFrame, { name, launch }: LaunchLake): void {
  const { units } = guide.club;
  const [first] = launch.rows;
  const columns = first?.cells ?? [];
  addCardHead(column, guide.asOf, { title: name, side: "at the launch", field: "name" });
  const rest_pt = (column.width_pt - ROW_HEAD_PT) / Math.max(1, columns.length);
  addTable(
    column,
    [
      [headCell("Surface", SMALL), ...columns.map((cell) => columnHead(cell, units))],
      ...launch.rows.map((row) => [rowHead(row), ...row.cells.map(chanceCell)]),
    ],
    { tracks: tableTracks([ROW_HEAD_PT, ...columns.map(() => rest_pt)]), field: "launch", uprights: true },
  );
  addRule(column, 1);
  column.y_pt += GAP_PT;
  for (const state of statesIn(launch)) {
    const { name: title, advice } = STATE_WORDS[state];
    addText(
      column,
      [
        run(`${letterOf(state)}  ${title}. `, STRONG),
        run(`${advice}${state === "iceOff" ? " Stay off ice that is left." : ""}`, SMALL),
      ],
      {
        role: "P",
        field: "launch",
      },
    );
  }
  addText(column, [run("STOP  ", STRONG), run("Leave the trout alone.", SMALL)], {
    role: "P",
    field: "launch",
  });
  column.y_pt += GAP_PT;
  addParagraph(
    column,
    "Numbers are chances in a hundred. Two states: the second is near. Mixed: neither is as likely as not.",
    "launch",
  );
}

/** Where two depths lie a degree apart the lake has layers at most temperatures of spring. Common practice, no source. */
const COLDER = { imperial: "2 °F", metric: "1 °C" } as const;

/** What to do at the launch, step by step. */
const steps = (depth_m: number, units: UnitSystem): readonly (readonly [string, string])[] => [
  [
    "1 Look",
    "Lower a white disc in the shade of the boat: murky is when it is lost at about 65 % of its usual depth (Secchi depth), usual when it is not.",
  ],
  [
    "2 Below",
    `Take the temperature at ${noBreak(depthText(depth_m, units))}: colder is by ${noBreak(COLDER[units])} or more under the surface, same is less.`,
  ],
  [
    "3 Surface",
    "Take it an arm’s length down, in the shade. Between two columns the warmer one’s warning holds.",
  ],
];

/** The standing cautions of an open lake, the most pressing first; the limits of warm water stand above them. */
const launchCautions = ({ cautions }: GuideFrame, states: readonly DayState[]): Caution[] =>
  cautions.filter(
    ({ id, when }) =>
      id !== "warm-water" && when.some((state) => state === "always" || states.some((own) => own === state)),
  );

function addBack(column: Column, guide: GuideFrame, lake: LaunchLake, bottom_pt: number): void {
  const { units } = guide.club;
  const { launch } = lake;
  const heat = (limit_C: number): string => noBreak(temperatureText(limit_C, units));
  addCardHead(column, guide.asOf, { title: lake.name, side: "how to read it", field: "name" });
  for (const [step, words] of steps(launch.depth_m, units))
    addText(column, [run(`${step}  `, STRONG), run(words, SMALL)], { role: "P", field: "launch" });
  column.y_pt += GAP_PT;
  addParagraph(
    column,
    launch.counted
      ? `For ${dayMonth(guide.asOf)} and the days about it: the days since ice-off count too.`
      : "The readings alone: no ice-off is counted from.",
    "launch",
  );
  column.y_pt += GAP_PT;
  addRule(column, 0.6);
  column.y_pt += GAP_PT;
  addText(
    column,
    [
      run(`From ${heat(TAKE_CARE_C)} take care: `, STRONG),
      run("land them fast, keep them in the water. ", SMALL),
      run(`From ${heat(STOP_C)} STOP. `, STRONG),
      run("Do not catch trout to release them. Local closures come first.", SMALL),
    ],
    { role: "P", field: "launch" },
  );
  column.y_pt += GAP_PT;
  addText(column, [run(NO_SAFE_ICE, STRONG)], { role: "P", field: "cautions" });
  column.y_pt += GAP_PT;
  addRule(column, 0.6);
  column.y_pt += GAP_PT;
  for (const hazard of lake.hazards) addText(column, [run(hazard, STRONG)], { role: "P", field: "hazards" });
  for (const { short, agency } of launchCautions(guide, statesIn(launch))) {
    const runs = [run(`${short} ${agencyText(agency)}`, SMALL)];
    if (fits(column, runs, bottom_pt)) addText(column, runs, { role: "P", field: "cautions" });
  }
}

/** Height that the lake's own words take on an ordinary card. */
const USUAL_PT = { name: 44, hazards: 44 };

/** Both sides: the table with what its letters mean, then how to read the water, and what is to be heeded. */
export function layoutLaunchCard(
  guide: GuideFrame,
  lake: LaunchLake,
  ruler: Ruler,
): { front: FaceLayout; back: FaceLayout } {
  const frame = frameOf(A6, CARD_MARGIN_PT);
  return {
    front: layoutSide(`${lake.name}, at the launch`, frame, ruler, USUAL_PT, (column) =>
      addFront(column, guide, lake),
    ),
    back: layoutSide(`${lake.name}, how to read it`, frame, ruler, USUAL_PT, (column) =>
      addBack(column, guide, lake, frame.bottom_pt),
    ),
  };
}

/** One lake's launch card. */
export const LAUNCH_CARDS: CardKind<{ guide: GuideFrame; lake: LaunchLake }> = {
  kind: "launch cards",
  place: ({ guide, lake }, { ruler }) => {
    const { front, back } = layoutLaunchCard(guide, lake, ruler);
    return {
      problems: [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(lake.slug, misfit)),
      ink: async (fonts) => [
        await cardPdf(
          guide,
          [front.face, back.face],
          { title: `${lake.name}: launch card`, paper: A6 },
          fonts,
        ),
      ],
    };
  },
};

export const planLaunchCard = (guide: GuideFrame, { slug, name, hazards, launch }: LaunchLake): CardFiles =>
  cardFiles(LAUNCH_CARDS, [CARD.launch(slug)], { guide, lake: { slug, name, hazards, launch } });
