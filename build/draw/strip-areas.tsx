import type { JSX } from "preact";
import { DAY_STATES, type DayState, STATE_WORDS } from "../model/phase.ts";
import { type Band, roomiestBox } from "./band.ts";
import { Hatching } from "./hatching.tsx";
import { LEADING } from "./lettering.ts";
import { tenth } from "./numbers.ts";
import { stackedEdges, withoutStraightPoints } from "./stacked.ts";
import { type Frame, lettering } from "./strip-frame.ts";

/** The band of each state, in the order a spring runs: flat for half a day before the first day's middle and after the last's. */
export function bandsOf({ daily, top, bottom, width, perDay }: Frame): Band[] {
  const edges = stackedEdges(daily, bottom - top).map((edge) => edge.map((y) => top + y));
  const roof = daily.map(() => top);
  const widened = (edge: readonly number[]): number[] => [edge[0] ?? top, ...edge, edge.at(-1) ?? top];
  const xs = [0, ...daily.map((_, i) => (i + 0.5) * perDay), width];
  return edges.map((lower, i) => ({ xs, upper: widened(edges[i - 1] ?? roof), lower: widened(lower) }));
}

const withStates = (bands: readonly Band[]) =>
  DAY_STATES.flatMap((state, i) => {
    const band = bands[i];
    return band === undefined ? [] : [{ state, band }];
  });

/** From a band's upper edge down to the bottom: the next state is painted over what is too much. */
function areaPath({ xs, upper }: Band, bottom: number): string {
  const line = withoutStraightPoints(xs.map((x, i) => ({ x, y: upper[i] ?? bottom })));
  return `M${line.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join("L")}V${tenth(bottom)}H0Z`;
}

/** The five areas, hatched, and the frame around them. */
export const Areas = ({ frame, bands }: { frame: Frame; bands: readonly Band[] }): JSX.Element => {
  const { ink, top, bottom, width } = frame;
  return (
    <g>
      {withStates(bands).map(({ state, band }) => (
        <>
          <path
            d={areaPath(band, bottom)}
            fill={ink.states[state].ground}
            stroke={ink.line}
            stroke-width={0.7}
          />
          <Hatching state={state} band={band} ink={ink} />
        </>
      ))}
      <path
        d={`M0 ${tenth(top)}H${width}V${tenth(bottom)}H0Z`}
        fill="none"
        stroke={ink.line}
        stroke-width={0.7}
      />
    </g>
  );
};

/** How a state's name is best set in its area: on one line or, where that is tight, a word a line. */
function bestSetting(name: string, band: Band, { ink, asOf_x }: Frame) {
  const settings = [[name], name.split(" ")].flatMap((lines) => {
    const width = Math.max(...lines.map((line) => lettering(line, ink))) + ink.textSize * 0.5;
    const height = ink.textSize * LEADING * lines.length;
    const box = roomiestBox(band, width, asOf_x);
    return box === undefined || box.height < height ? [] : [{ lines, width, height, box }];
  });
  return settings.find(({ box, height }) => box.height > height + ink.textSize * 0.5) ?? settings[0];
}

/** A state's name where its area has room for it. */
function StateName({ frame, band, state }: { frame: Frame; band: Band; state: DayState }) {
  const { ink } = frame;
  const setting = bestSetting(STATE_WORDS[state].name, band, frame);
  if (setting === undefined) return null;
  const { lines, width, height, box } = setting;
  const { ground, words } = ink.states[state];
  const [x, y] = [box.x, box.y - height / 2];
  return (
    <g text-anchor="middle" fill={words}>
      <path
        d={`M${tenth(x - width / 2)} ${tenth(y)}h${tenth(width)}v${tenth(height)}h${tenth(-width)}Z`}
        fill={ground}
      />
      {lines.map((line, i) => (
        <text x={tenth(x)} y={tenth(y + ink.textSize * (LEADING * i + 0.93))}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** The states' names, each where there is room. */
export const StateNames = ({ frame, bands }: { frame: Frame; bands: readonly Band[] }): JSX.Element => (
  <g>
    {withStates(bands).map(({ state, band }) => (
      <StateName frame={frame} band={band} state={state} />
    ))}
  </g>
);
