import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideLake, GuideTrip } from "../../guide/guide-schema.ts";
import { fishableText, floatPlanLines } from "../../guide/trip-words.ts";
import type { Outing } from "../../guide/when-schema.ts";
import { clockText, dayRange, weekdayDayMonth } from "../../model/calendar.ts";
import { phaseName } from "../../model/phase.ts";
import { chanceNumber, chanceText, hoursText } from "../../model/units.ts";
import { byAgency, cardRigs, noBreak, rigNumber, rigText } from "../card-words.ts";
import { addRule, addText, type Column, type Ruler, type Run, run } from "../layout/column.ts";
import { addCardHead, addTable, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import { A6, ascent_pt, CARD_MARGIN_PT, frameOf, GLANCE, mm, SMALL, STRONG } from "../layout/page.ts";
import { noticeText, recipeText } from "../rig/rig-tables.ts";
import { type Block, layoutSides } from "./sides.ts";

type Day = GuideTrip["days"][number];
type Group = GuideTrip["packing"][number];
type GearLake = GuideTrip["gear"]["lakes"][number];

/** A lake's chance on a day, in percent; nothing where its road is closed. */
function dayChance({ lakes }: Day, slug: string): string {
  const row = lakes.find((lake) => lake.slug === slug);
  if (row === undefined) return "";
  return row.open ? chanceNumber(row.good) : "closed";
}

/** "05:03–21:03", or what to say of a day without. */
function lightSpan({ light }: GuideTrip, date: Day["date"]): string {
  const row = light.find((one) => one.date === date);
  if (row === undefined) return "";
  const { firstLight, lastLight } = row;
  return firstLight === null || lastLight === null
    ? row.sun
    : `${clockText(firstLight)}–${clockText(lastLight)}`;
}

/** "One of the two over 99 %, mean over the days." */
const eitherText = (either: number): string =>
  `One of the two ${noBreak(chanceText(either))}, mean over the days.`;

/** "The pram: Ines, Tobin". */
function seatTexts({ boats, people, ashore }: GuideTrip): string[] {
  if (boats.length === 0) return people.length === 0 ? [] : [people.join(", ")];
  return [
    ...boats.map(({ name, seats, aboard }) =>
      aboard.length === 0
        ? `${name}, ${noBreak(`seats ${seats}`)}`
        : `${name}: ${aboard.map(noBreak).join(", ")}`,
    ),
    ...(ashore.length === 0 ? [] : [`No seat for ${ashore.map(noBreak).join(", ")}`]),
  ];
}

/** The rigs to build for a lake, a line each: the phase and its number, and how. */
function rigLines(
  { name, phases }: GearLake,
  { club }: GuideFrame,
): { readonly strong: string; readonly words: string }[] {
  return phases.flatMap((plan) =>
    cardRigs(plan).map((rig) => {
      const { label, value } = rigNumber(rig, plan.band, club.units);
      return {
        strong: `${name}, ${phaseName(plan.phase).toLowerCase()}: ${label.toLowerCase()} ${noBreak(value)}`,
        words: rigText(rig),
      };
    }),
  );
}

/** "4 life jackets; 2 throw lines": what to pack of a group, without the reasons. */
const packingText = ({ items }: Group): string =>
  `${items.map(({ count, item }) => `${count}\u00a0${item}`).join("; ")}.`;

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
  const at = side === 1 ? {} : { side: noBreak(`side ${side}`) };
  addCardHead(column, guide.asOf, { title: trip.name, ...at, field: FIELD });
  if (side === 1) words(column, [run(noBreak(dayRange(trip.from, trip.to)), STRONG)]);
}

function addLake(column: Column, label: string, { name, good }: Pick<Outing, "name" | "good">): void {
  const top_pt = column.y_pt;
  column.y_pt = top_pt + ascent_pt(GLANCE) - ascent_pt(SMALL);
  words(column, [run(label, SMALL)]);
  column.y_pt = top_pt;
  addText(column, [run(`${name}  `, GLANCE), run(noBreak(chanceText(good)), GLANCE)], {
    role: "P",
    field: FIELD,
    indent_pt: 40,
  });
}

const pickBlock =
  ({ lakes }: TripGuide, { pick, fishable }: GuideTrip): Block =>
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
    if (fishable.length > 0) words(column, [run(fishableText(fishable), SMALL)]);
    const travels = [pick, pick.fallback].flatMap((lake) => {
      const travel_h = lakes.find(({ slug }) => slug === lake?.slug)?.access?.travel_h ?? null;
      return lake === null || travel_h === null ? [] : [`${lake.name} ${noBreak(hoursText(travel_h))}`];
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
    addTable(
      column,
      [
        [
          headCell("% good", SMALL),
          ...lakes.map(({ name }) => headCell(name, STRONG)),
          ...(both ? [headCell("One of both", SMALL)] : []),
          headCell("First to last light", SMALL),
        ],
        ...part.map((day) => [
          headCell(noBreak(weekdayDayMonth(day.date)), STRONG),
          ...lakes.map(({ slug }) => dataCell(dayChance(day, slug), GLANCE)),
          ...(both ? [dataCell(chanceNumber(day.either), STRONG)] : []),
          dataCell(lightSpan(trip, day.date), STRONG),
        ]),
      ],
      {
        tracks: tableTracks([DAY_PT, ...lakes.map(() => each_pt), ...(both ? [EITHER_PT] : []), LIGHT_PT]),
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

const floatPlanBlock =
  (trip: GuideTrip): Block =>
  (column, isFirst) => {
    addTitle(column, "Who to tell: fill in, and leave with someone ashore", isFirst);
    for (const { label, given } of floatPlanLines(trip)) {
      const top_pt = column.y_pt;
      column.y_pt = top_pt + BLANK_PT - 12;
      const line_pt = column.y_pt;
      words(column, [run(label, SMALL)]);
      if (given !== null) {
        column.y_pt = line_pt;
        addText(column, [run(noBreak(given), STRONG)], { role: "P", field: FIELD, indent_pt: TELL_LABEL_PT });
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
        ...listBlocks("Cautions: local rules and licensed instruction come first", [
          ...trip.ice.map((ice) => [run(ice, STRONG)]),
          ...cautionLines(guide, trip),
        ]),
        floatPlanBlock(trip),
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
