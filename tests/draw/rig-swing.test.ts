import { expect, test } from "vitest";
import { paperInk } from "../../build/draw/ink.ts";
import { swingDrawing } from "../../build/draw/rig/swing-plan.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { swingTable } from "../../build/rigs/tables/at-anchor.ts";
import { box } from "../rigs/box-fixture.ts";
import { lettering, letteringFaults } from "./lettering-boxes.ts";
import { MEDIA } from "./rig-fixture.ts";

const swing = swingTable(box);
const drawing = { swing, rod_m: box.rod_m, rod_s: 60 };

/** Ends of the numbers of a path or circle, as points. */
const points = (svg: string, pattern: RegExp): (readonly [number, number])[] =>
  [...svg.matchAll(pattern)].map(([, x, y]) => [Number(x), Number(y)]);

test("lines leave their rods at the holder's angles, as long as they are", () => {
  for (const medium of MEDIA) {
    const svg = renderSvg(swingDrawing(drawing, { ...medium, units: "imperial" }));
    const [holder] = points(
      svg,
      /stroke-width="2.4"><\/path>|d="M(\S+) (\S+?)L[^"]*" stroke="[^"]*" stroke-width="2.4"/g,
    );
    const balls = points(svg, /class="holder">.*?<circle cx="(\S+)" cy="(\S+)"/g);
    expect(balls).toHaveLength(swing.rows.length);
    const reaches = balls.map(([x, y]) => Math.hypot(x - (holder?.[0] ?? 0), y - (holder?.[1] ?? 0)));
    const angles = balls.map(
      ([x, y]) => (Math.atan2(x - (holder?.[0] ?? 0), y - (holder?.[1] ?? 0)) * 180) / Math.PI,
    );
    const wanted = swing.rows.map(({ holder_deg }) => holder_deg).sort((a, b) => b - a);
    for (const [i, angle] of angles.entries()) expect(angle).toBeCloseTo(wanted[i] ?? Number.NaN, 0);
    expect(Math.max(...reaches) - Math.min(...reaches)).toBeLessThan(0.3);
    const [rodEnd] = points(
      svg,
      /stroke-width="2.4"><\/path>|L(\S+) (\S+?)" stroke="[^"]*" stroke-width="2.4"/g,
    );
    const rod = Math.hypot((rodEnd?.[0] ?? 0) - (holder?.[0] ?? 0), (rodEnd?.[1] ?? 0) - (holder?.[1] ?? 0));
    expect((reaches[0] ?? 0) / rod).toBeCloseTo((box.rod_m + swing.line_m) / box.rod_m, 1);
  }
});

test("each angle has the table's time for that drift", () => {
  const written = lettering(
    swingDrawing(drawing, { ink: paperInk, width: 170, height: 100, units: "imperial" }),
  );
  for (const { holder_deg, cells } of swing.rows)
    expect(written).toContain(`${holder_deg}° ${cells.find(({ rod_s }) => rod_s === 60)?.text}`);
});

test("no line of lettering runs into another or out of the drawing", () => {
  for (const medium of MEDIA)
    for (const rod_s of [120, 60, 20])
      expect(letteringFaults(swingDrawing({ ...drawing, rod_s }, { ...medium, units: "imperial" }))).toEqual(
        [],
      );
});
