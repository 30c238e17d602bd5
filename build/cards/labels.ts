import type { Guide, GuideTrip } from "../guide/guide-schema.ts";

type Leader = Guide["rigs"]["leaders"][number];

/** One label, to be stuck on one board. */
export interface Label {
  readonly leader: Leader;
  /** What the leader is for, the fullest wording first; the first that fits is printed. */
  readonly why: readonly string[];
}

const repeat = (label: Label, count: number): Label[] => Array.from({ length: count }, () => label);

/** Which lakes call for a leader. */
function clubWhy({ lakes }: Guide, { name, serves }: Leader): string[] {
  if (serves === null) return ["Not for an indicator."];
  const names = lakes
    .filter(({ boards }) => boards.boards.some(({ leader }) => leader.name === name))
    .map((lake) => lake.name);
  if (names.length === 0) return ["No lake's plan calls for it: write below what it is for."];
  const many = names.length === lakes.length ? `all ${lakes.length}` : `${names.length} of ${lakes.length}`;
  return [`For ${names.join(", ")}.`, `For ${many} lakes: see each lake's page.`];
}

/** A label for each board of the club's own, and one for each leader that is not tied yet. */
const clubLabels = (guide: Guide): Label[] =>
  guide.rigs.leaders.flatMap((leader) =>
    repeat({ leader, why: clubWhy(guide, leader) }, Math.max(1, leader.tied)),
  );

/** A label for each board that a trip needs. */
export const tripLabels = ({ name, gear }: GuideTrip): Label[] =>
  gear.boards.boards.flatMap(({ leader, why, needed }) =>
    repeat({ leader, why: [why, `For ${name}: see the trip's page.`] }, needed),
  );

/** The club's labels and those of every trip that may be seen by all. */
export const sharedLabels = (guide: Guide): Label[] => [
  ...clubLabels(guide),
  ...guide.trips.filter(({ unlisted }) => !unlisted).flatMap(tripLabels),
];
