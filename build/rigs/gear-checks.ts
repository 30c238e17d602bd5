import type { LeaderStock, RigBox } from "../model/club.ts";
import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import { rounded } from "../model/units.ts";
import { isShortLeader } from "./leaders/choose-leader.ts";
import { doubtfulSteps, servedRange } from "./leaders/leader.ts";
import { isTippetSize, tippetSizeText } from "./leaders/tippet.ts";
import { waterDensity_kgm3 } from "./physics/water-properties.ts";

/** A problem with one piece of gear, before its place is known. */
type Finding = Omit<Diagnostic, keyof SourceSpot>;

const error = (code: string, message: string, hint: string): Finding => ({
  severity: "error",
  code,
  message,
  hint,
});

const warning = (code: string, message: string, hint: string): Finding => ({
  severity: "warning",
  code,
  message,
  hint,
});

/** The finding, when it is one. */
const when = (is: boolean, finding: Finding): Finding[] => (is ? [finding] : []);

/** A longer section is most likely a slip of the unit. From memory. */
const LONGEST_SECTION_M = 6;

/** What is wrong or doubtful about one leader. */
function leaderFindings(leader: LeaderStock, margin_m: number): Finding[] {
  const { name } = leader;
  const sections = [leader.taper, leader.middle, leader.tippet];
  const shortTaper = !(leader.taper.length_m > 0) || !(leader.tippet.length_m > 0);
  const sizes = sections.flatMap(({ size }) =>
    when(
      !isTippetSize(size),
      error(
        "leader-size",
        `“${name}” has a section of ${tippetSizeText(size)}`,
        "write 0X to 8X, such as 4X or 4.5X",
      ),
    ),
  );
  const lengths = [
    ...when(
      shortTaper || leader.middle.length_m < 0,
      error("leader-length", `“${name}” has a section of no length`, "write a length above 0, such as 3 ft"),
    ),
    ...when(
      sections.some(({ length_m }) => length_m > LONGEST_SECTION_M),
      warning(
        "leader-long",
        `“${name}” has a section over ${LONGEST_SECTION_M} m`,
        "check the length and its unit",
      ),
    ),
    ...when(
      !shortTaper && !isShortLeader(leader) && servedRange(leader, margin_m) === undefined,
      warning(
        "leader-no-indicator",
        `on “${name}” an indicator has no room between the margins`,
        "use a longer taper or a smaller margin",
      ),
    ),
  ];
  const steps =
    sizes.length > 0
      ? []
      : doubtfulSteps(leader).map(({ kind, words, remedy }) =>
          warning(kind === "thicker" ? "leader-thicker" : "leader-step", `“${name}”: ${words}`, remedy),
        );
  return [...sizes, ...lengths, ...steps];
}

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
function lineFindings({ name, kind, sinkRate_mps }: RigBox["lines"][number]): Finding[] {
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
function shotFindings({ name, mass_g, density_kgm3 }: RigBox["shot"][number]): Finding[] {
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
function indicatorFindings(
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

/** Gear that is listed but of which none is carried, said once, at the first of its list. */
function noneCarried<T extends { readonly carried: number; readonly where: SourceSpot }>(
  list: readonly T[],
  what: string,
): Diagnostic[] {
  const first = list[0];
  if (first === undefined || list.some(({ carried }) => carried > 0)) return [];
  return [
    {
      ...first.where,
      ...warning(
        `no-${what}`,
        `no ${what} is carried`,
        `write how many of each ${what} are carried, such as carried: 10`,
      ),
    },
  ];
}

/**
 * What cannot be right, or is doubtful, in the club's rig box. With an error among them the rigs cannot be computed;
 * with warnings alone they can.
 */
export function rigDiagnostics(box: RigBox): Diagnostic[] {
  const at = <T extends { readonly where: SourceSpot }>(
    list: readonly T[],
    findings: (item: T) => Finding[],
  ): Diagnostic[] => list.flatMap((item) => findings(item).map((finding) => ({ ...item.where, ...finding })));
  return [
    ...at(box.leaders, (leader) => leaderFindings(leader, box.margin_m)),
    ...at(box.lines, lineFindings),
    ...at(box.shot, shotFindings),
    ...noneCarried(box.shot, "shot"),
    ...at(box.indicators, (indicator) => indicatorFindings(indicator, box.dryShare)),
    ...noneCarried(box.indicators, "indicator"),
  ];
}
