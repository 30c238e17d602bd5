import { describe, expect, test } from "vitest";
import { ballBody } from "../../build/rigs/physics/hanging-line.ts";
import { slackFall_s } from "../../build/rigs/physics/swing-down.ts";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import { COAL_PARTICLE, STOKES_PARTICLE, TERMINAL_SPEED_TABLE } from "../reference/sinking.ts";
import { rigOver, water10 } from "./club-box.ts";
import { expectNear } from "./near.ts";

/** So short a line, as a share of the ball, drags at nothing: the fall is the ball's own. */
const FALL_SHARE = 1e-3;
const THIN_M = 1e-9;

function fallSpeed_mps(density_kgm3: number, diameter_m: number, water: ReturnType<typeof waterAt>): number {
  const mass_g = 1000 * density_kgm3 * (Math.PI / 6) * diameter_m ** 3;
  const fall_m = FALL_SHARE * diameter_m;
  return fall_m / slackFall_s(ballBody({ mass_g, density_kgm3 }, water), THIN_M, fall_m, water);
}

describe(`terminal speed: ${TERMINAL_SPEED_TABLE.citation}`, () => {
  test.each(TERMINAL_SPEED_TABLE.rows)("$what, $diameter_mm mm, $water_C °C", (row) =>
    expectNear(
      fallSpeed_mps(row.density_kgm3, row.diameter_mm / 1000, waterAt(row.water_C)),
      row.speed_mps,
      TERMINAL_SPEED_TABLE.tolerance,
    ),
  );
});

describe.each([COAL_PARTICLE, STOKES_PARTICLE])("terminal speed: $citation", (particle) => {
  test("published speed", () =>
    expectNear(
      fallSpeed_mps(particle.density_kgm3, particle.diameter_m, particle.water),
      particle.speed_mps,
      particle.tolerance,
    ));
});

test("a longer line falls ever slower: twice the length takes more than twice the time", () => {
  const { fly } = rigOver(12, "Nine-foot", "beaded pupa", "none");
  const [short_s, long_s] = [2, 4].map((length_m) => slackFall_s(fly, 1.5e-4, length_m, water10));
  expect(long_s).toBeGreaterThan(2 * (short_s ?? Number.POSITIVE_INFINITY));
});
