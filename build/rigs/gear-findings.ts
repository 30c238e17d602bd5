import type { RigBox } from "../model/club.ts";
import { rounded } from "../model/units.ts";
import { error, type Finding, warning, when } from "./finding.ts";
import { waterDensity_kgm3 } from "./fluid.ts";

/** Ordinary tackle, from memory; anything outside is most likely a slip of the pen or of the unit. */
const USUAL = {
  shot_g: { least: 0.01, most: 5 },
  shot_kgm3: 20000,
  sinkRate_mps: 0.4,
  indicator_m: { least: 0.005, most: 0.06 },
} as const;

/** Fresh water is never denser than at 4 °C. */
const MOST_WATER_KGM3 = waterDensity_kgm3(4);

/** What is wrong or doubtful about one fly line. */
export function lineFindings({ name, kind, sinkRate_mps }: RigBox["lines"][number]): Finding[] {
  if (sinkRate_mps === undefined)
    return when(
      kind !== "floating",
      warning(
        "line-no-rate",
        `“${name}” has no sink rate, so no countdown`,
        "write sinkRate, such as 1.5 in/s; time it once over a known depth",
      ),
    );
  return [
    ...when(
      !(sinkRate_mps > 0),
      error("line-rate", `“${name}” sinks at 0 or less`, "write a rate above 0, such as 1.5 in/s"),
    ),
    ...when(
      sinkRate_mps > USUAL.sinkRate_mps,
      warning(
        "line-fast",
        `“${name}” sinks at ${rounded(sinkRate_mps, 2)} m/s, faster than fly lines do`,
        "check the rate and its unit: in/s, not ft/s",
      ),
    ),
    ...when(
      kind === "floating",
      warning(
        "line-floats",
        `“${name}” is a floating line with a sink rate`,
        "leave sinkRate out, or change its kind",
      ),
    ),
  ];
}

/** What is wrong or doubtful about one size of shot. */
export function shotFindings({ name, mass_g, density_kgm3 }: RigBox["shot"][number]): Finding[] {
  if (!(mass_g > 0))
    return [
      error("shot-mass", `shot “${name}” weighs nothing`, "write its mass, such as 0.4 g; weigh ten at once"),
    ];
  return [
    ...when(
      !(density_kgm3 > MOST_WATER_KGM3),
      error("shot-floats", `shot “${name}” is no denser than water`, "write its material, such as tin"),
    ),
    ...when(
      density_kgm3 > USUAL.shot_kgm3,
      warning("shot-density", `shot “${name}” is denser than any metal used for shot`, "check its material"),
    ),
    ...when(
      mass_g < USUAL.shot_g.least || mass_g > USUAL.shot_g.most,
      warning(
        "shot-odd-mass",
        `shot “${name}” weighs ${rounded(mass_g, 3)} g; split shot weighs ${USUAL.shot_g.least} to ${USUAL.shot_g.most} g`,
        "check the mass and its unit: weigh ten at once",
      ),
    ),
  ];
}

/** What is wrong or doubtful about one indicator. */
export function indicatorFindings(
  { name, diameter_m, density_kgm3 }: RigBox["indicators"][number],
  dryShare: number,
): Finding[] {
  const most_kgm3 = MOST_WATER_KGM3 * (1 - dryShare);
  const odd = diameter_m < USUAL.indicator_m.least || diameter_m > USUAL.indicator_m.most;
  if (!(diameter_m > 0))
    return [error("indicator-size", `indicator “${name}” has no size`, "write its diameter, such as 16 mm")];
  return [
    ...when(
      !(density_kgm3 < MOST_WATER_KGM3),
      error(
        "indicator-sinks",
        `indicator “${name}” is no lighter than water`,
        "write its density, such as 100 kg/m3",
      ),
    ),
    ...when(
      density_kgm3 >= most_kgm3 && density_kgm3 < MOST_WATER_KGM3,
      warning(
        "indicator-low",
        `indicator “${name}” alone wets more than dryShare allows`,
        `write a density under ${rounded(most_kgm3)} kg/m3, or a smaller dryShare`,
      ),
    ),
    ...when(
      odd,
      warning(
        "indicator-odd-size",
        `indicator “${name}” is ${rounded(diameter_m * 1000, 1)} mm across`,
        "check the diameter and its unit: 5 to 60 mm is usual",
      ),
    ),
  ];
}
