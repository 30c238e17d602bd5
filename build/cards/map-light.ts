import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideLake } from "../guide/guide-schema.ts";
import { addRule, type Column } from "./column.ts";
import { run } from "./flow.ts";
import { lightRows } from "./map-card-words.ts";
import { addGrid, data, head, tracksOf } from "./rig-card-grid.ts";
import { SMALL, STRONG } from "./type-styles.ts";

const TIMES = ["First light", "Sunrise", "Sunset", "Last light"] as const;
const TIME_PT = 45;

/** The light of the card's day and of each phase, as a table under a rule. */
export function addLight(column: Column, { asOf }: GuideFrame, lake: GuideLake): void {
  addRule(column, 0.6);
  column.y_pt += 1;
  addGrid(
    column,
    [
      [head("Light", STRONG), ...TIMES.map((what) => head(what, SMALL))],
      ...lightRows(lake, asOf).map(({ day, what, times }) => [
        { role: "TH" as const, lines: [[run(`${day} `, STRONG), run(what, SMALL)]] },
        ...times.map((time) => data(time, SMALL)),
      ]),
    ],
    {
      tracks: tracksOf([column.width_pt - TIMES.length * TIME_PT, ...TIMES.map(() => TIME_PT)]),
      field: "light",
    },
  );
}
