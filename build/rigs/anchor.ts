import type { AtAnchor, SwingTable } from "./rig-tables.ts";

/** A middling drift of the swing table and a quick one, seconds a rod length. */
const TOLD_DRIFTS_S: readonly number[] = [60, 30];

/** "from 90° 10 min, 60° 7 min": every other swing of one drift, the widest first; nothing where the table has no such drift. */
function swingsIn({ rows }: SwingTable, rod_s: number): string | null {
  const times = rows
    .toSorted((a, b) => b.holder_deg - a.holder_deg)
    .filter((_, i) => i % 2 === 0)
    .flatMap(({ holder_deg, cells }) =>
      cells.filter((cell) => cell.rod_s === rod_s).map(({ text }) => `${holder_deg}° ${text}`),
    );
  return times.length === 0 ? null : `from ${times.join(", ")}`;
}

/**
 * How a boat lies on one anchor and on two, where the rods then point, and how long the flies swing. Common practice,
 * no source, but for the swings, which are the swing table's.
 */
export const atAnchor = (swing: SwingTable): AtAnchor => ({
  ways: [
    {
      name: "One anchor, off the bow",
      words: "Bow to the wind, sheering about; rods over the stern point downwind.",
    },
    {
      name: "Two, off bow and stern",
      words:
        "Across a light wind; rods over the lee side point downwind. When waves build, let the stern line go first.",
    },
  ],
  swing: TOLD_DRIFTS_S.flatMap((rod_s) => {
    const words = swingsIn(swing, rod_s);
    return words === null ? [] : [{ rod_s, words }];
  }),
  note: "Common practice, no source.",
});
