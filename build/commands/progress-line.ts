import type { Progress, Stage } from "../model/progress.ts";

/** Where progress is shown. */
export interface ProgressPlace {
  /** True where a line can be overwritten. */
  readonly isTerminal: boolean;
  /** Milliseconds on a clock that runs forward only. */
  now_ms(): number;
  write(text: string): void;
}

export interface ProgressLine {
  readonly progress: Progress;
  /** Takes the line away, so that something else can be printed. */
  clear(): void;
}

const DOING: Readonly<Record<Stage, string>> = {
  load: "Reading the club folder",
  compute: "Computing the season, the water and the rigs",
  pages: "Pages",
  data: "Calendars, maps and data",
  cards: "Cards",
  publish: "Publishing",
};
const BAR = 24;
/** Often enough to be seen moving, seldom enough to cost nothing. */
const REDRAW_MS = 80;
/** Without a terminal a stage is worth a line when it takes this long. */
const SLOW_MS = 2000;
/** To the beginning of the line, and all behind it away (ECMA-48, Erase in Line). */
const CLEAR = "\r\u001b[K";

/** A time as it is told: 0.4 s, 12 s, 3 min 5 s. */
export function durationText(ms: number): string {
  if (ms < 9950) return `${(ms / 1000).toFixed(1)} s`;
  const seconds = Math.round(ms / 1000);
  return seconds < 60 ? `${seconds} s` : `${Math.floor(seconds / 60)} min ${seconds % 60} s`;
}

function barText(stage: Stage, done: number, total: number): string {
  if (total === 0) return `${DOING[stage]} …`;
  const full = Math.floor((BAR * done) / total);
  return `${DOING[stage]} ${"█".repeat(full)}${"░".repeat(BAR - full)} ${done}/${total}`;
}

/** One line that is written over as the work goes on. */
function movingLine({ now_ms, write }: ProgressPlace): ProgressLine {
  let shown: Stage | undefined;
  let drawn_ms = 0;
  return {
    progress: (stage, done, total) => {
      const now = now_ms();
      if (stage === shown && done < total && now - drawn_ms < REDRAW_MS) return;
      shown = stage;
      drawn_ms = now;
      write(CLEAR + barText(stage, done, total));
    },
    clear: () => {
      if (shown !== undefined) write(CLEAR);
      shown = undefined;
    },
  };
}

/** A line behind each stage that took long; none for a quick build. */
function quietLines({ now_ms, write }: ProgressPlace): ProgressLine {
  let current: { readonly stage: Stage; readonly since_ms: number; total: number } | undefined;
  const close = (): void => {
    const took_ms = current === undefined ? 0 : now_ms() - current.since_ms;
    if (current !== undefined && took_ms >= SLOW_MS)
      write(
        `${DOING[current.stage]}${current.total === 0 ? "" : `: ${current.total}`} (${durationText(took_ms)})\n`,
      );
    current = undefined;
  };
  return {
    progress: (stage, _, total) => {
      if (current?.stage !== stage) {
        close();
        current = { stage, since_ms: now_ms(), total };
      } else current.total = total;
    },
    clear: close,
  };
}

/** Shows how far a build is: a line that moves at a terminal, elsewhere at most one line a stage. */
export const progressLine = (place: ProgressPlace): ProgressLine =>
  place.isTerminal ? movingLine(place) : quietLines(place);
