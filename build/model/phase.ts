/** What a lake can be on one day, in the order a spring runs through them. */
export const DAY_STATES = ["iced", "iceOff", "turnover", "postTurnover", "laterWeeks"] as const;
export type DayState = (typeof DAY_STATES)[number];

/** The states of an open lake, as the exported data names them. */
export const PHASES = ["ice-off", "turnover", "post-turnover", "later-weeks"] as const;
export type Phase = (typeof PHASES)[number];

/** The words that a club's files use for them, in the same order. */
export const PHASE_WORDS = ["ice-off", "turnover", "best-weeks", "later-weeks"] as const;

/** The likeliest state of a day; of two that are even, the earlier one. */
export const likeliestState = (chances: Readonly<Record<DayState, number>>): DayState =>
  DAY_STATES.reduce((best, state) => (chances[state] > chances[best] ? state : best));

interface StateWords {
  /** Heading, as short as it can be said. */
  readonly name: string;
  /** Whether to go, and the state: at the head of a lake\'s page. */
  readonly verdict: string;
  /** What a person standing there would see. */
  readonly meaning: string;
  /** What to do about it. */
  readonly advice: string;
}

/** The one home of every word said about a state; pages, cards and feeds all read it here. */
export const STATE_WORDS: Readonly<Record<DayState, StateWords>> = {
  iced: {
    name: "Iced",
    verdict: "Not yet: iced",
    meaning: "still under ice",
    advice: "Stay off the ice.",
  },
  iceOff: {
    name: "Ice-off",
    verdict: "Go: ice-off",
    meaning: "open water, fish hunting the shallows",
    advice: "Fish the edge: shallow, close to shore.",
  },
  turnover: {
    name: "Turnover",
    verdict: "Not yet: turnover",
    meaning: "cloudy or still mixing, and poor",
    advice: "Leave it alone.",
  },
  postTurnover: {
    name: "Best weeks",
    verdict: "Go: best weeks",
    meaning: "clear again after turnover and not yet warm",
    advice: "Go now. Plumb the drop-off and fish just off the bottom.",
  },
  laterWeeks: {
    name: "Later weeks",
    verdict: "Fish deeper: later weeks",
    meaning: "warm at the surface, the fish deeper",
    advice: "Fish deeper, at dawn and dusk. Take the water's temperature first.",
  },
};

const PHASE_STATES: Readonly<Record<Phase, DayState>> = {
  "ice-off": "iceOff",
  turnover: "turnover",
  "post-turnover": "postTurnover",
  "later-weeks": "laterWeeks",
};

/** The day state that belongs to a phase's window. */
export const stateOfPhase = (phase: Phase): DayState => PHASE_STATES[phase];

/** A phase's name for readers. */
export const phaseName = (phase: Phase): string => STATE_WORDS[PHASE_STATES[phase]].name;

/** States worth the drive: fish in the shallows, or the best weeks. */
export const GOOD_STATES: readonly DayState[] = ["iceOff", "postTurnover"];

/** States in which a lake can be fished: the good ones, and the later weeks. */
export const FISHABLE_STATES: readonly DayState[] = [...GOOD_STATES, "laterWeeks"];

/** Chance of any of some states on a day. */
export const chanceOf = (chances: Readonly<Record<DayState, number>>, states: readonly DayState[]): number =>
  states.reduce((sum, state) => sum + chances[state], 0);
