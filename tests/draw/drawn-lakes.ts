import type { GuideLake } from "../../build/guide/guide-schema.ts";
import type { Point } from "../../build/water/plane.ts";
import { composeWater } from "../../build/water/water.ts";
import { bareLake, day } from "../lake-fixture.ts";
import { LAKE, OPTIONS, shapeOf } from "../water/shapes.ts";

/** A lake with nothing known of its shape. */
export const unshaped: GuideLake = bareLake("ember", "Ember Lake", day("2026-05-12"), day("2026-05-16"));

/** The same with a shore. */
export const shaped = (shore: readonly Point[], parts: Parameters<typeof shapeOf>[1] = {}): GuideLake => ({
  ...unshaped,
  place: composeWater(LAKE, shapeOf(shore, parts), {
    ...OPTIONS,
    bands: [
      { phase: "ice-off", band: { from_m: 0.5, to_m: 2 } },
      { phase: "post-turnover", band: { from_m: 2, to_m: 4 } },
    ],
  }).water,
});
