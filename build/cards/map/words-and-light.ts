import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { type CalendarDate, clockText, dayMonth } from "../../model/calendar.ts";
import { phaseName } from "../../model/phase.ts";
import { distanceText, smallLengthRange, type UnitSystem } from "../../model/units.ts";
import { type AgencyCautions, byAgency, noBreak } from "../card-words.ts";
import { addRule, type Column, run } from "../layout/column.ts";
import { addTable, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import { SMALL, STRONG } from "../layout/page.ts";

type Wind = NonNullable<GuideLake["place"]["wind"]>;

/** How far to trust the map. */
export const mapAccuracyText = ({ contoursBy }: NonNullable<GuideLake["place"]["map"]>): string =>
  [
    ...(contoursBy === "soundings" ? ["Depths are worked out from the club’s soundings."] : []),
    "Levels change and rocks go unplumbed: trust the lead, not the line. Not for navigation.",
  ].join(" ");

/** "2.0 mi, with wind from WSW or ENE." */
export const longestFetchText = ({ longest }: Wind, units: UnitSystem): string =>
  `${noBreak(distanceText(longest.fetch_m, units))}, with wind from ${longest.along.join(" or ")}.`;

export const sidesText = (sides: readonly string[]): string =>
  sides.length === 0 ? "none" : sides.join(", ");

interface WaveText {
  readonly forces: string;
  readonly boats: string;
}

/** "Force 5, 11–16 in; force 6, 15–22 in." and what boats should do: forces that say the same stand together. */
export function waveTexts({ forces }: Wind, units: UnitSystem): WaveText[] {
  const texts: WaveText[] = [];
  for (const { force, height_m, boats } of forces) {
    const words = noBreak(`Force ${force}, ${smallLengthRange(height_m.from, height_m.to, units)}`);
    const last = texts.at(-1);
    if (last !== undefined && last.boats === boats)
      texts.splice(-1, 1, { forces: `${last.forces}; ${words.replace("Force", "force")}`, boats });
    else texts.push({ forces: words, boats });
  }
  return texts;
}

interface LightRow {
  readonly day: string;
  /** What begins or ends on it. */
  readonly what: string;
  /** First light, sunrise, sunset, last light; a dash for what does not happen. */
  readonly times: readonly string[];
}

/** The light of the card's day, of each phase's first day to come, and of the last phase's last. */
function lightRows({ place, phases }: GuideLake, asOf: CalendarDate): LightRow[] {
  const last = phases.at(-1);
  const days = [
    [asOf, "today"] as const,
    ...phases.map(({ phase, from }) => [from.p50, phaseName(phase).toLowerCase()] as const),
    ...(last === undefined ? [] : [[last.to.p50, "last day"] as const]),
  ];
  return place.light.flatMap(({ date, firstLight, sunrise, sunset, lastLight }) => {
    const [, what] = days.find(([day]) => day === date) ?? [];
    const times = [firstLight, sunrise, sunset, lastLight].map((minute) =>
      minute === null ? "–" : clockText(minute),
    );
    return what === undefined ? [] : [{ day: noBreak(dayMonth(date)), what, times }];
  });
}

/** Cautions that belong beside wind, waves and anchors in every state of the lake. */
const CAUTIONS = ["wind", "life-jacket", "cold-shock", "anchor"];

/** The cautions, those that follow one agency together. */
export const placeCautions = ({ cautions }: Pick<Guide, "cautions">): AgencyCautions[] =>
  byAgency(CAUTIONS.flatMap((id) => cautions.filter((caution) => caution.id === id)));

const TIMES = ["First light", "Sunrise", "Sunset", "Last light"] as const;
const TIME_PT = 45;

/** The light of the card's day and of each phase, as a table under a rule. */
export function addLight(column: Column, { asOf }: GuideFrame, lake: GuideLake): void {
  addRule(column, 0.6);
  column.y_pt += 1;
  addTable(
    column,
    [
      [headCell("Light", STRONG), ...TIMES.map((what) => headCell(what, SMALL))],
      ...lightRows(lake, asOf).map(({ day, what, times }) => [
        { role: "TH" as const, lines: [[run(`${day} `, STRONG), run(what, SMALL)]] },
        ...times.map((time) => dataCell(time, SMALL)),
      ]),
    ],
    {
      tracks: tableTracks([column.width_pt - TIMES.length * TIME_PT, ...TIMES.map(() => TIME_PT)]),
      field: "light",
    },
  );
}
