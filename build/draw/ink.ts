import type { DayState } from "../model/phase.ts";

/** How one day state is painted: its ground, the hatching on it, and words written over it. */
interface StateInk {
  readonly ground: string;
  readonly hatch: string;
  readonly words: string;
}

/** The colours of one medium. Hatching tells the states apart; colour only helps. */
export interface Ink {
  readonly paper: string;
  readonly line: string;
  readonly words: string;
  /** The as-of line: the one accent of a drawing. */
  readonly accent: string;
  readonly states: Readonly<Record<DayState, StateInk>>;
  /** Size of lettering in the drawing's own units: CSS pixels on screen, points on paper. */
  readonly textSize: number;
}

const onScreen = (name: string): StateInk => ({
  ground: `var(--strip-${name})`,
  hatch: `var(--strip-${name}-hatch)`,
  words: `var(--strip-${name}-words)`,
});

/**
 * Ink for pages. The page styles define, for light, dark and high contrast:
 * --strip-paper --strip-line --strip-words --strip-accent, and for each NAME of
 * iced, ice-off, turnover, best, later: --strip-NAME --strip-NAME-hatch --strip-NAME-words.
 * Hatching wants 3:1 against its ground, words 4.5:1.
 */
export const screenInk: Ink = {
  paper: "var(--strip-paper)",
  line: "var(--strip-line)",
  words: "var(--strip-words)",
  accent: "var(--strip-accent)",
  states: {
    iced: onScreen("iced"),
    iceOff: onScreen("ice-off"),
    turnover: onScreen("turnover"),
    postTurnover: onScreen("best"),
    laterWeeks: onScreen("later"),
  },
  textSize: 13,
};

const onPaper = (ground: string, hatch: string, words: string): StateInk => ({ ground, hatch, words });

/** Ink for cards: black on white, so that a laser printer or a photocopy loses nothing. */
export const paperInk: Ink = {
  paper: "#ffffff",
  line: "#000000",
  words: "#000000",
  accent: "#000000",
  states: {
    iced: onPaper("#ffffff", "#000000", "#000000"),
    iceOff: onPaper("#ffffff", "#000000", "#000000"),
    turnover: onPaper("#ffffff", "#000000", "#000000"),
    postTurnover: onPaper("#000000", "#000000", "#ffffff"),
    laterWeeks: onPaper("#ffffff", "#ffffff", "#000000"),
  },
  textSize: 8.8,
};
