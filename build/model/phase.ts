/** What a lake can be on one day, in the order a spring runs through them. */
export const DAY_STATES = ["iced", "iceOff", "turnover", "postTurnover", "summer"] as const;
export type DayState = (typeof DAY_STATES)[number];

/** The three windows between the ice and summer, as the exported data names them. */
export const PHASES = ["ice-off", "turnover", "post-turnover"] as const;
export type Phase = (typeof PHASES)[number];

/** The likeliest state of a day; of two that are even, the earlier one. */
export const likeliestState = (chances: Readonly<Record<DayState, number>>): DayState =>
  DAY_STATES.reduce((best, state) => (chances[state] > chances[best] ? state : best));

interface StateWords {
  /** Heading, as short as it can be said. */
  readonly name: string;
  /** What a person standing there would see. */
  readonly meaning: string;
  /** What to do about it. */
  readonly advice: string;
}

/** The one home of every word said about a state; pages, cards and feeds all read it here. */
export const STATE_WORDS: Readonly<Record<DayState, StateWords>> = {
  iced: { name: "Iced", meaning: "still under ice", advice: "Stay off the ice. Fish elsewhere." },
  iceOff: {
    name: "Ice-off",
    meaning: "open water, fish hunting the shallows",
    advice: "Fish the edge: shallow, close to shore.",
  },
  turnover: {
    name: "Turnover",
    meaning: "mixing, cloudy and poor",
    advice: "Leave it alone. Go to a lake in another phase.",
  },
  postTurnover: {
    name: "Best weeks",
    meaning: "clear again after turnover, feeding at depth",
    advice: "Go now. Plumb the drop-off and fish just off the bottom.",
  },
  summer: {
    name: "Summer",
    meaning: "past the spring weeks",
    advice: "Mind the water temperature; fish early and late.",
  },
};

const PHASE_STATES: Readonly<Record<Phase, DayState>> = {
  "ice-off": "iceOff",
  turnover: "turnover",
  "post-turnover": "postTurnover",
};

/** The day state that belongs to a phase's window. */
export const stateOfPhase = (phase: Phase): DayState => PHASE_STATES[phase];

/** A phase's name for readers. */
export const phaseName = (phase: Phase): string => STATE_WORDS[PHASE_STATES[phase]].name;

/** States worth the drive: fish in the shallows, or the best weeks. */
export const GOOD_STATES: readonly DayState[] = ["iceOff", "postTurnover"];
