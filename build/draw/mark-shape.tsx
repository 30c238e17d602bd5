import type { JSX } from "preact";
import type { GuideLake } from "../guide/guide-schema.ts";
import { PHASES, type Phase, phaseName } from "../model/phase.ts";
import type { Ink } from "./ink.ts";

type Seen = GuideLake["marks"][number]["seen"];

const isPhase = (seen: Seen): seen is Phase => PHASES.some((phase) => phase === seen);

/** "ice on", "turnover", "best weeks": what a mark says, in the words used everywhere. */
export const seenText = (seen: Seen): string => (isPhase(seen) ? phaseName(seen).toLowerCase() : seen);

/** What is inked within a mark's outline, half a unit being its half width: all, the lower half, or nothing. */
const INKED: Readonly<Record<Seen, "all" | "half" | "none">> = {
  "ice on": "all",
  "ice part": "half",
  "ice off": "none",
  "ice-off": "none",
  turnover: "half",
  "post-turnover": "all",
};

interface MarkShapeProps {
  readonly seen: Seen;
  readonly doubted: boolean;
  readonly x: number;
  readonly y: number;
  /** Half its width. */
  readonly r: number;
  readonly ink: Ink;
}

/** What somebody saw: squares for the ice, circles for the water's phase; struck through where doubted. */
export function MarkShape({ seen, doubted, x, y, r, ink }: MarkShapeProps): JSX.Element {
  const round = isPhase(seen);
  const inked = INKED[seen];
  const outline = round
    ? `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
    : `M${x - r} ${y - r}h${2 * r}v${2 * r}h${-2 * r}Z`;
  const lowerHalf = round
    ? `M${x - r} ${y}a${r} ${r} 0 0 0 ${2 * r} 0Z`
    : `M${x - r} ${y}h${2 * r}v${r}h${-2 * r}Z`;
  return (
    <g stroke={ink.words} stroke-width={1}>
      <path d={outline} fill={inked === "all" ? ink.words : ink.paper} />
      {inked === "half" ? <path d={lowerHalf} fill={ink.words} stroke="none" /> : null}
      {doubted ? <path d={`M${x - 1.6 * r} ${y + 1.6 * r}L${x + 1.6 * r} ${y - 1.6 * r}`} /> : null}
    </g>
  );
}
