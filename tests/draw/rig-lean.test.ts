import { expect, test } from "vitest";
import { leanDrawing } from "../../build/draw/rig/lean.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { TABLE_FLY } from "../../build/rigs/fly-classes.ts";
import { leanExample } from "../../build/rigs/tables/lean-example.ts";
import { plumbDepth } from "../../build/rigs/tables/plumb-table.ts";
import { box, FT } from "../rigs/box-fixture.ts";
import { letteringFaults } from "./lettering-boxes.ts";
import { MEDIA } from "./rig-fixture.ts";

/** The lean of the rig over one depth. */
function example(depth_ft: number) {
  const lean = leanExample([plumbDepth(depth_ft * FT, [TABLE_FLY], box, "imperial")], box);
  if (lean === null) throw new Error(`no shot holds ${depth_ft} ft`);
  return lean;
}

const DEPTHS_FT = [6, 12, 15];

test("the curve is to one scale down and across, and ends as high as the lift says", () => {
  for (const medium of MEDIA)
    for (const depth_ft of DEPTHS_FT) {
      const lean = example(depth_ft);
      const svg = renderSvg(leanDrawing(lean, { ...medium, units: "imperial" }));
      const path = /class="leaning" d="M([^"]*)"/.exec(svg)?.[1] ?? "";
      const places = path.split("L").map((place) => place.split(" ").map(Number));
      const [[flyX = 0, flyY = 0] = [], [indicatorX = 0, indicatorY = 0] = []] = [places[0], places.at(-1)];
      const perMetre = (flyY - indicatorY) / (lean.set_m - lean.lift_m);
      expect(perMetre).toBeGreaterThan(10);
      expect(Math.abs(Math.abs(flyX - indicatorX) / perMetre - Math.abs(lean.aside_m))).toBeLessThan(0.05);
      const still = Number(/M\S+ \S+V(\S+)" stroke-dasharray/.exec(svg)?.[1]);
      expect((still - indicatorY) / perMetre).toBeCloseTo(lean.set_m, 1);
    }
});

test("no line of lettering runs into another or out of the drawing", () => {
  for (const units of ["imperial", "metric"] as const)
    for (const medium of MEDIA)
      for (const depth_ft of DEPTHS_FT)
        expect(
          letteringFaults(leanDrawing(example(depth_ft), { ...medium, units })),
          `${depth_ft} ft`,
        ).toEqual([]);
});
