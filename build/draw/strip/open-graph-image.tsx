import type { ComponentChildren } from "preact";
import { renderToString } from "preact-render-to-string";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { weekdayDayMonth } from "../../model/calendar.ts";
import { STATE_WORDS } from "../../model/phase.ts";
import { chanceText } from "../../model/units.ts";
import { estimateTextWidth } from "../geometry.ts";
import { type Ink, paperInk } from "../ink.ts";
import { springDays } from "./date-axis.tsx";
import { seasonStrip } from "./season-strip.tsx";

/** Pixels; the shape in which programs show a link, about 1.91 to 1. */
export const OPEN_GRAPH_IMAGE = { width: 1200, height: 630 };
const MARGIN = 60;
const COLUMN = OPEN_GRAPH_IMAGE.width - 2 * MARGIN;
/** Shown small: everything is large. */
const INK: Ink = { ...paperInk, textSize: 28 };
/** Lakes that the board's picture has room for. */
const ROWS = 5;

/** The largest type, up to `size`, in which a line fits the picture. */
const fitting = (text: string, size: number, width = COLUMN): number =>
  Math.min(size, (size * width) / estimateTextWidth(text, size));

const Line = ({ y, size, bold = false, text }: { y: number; size: number; bold?: boolean; text: string }) => (
  <text
    x={MARGIN}
    y={y}
    font-size={fitting(text, size).toFixed(1)}
    {...(bold ? { "font-weight": "bold" } : {})}
  >
    {text}
  </text>
);

/** A drawing inside the drawing. */
const Placed = ({ x, y, svg }: { x: number; y: number; svg: string }) => (
  <g transform={`translate(${x} ${y})`} dangerouslySetInnerHTML={{ __html: svg }} />
);

const sheet = (children: ComponentChildren): string =>
  renderToString(
    // biome-ignore lint/a11y/noSvgWithoutTitle: it becomes a picture of dots, whose words stand in the link's own text
    <svg xmlns="http://www.w3.org/2000/svg" {...OPEN_GRAPH_IMAGE} fill={INK.words}>
      <rect {...OPEN_GRAPH_IMAGE} fill={INK.paper} />
      <rect
        x="20"
        y="20"
        width={OPEN_GRAPH_IMAGE.width - 40}
        height={OPEN_GRAPH_IMAGE.height - 40}
        fill="none"
        stroke={INK.line}
        stroke-width="3"
      />
      {children}
    </svg>,
  );

const asOfText = ({ asOf, club }: GuideFrame): string => `${club.name}, as of ${weekdayDayMonth(asOf)}`;

/** What a link to a lake's page shows: its name, what it is now and what comes next, and its spring. */
export const lakeOpenGraphImage = (lake: GuideLake, guide: GuideFrame): string =>
  sheet(
    <>
      <Line y={120} size={72} bold text={lake.name} />
      <Line y={190} size={44} text={`${STATE_WORDS[lake.now.state].name} ${chanceText(lake.now.chance)}`} />
      <Line y={245} size={34} text={lake.status.next} />
      <Placed
        x={MARGIN}
        y={270}
        svg={seasonStrip(lake, guide, {
          ink: INK,
          width: COLUMN,
          height: 260,
          compact: false,
          ...springDays(lake, guide),
        })}
      />
      <Line y={580} size={30} text={asOfText(guide)} />
    </>,
  );

/** The lakes at the top of the board, as many as its picture has room for. */
export const boardPictureLakes = ({ board, lakes }: Pick<Guide, "board" | "lakes">): GuideLake[] =>
  board.groups
    .flatMap((group) => group.lakes)
    .slice(0, ROWS)
    .flatMap(({ slug }) => lakes.find((lake) => lake.slug === slug) ?? []);

/** What a link to the board shows: the lakes at its top, with their springs. */
export const boardOpenGraphImage = (lakes: readonly GuideLake[], guide: GuideFrame): string =>
  sheet(
    <>
      <Line y={120} size={72} bold text={`Season ${guide.season}`} />
      {lakes.map((lake, i) => (
        <>
          <text x={MARGIN} y={205 + 72 * i} font-size={fitting(lake.name, 36, 400).toFixed(1)}>
            {lake.name}
          </text>
          <Placed
            x={MARGIN + 420}
            y={170 + 72 * i}
            svg={seasonStrip(lake, guide, { ink: INK, width: COLUMN - 420, height: 48, compact: true })}
          />
        </>
      ))}
      <Line y={580} size={30} text={asOfText(guide)} />
    </>,
  );
