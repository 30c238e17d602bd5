import type { RigBox } from "../model/club.ts";
import { sphereDrag_N } from "./physics/drag.ts";
import { ballDiameter_m, sunkWeight_N, type Water, waterAt } from "./physics/water-properties.ts";
import { USUAL_FLY } from "./rig-line.ts";
import type { SinkTable } from "./rig-tables.ts";

const FASTEST_MPS = 20; // faster than any tackle sinks
const HALVINGS = 50; // to the last bit of a double

/**
 * Speed at which a ball sinks when its drag equals its weight in water, m/s; 0 for one that floats.
 * @param diameter_m above 0
 */
export function terminalSpeed_mps(weight_N: number, diameter_m: number, water: Water): number {
  if (weight_N <= 0) return 0;
  let [slow, fast] = [0, FASTEST_MPS];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (slow + fast) / 2;
    if (sphereDrag_N(diameter_m, middle, water) < weight_N) slow = middle;
    else fast = middle;
  }
  return (slow + fast) / 2;
}

/** Terminal speed of one piece of shot, a ball of its mass and density, m/s. */
export const shotSpeed_mps = (mass_g: number, density_kgm3: number, water: Water): number =>
  terminalSpeed_mps(sunkWeight_N(mass_g, density_kgm3, water), ballDiameter_m(mass_g, density_kgm3), water);

const SETTLE_STEP_S = 5;

/** Seconds to wait until a rig hangs straight: its length at its shot's terminal speed, up to the next 5 s. */
export const settlingTime_s = (length_m: number, speed_mps: number): number =>
  Math.ceil(length_m / speed_mps / SETTLE_STEP_S) * SETTLE_STEP_S;

/**
 * How fast the club's shot and the usual fly sink, slowest first. Anything that floats is left out.
 * @param water_C 0 to 40 °C, worked at whole degrees
 * @throws RangeError for other water
 */
export function sinkTable(box: RigBox, water_C: number, depths_m: readonly number[]): SinkTable {
  const whole_C = Math.round(water_C);
  const water = waterAt(whole_C);
  const flyWeight_N = sunkWeight_N(USUAL_FLY.mass_g, USUAL_FLY.density_kgm3, water);
  const bodies = [
    { what: "Fly alone", speed_mps: terminalSpeed_mps(flyWeight_N, USUAL_FLY.width_m, water) },
    ...box.shot
      .filter(({ carried }) => carried > 0)
      .map(({ name, mass_g, density_kgm3 }) => ({
        what: name,
        speed_mps: shotSpeed_mps(mass_g, density_kgm3, water),
      })),
  ];
  return {
    water_C: whole_C,
    rows: bodies
      .filter(({ speed_mps }) => speed_mps > 0)
      .sort((a, b) => a.speed_mps - b.speed_mps)
      .map(({ what, speed_mps }) => ({
        what,
        speed_mps,
        depths: depths_m.map((depth_m) => ({
          depth_m,
          seconds: Math.round(depth_m / speed_mps),
          settle_s: settlingTime_s(depth_m, speed_mps),
        })),
      })),
    note: "Sinking free: the drag of the leader makes it slower, so wait at least this long, then watch until the indicator stops turning.",
  };
}
