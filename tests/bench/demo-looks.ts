import type { MarkKind } from "../../build/model/lake-shape.ts";
import { toBase } from "../../build/model/units.ts";
import type { LakeLook, Polar } from "./lake-look.ts";

const ft = (feet: number): number => toBase(feet, "ft", "length");

/** How one lake of the demo club looks, and what is marked on its map. */
export interface DemoLook extends LakeLook {
  readonly marks: readonly (Polar & { readonly mark: MarkKind; readonly name?: string })[];
  /** Soundings instead of contours; walked: the shore too comes from the soundings' own file. */
  readonly soundings?: { readonly count: number; readonly walked: boolean };
}

/** The invented lakes of the demo club, each as its own notes describe it. */
export const DEMO_LOOKS: Readonly<Record<string, DemoLook>> = {
  cairnlight: {
    seed: 11,
    axis_deg: 20,
    stretch: 1.3,
    rough: 0.9,
    marks: [{ mark: "outflow", bearing_deg: 95, out: 1 }],
  },
  chalkhen: {
    seed: 12,
    axis_deg: 60,
    stretch: 1.6,
    rough: 0.9,
    bend: -0.2,
    bays: [{ bearing_deg: 200, reach: -0.28, width_deg: 9 }],
    profile: [
      [0, 0],
      [0.3, 0.14],
      [0.42, 0.26],
      [0.52, 0.6],
      [1, 1],
    ],
    marks: [
      { mark: "launch", name: "Gravel spit", bearing_deg: 200, out: 1 },
      { mark: "inflow", name: "Springs", bearing_deg: 92, out: 1 },
      { mark: "hazard", name: "Soft marl", bearing_deg: 300, out: 0.85 },
      { mark: "outflow", bearing_deg: 235, out: 1 },
    ],
  },
  gannister: {
    seed: 13,
    axis_deg: 340,
    stretch: 2,
    rough: 1,
    bend: 0.25,
    bays: [{ bearing_deg: 75, reach: -0.42, width_deg: 10 }],
    marks: [
      { mark: "launch", name: "Campground", bearing_deg: 255, out: 1 },
      { mark: "shoal", name: "Long point", bearing_deg: 75, out: 0.95 },
      { mark: "hazard", name: "Rock slides", bearing_deg: 20, out: 0.97 },
      { mark: "inflow", bearing_deg: 340, out: 1 },
      { mark: "outflow", bearing_deg: 165, out: 1 },
    ],
  },
  hobnail: {
    seed: 14,
    axis_deg: 85,
    stretch: 1.8,
    rough: 1.1,
    bend: 0.2,
    bays: [{ bearing_deg: 130, reach: 0.3, width_deg: 14 }],
    benches: [{ bearing_deg: 355, width_deg: 35, floor_m: ft(8), reach_m: 45 }],
    marks: [
      { mark: "launch", name: "Outlet launch", bearing_deg: 258, out: 1 },
      { mark: "outflow", bearing_deg: 264, out: 1 },
      { mark: "inflow", bearing_deg: 60, out: 1 },
      { mark: "weed", name: "North weed edge", bearing_deg: 355, out: 0.7 },
      { mark: "hazard", name: "Dead timber", bearing_deg: 88, out: 0.9 },
    ],
  },
  longcoat: {
    seed: 15,
    axis_deg: 10,
    stretch: 1.7,
    rough: 0.9,
    bend: 0.15,
    bays: [
      { bearing_deg: 5, reach: 0.35, width_deg: 12 },
      { bearing_deg: 330, reach: -0.2, width_deg: 10 },
    ],
    marks: [
      { mark: "hazard", name: "Shaded bay", bearing_deg: 5, out: 0.85 },
      { mark: "outflow", bearing_deg: 190, out: 1 },
    ],
  },
  oxbar: {
    seed: 16,
    axis_deg: 92,
    stretch: 6.4,
    rough: 1.3,
    dam: { bearing_deg: 90, out: 0.7 },
    bays: [
      { bearing_deg: 20, reach: 0.5, width_deg: 14 },
      { bearing_deg: 205, reach: 0.4, width_deg: 10 },
    ],
    islands: [{ bearing_deg: 282, out: 0.45, size: 0.11 }],
    shoals: [{ bearing_deg: 80, out: 0.35, top_m: ft(9), size: 0.2 }],
    marks: [
      { mark: "launch", name: "Dam ramp", bearing_deg: 82, out: 1 },
      { mark: "dam", bearing_deg: 90, out: 1 },
      { mark: "inflow", bearing_deg: 272, out: 1 },
      { mark: "shoal", name: "Sunken road", bearing_deg: 80, out: 0.35 },
      { mark: "weed", name: "Fence-line bay", bearing_deg: 20, out: 0.8 },
    ],
  },
  peatkettle: {
    seed: 17,
    axis_deg: 40,
    stretch: 1.15,
    rough: 0.5,
    bays: [
      { bearing_deg: 110, reach: -0.2, width_deg: 8 },
      { bearing_deg: 40, reach: -0.16, width_deg: 7 },
    ],
    soundings: { count: 90, walked: false },
    marks: [
      { mark: "hazard", name: "Floating bog", bearing_deg: 270, out: 0.97 },
      { mark: "launch", name: "Trail end", bearing_deg: 150, out: 1 },
      { mark: "outflow", bearing_deg: 180, out: 1 },
    ],
  },
  quern: {
    seed: 18,
    axis_deg: 120,
    stretch: 1.5,
    rough: 0.9,
    islands: [{ bearing_deg: 320, out: 0.7, size: 0.07 }],
    shoals: [
      { bearing_deg: 30, out: 0.5, top_m: ft(5), size: 0.1 },
      { bearing_deg: 175, out: 0.5, top_m: ft(5), size: 0.09 },
      { bearing_deg: 285, out: 0.45, top_m: ft(5), size: 0.08 },
    ],
    marks: [
      { mark: "launch", name: "Hand launch", bearing_deg: 85, out: 1 },
      { mark: "shoal", name: "North shoal", bearing_deg: 30, out: 0.5 },
      { mark: "shoal", name: "South shoal", bearing_deg: 175, out: 0.5 },
      { mark: "shoal", name: "West shoal", bearing_deg: 285, out: 0.45 },
      { mark: "outflow", bearing_deg: 125, out: 1 },
    ],
  },
  slatepin: {
    seed: 19,
    axis_deg: 0,
    stretch: 1.7,
    rough: 0.7,
    bays: [{ bearing_deg: 215, reach: -0.3, width_deg: 9 }],
    benches: [{ bearing_deg: 272, width_deg: 32, floor_m: ft(9), reach_m: 45 }],
    marks: [
      { mark: "launch", name: "Slate launch", bearing_deg: 245, out: 1 },
      { mark: "shoal", name: "Slate shelf", bearing_deg: 272, out: 0.9 },
      { mark: "inflow", bearing_deg: 350, out: 1 },
      { mark: "outflow", bearing_deg: 172, out: 1 },
    ],
  },
  tallow: {
    seed: 20,
    axis_deg: 75,
    stretch: 1.4,
    rough: 0.6,
    islands: [{ bearing_deg: 350, out: 0.5, size: 0.08 }],
    marks: [
      { mark: "launch", name: "Stile path", bearing_deg: 310, out: 1 },
      { mark: "hazard", name: "Deep silt", bearing_deg: 180, out: 0.93 },
      { mark: "weed", bearing_deg: 120, out: 0.5 },
    ],
  },
  thimblerig: {
    seed: 21,
    axis_deg: 150,
    stretch: 1.4,
    rough: 0.7,
    soundings: { count: 60, walked: true },
    marks: [],
  },
  wickstone: {
    seed: 22,
    axis_deg: 70,
    stretch: 3,
    rough: 0.8,
    bend: -0.12,
    bays: [
      { bearing_deg: 190, reach: 0.3, width_deg: 12 },
      { bearing_deg: 300, reach: -0.25, width_deg: 9 },
    ],
    benches: [{ bearing_deg: 20, width_deg: 45, floor_m: ft(18), reach_m: 80 }],
    marks: [
      { mark: "launch", name: "Concrete ramp", bearing_deg: 15, out: 1 },
      { mark: "inflow", name: "Bellrope Creek", bearing_deg: 245, out: 1 },
      { mark: "outflow", bearing_deg: 72, out: 1 },
      { mark: "shoal", name: "The bench", bearing_deg: 22, out: 0.75 },
    ],
  },
};
