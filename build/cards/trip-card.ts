import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideLake, GuideTrip } from "../guide/guide-schema.ts";
import { tellLines } from "../guide/trip-tell.ts";
import type { Outing } from "../guide/when-schema.ts";
import { dayRange, weekdayDayMonth } from "../model/calendar.ts";
import { chanceNumber, chanceText, hoursText } from "../model/units.ts";
import { frameOf } from "./card-frame.ts";
import { addCardHead } from "./card-head.ts";
import { byAgency, whole } from "./card-words.ts";
import { addRule, addText, type Column } from "./column.ts";
import { type Ruler, type Run, run } from "./flow.ts";
import { A6, CARD_MARGIN_PT, mm } from "./paper.ts";
import { addGrid, data, head, tracksOf } from "./rig-card-grid.ts";
import { noticeText, recipeText } from "./rig-card-words.ts";
import { type Block, layoutSides } from "./sides.ts";
import { dayChance, eitherText, lightSpan, packingText, rigLines, seatTexts } from "./trip-card-words.ts";
import { ascent_pt, GLANCE, SMALL, STRONG } from "./type-styles.ts";

const FIELD = "trip names";
const GAP_PT = 1.5;
/** Free height above the rule that begins a list. */
const RULE_GAP_PT = 3;
/** Days in one piece of the table; a longer trip's table may go on overleaf. */
const DAYS_TOGETHER = 7;
const DAY_PT = 58;
const LIGHT_PT = 68;
const EITHER_PT = 38;
/** Room for a pencil on each line to fill in. */
const BLANK_PT = mm(7);
const TELL_LABEL_PT = 72;

/** What a trip's card may see: the roads to the lakes as well. */
type TripGuide = GuideFrame & { readonly lakes: readonly Pick<GuideLake, "slug" | "access">[] };

const words = (column: Column, runs: readonly Run[], role: "P" | "H2" = "P"): void =>
  addText(column, runs, { role, field: FIELD });

function addHead(column: Column, guide: GuideFrame, trip: GuideTrip, side: number): void {
  const at = side === 1 ? {} : { side: whole(`side ${side}`) };
  addCardHead(column, guide.asOf, { title: trip.name, ...at, field: FIELD });
  if (side === 1) words(column, [run(whole(dayRange(trip.from, trip.to)), STRONG)]);
}

function addLake(column: Column, label: string, { name, good }: Pick<Outing, "name" | "good">): void {
  const top_pt = column.y_pt;
  column.y_pt = top_pt + ascent_pt(GLANCE) - ascent_pt(SMALL);
  words(column, [run(label, SMALL)]);
  column.y_pt = top_pt;
  addText(column, [run(`${name}  `, GLANCE), run(whole(chanceText(good)), GLANCE)], {
    role: "P",
    field: FIELD,
    indent_pt: 40,
  });
}

const pickBlock =
  ({ lakes }: TripGuide, { pick }: GuideTrip): Block =>
  (column) => {
    if (pick === null) {
      words(column, [run("No lake can be reached on these days.", STRONG)]);
      return;
    }
    addLake(column, "Go to", pick);
    if (pick.fallback !== null) {
      addLake(column, "Or else", pick.fallback);
      words(column, [run(eitherText(pick.either), STRONG)]);
    }
    const travels = [pick, pick.fallback].flatMap((lake) => {
      const travel_h = lakes.find(({ slug }) => slug === lake?.slug)?.access?.travel_h ?? null;
      return lake === null || travel_h === null ? [] : [`${lake.name} ${whole(hoursText(travel_h))}`];
    });
    if (travels.length > 0) words(column, [run("Way there  ", STRONG), run(`${travels.join(", ")}.`, SMALL)]);
  };

/** Odds of the two lakes and light, some days at a time. */
function dayBlocks(trip: GuideTrip): Block[] {
  const { pick, days } = trip;
  if (pick === null) return [];
  const lakes = [pick, ...(pick.fallback === null ? [] : [pick.fallback])];
  const parts = Array.from({ length: Math.ceil(days.length / DAYS_TOGETHER) }, (_, i) =>
    days.slice(i * DAYS_TOGETHER, (i + 1) * DAYS_TOGETHER),
  );
  return parts.map((part) => (column) => {
    const either_pt = lakes.length > 1 ? EITHER_PT : 0;
    const each_pt = (column.width_pt - DAY_PT - LIGHT_PT - either_pt) / lakes.length;
    const both = lakes.length > 1;
    addGrid(
      column,
      [
        [
          head("% good", SMALL),
          ...lakes.map(({ name }) => head(name, STRONG)),
          ...(both ? [head("One of both", SMALL)] : []),
          head("First to last light", SMALL),
        ],
        ...part.map((day) => [
          head(whole(weekdayDayMonth(day.date)), STRONG),
          ...lakes.map(({ slug }) => data(dayChance(day, slug), GLANCE)),
          ...(both ? [data(chanceNumber(day.either), STRONG)] : []),
          data(lightSpan(trip, day.date), STRONG),
        ]),
      ],
      {
        tracks: tracksOf([DAY_PT, ...lakes.map(() => each_pt), ...(both ? [EITHER_PT] : []), LIGHT_PT]),
        field: FIELD,
      },
    );
  });
}

/** A list's name, under a rule unless it stands first on its side. */
function addTitle(column: Column, title: string, isFirst: boolean): void {
  if (!isFirst) {
    column.y_pt += RULE_GAP_PT;
    addRule(column, 0.6);
    column.y_pt += 2;
  }
  words(column, [run(title, STRONG)], "H2");
}

/** A heading and its first line, then a block for each other line, so that no heading stands alone. */
function listBlocks(title: string, lines: readonly (readonly Run[])[]): Block[] {
  return lines.map((line, i) => (column, isFirst) => {
    if (i === 0) addTitle(column, title, isFirst);
    words(column, line);
  });
}

const leaderLines = (guide: GuideFrame, { gear }: GuideTrip): Run[][] =>
  gear.boards.boards.map(({ leader, needed, tie }) => [
    run(`${tie === 0 ? "None to tie" : `Tie ${tie}`} ${leader.name}  `, STRONG),
    run(`${recipeText(leader, guide)}; ${needed} needed.`, SMALL),
  ]);

const tellBlock =
  (trip: GuideTrip): Block =>
  (column, isFirst) => {
    addTitle(column, "Who to tell: fill in, and leave with someone ashore", isFirst);
    for (const { label, given } of tellLines(trip)) {
      const top_pt = column.y_pt;
      column.y_pt = top_pt + BLANK_PT - 12;
      const line_pt = column.y_pt;
      words(column, [run(label, SMALL)]);
      if (given !== null) {
        column.y_pt = line_pt;
        addText(column, [run(whole(given), STRONG)], { role: "P", field: FIELD, indent_pt: TELL_LABEL_PT });
      }
      column.y_pt = top_pt + BLANK_PT;
      const { left_pt, width_pt } = column;
      column.decoration.push({
        kind: "shape",
        path: `M${left_pt + TELL_LABEL_PT} ${column.y_pt}H${left_pt + width_pt}`,
        stroke_pt: 0.5,
      });
    }
  };

const cautionLines = ({ cautions }: GuideFrame, trip: GuideTrip): Run[][] =>
  byAgency(cautions.filter(({ id }) => trip.cautions.includes(id))).map(({ words: said, agency }) => [
    run(`${said} `, STRONG),
    run(agency, SMALL),
  ]);

/** Everything on a trip's card, on two sides or as many as it takes. Inks nothing. */
export function layoutTripCard(guide: TripGuide, trip: GuideTrip, ruler: Ruler) {
  const pair = [trip.pick?.slug, trip.pick?.fallback?.slug];
  const rigs = trip.gear.lakes
    .filter(({ slug }) => pair.includes(slug))
    .flatMap((lake) => rigLines(lake, guide));
  return layoutSides(
    [
      [
        pickBlock(guide, trip),
        ...dayBlocks(trip),
        ...listBlocks(
          "Who sits where",
          seatTexts(trip).map((text) => [run(`${text}.`, SMALL)]),
        ),
        ...listBlocks("Leaders to have tied", leaderLines(guide, trip)),
        ...listBlocks(
          "Rigs",
          rigs.map(({ strong, words: how }) => [run(`${strong}. `, STRONG), run(how, SMALL)]),
        ),
      ],
      [
        ...listBlocks("Cautions: local rules and licensed instruction come first", cautionLines(guide, trip)),
        tellBlock(trip),
        ...listBlocks(
          "Packing",
          trip.packing.map((group) => [run(`${group.group}  `, STRONG), run(packingText(group), SMALL)]),
        ),
        (column) => words(column, [run(noticeText(guide), SMALL)]),
      ],
    ],
    {
      frame: frameOf(A6, CARD_MARGIN_PT),
      ruler,
      head: (column, side) => addHead(column, guide, trip, side),
      title: (side) => `${trip.name}, side ${side}`,
      field: FIELD,
      gap_pt: GAP_PT,
    },
  );
}
