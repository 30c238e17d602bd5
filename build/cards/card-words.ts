import type { Caution, Guide, GuideLake } from "../guide/guide-schema.ts";
import { ADDRESS, folderOf } from "../model/addresses.ts";
import { type CalendarDate, clockText, dayMonth, dayRange } from "../model/calendar.ts";
import { GOOD_STATES, phaseName, STATE_WORDS, stateOfPhase } from "../model/phase.ts";
import type { Spread } from "../model/shared-schemas.ts";
import {
  areaText,
  chanceText,
  depthRange,
  depthText,
  distanceText,
  elevationText,
  type UnitSystem,
} from "../model/units.ts";

type Plan = GuideLake["plan"][number];
type Rig = Plan["rigs"][number];

/** One thing read at a glance: what it is, its value, and how sure it is. */
export interface Glance {
  readonly label: string;
  readonly value: string;
  readonly sureness: string;
}

/** Keeps a date or a name on one line: no break at its spaces. */
export const noBreak = (text: string): string => text.replaceAll(" ", "\u00a0");

/** "(9–19 May)": the days that hold eight chances in ten, or nothing where the day is known. */
const inBrackets = ({ p10, p90 }: Spread): string => (p10 === p90 ? "" : noBreak(`(${dayRange(p10, p90)})`));

export const nowGlance = ({ now }: GuideLake): Glance => ({
  label: "Now",
  value: STATE_WORDS[now.state].name,
  sureness: `${noBreak(chanceText(now.chance))} sure`,
});

const dateGlance = (label: string, spread: Spread): Glance => ({
  label,
  value: noBreak(dayMonth(spread.p50)),
  sureness: inBrackets(spread),
});

/** When the good days come or, while they last, when they end. */
export function whenGlance(lake: GuideLake): Glance {
  const present = lake.phases.find(({ phase }) => stateOfPhase(phase) === lake.now.state);
  if (present !== undefined && present.phase === leadingPhase(lake))
    return dateGlance(`${phaseName(present.phase)} until`, present.to);
  if (lake.next !== null) return dateGlance(`${phaseName(lake.next.phase)} from`, lake.next.from);
  return dateGlance(
    lake.now.state === "laterWeeks" ? "Later weeks since" : "Later weeks from",
    lake.laterWeeks,
  );
}

/** "Best days ahead: 9–15 Jun (84 % good)." */
export const bestDaysText = ({ bestDays }: GuideLake): string | null =>
  bestDays === null
    ? null
    : `Best days ahead: ${noBreak(dayRange(bestDays.from, bestDays.to))} (${noBreak(chanceText(bestDays.chance))} good).`;

const spreadText = (spread: Spread): string =>
  [noBreak(dayMonth(spread.p50)), inBrackets(spread)].filter(Boolean).join(" ");

/** "14 May (9–19 May) to 24 May (19–29 May)". */
export function phaseDaysText(lake: GuideLake, plan: Plan): string {
  if (plan.phase === "later-weeks") return `from ${spreadText(lake.laterWeeks)}`;
  const phase = lake.phases.find((window) => window.phase === plan.phase);
  return phase === undefined ? "" : `${spreadText(phase.from)} to ${spreadText(phase.to)}`;
}

/** The rig to start with and, where fish are worth the time, the first that is counted down. */
export function cardRigs({ phase, rigs }: Plan): Rig[] {
  const first = rigs.slice(0, 1);
  const counted = rigs.slice(1).filter(({ countdown }) => countdown !== null);
  return GOOD_STATES.includes(stateOfPhase(phase)) ? [...first, ...counted.slice(0, 1)] : first;
}

/** The number a rig is set by, and what kind of number it is. */
export function rigNumber(
  rig: Rig,
  band: Plan["band"],
  units: UnitSystem,
): { readonly label: string; readonly value: string } {
  if (rig.setDepth !== null)
    return { label: "Set", value: depthRange(rig.setDepth.from_m, rig.setDepth.to_m, units) };
  if (rig.countdown !== null) {
    return { label: "Count", value: countText(rig.countdown) };
  }
  return { label: "In", value: depthRange(band.from_m, band.to_m, units) };
}

/** "16–30 s", "from 16 s". */
function countText({ from_s, to_s }: NonNullable<Rig["countdown"]>): string {
  if (to_s === null) return `from ${from_s} s`;
  return from_s === to_s ? `${from_s} s` : `${from_s}–${to_s} s`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * "Indicator still, slip. Leader Long, line Floating." A line that is named for the way is not said twice; what the
 * gear cannot cover is only pointed to.
 */
export function rigText({ way, leader, landing, line, uncovered }: Rig): string {
  const how = landing === null ? way : `${way}, ${landing}`;
  const gear = [
    ...(leader === null ? [] : [`leader ${leader}`]),
    ...(line === null || line.toLowerCase() === way ? [] : [`line ${line}`]),
  ];
  const sentences = [
    how,
    ...(gear.length === 0 ? [] : [gear.join(", ")]),
    ...(uncovered === null ? [] : ["not all of it: see the page"]),
  ];
  return sentences.map((sentence) => `${capital(sentence)}.`).join(" ");
}

/** The phase whose numbers are wanted first: the one that is on while it can be fished, else the good one to come. */
export function leadingPhase({ now, next, phases }: GuideLake): Plan["phase"] | undefined {
  if (now.state === "laterWeeks") return "later-weeks";
  const present = phases.find(({ phase }) => stateOfPhase(phase) === now.state);
  return present !== undefined && GOOD_STATES.includes(now.state) ? present.phase : next?.phase;
}

/** "Marl Scud 12, 14; Cinder Pupa 14, 16." */
export const fliesText = (flies: Plan["flies"]): string =>
  `${flies.map(({ name, sizes }) => noBreak([name, sizes.join(", ")].filter(Boolean).join(" "))).join("; ")}.`;

/** "Elevation 8,465 ft; 40 acres; deepest 28 ft, mean 11 ft; marl water." */
export function factsText(lake: GuideLake, units: UnitSystem): string {
  const { elevation_m, area_ha, maxDepth_m, meanDepth_m, water, region } = lake;
  const depths = [
    ...(maxDepth_m === null ? [] : [`deepest ${depthText(maxDepth_m, units)}`]),
    ...(meanDepth_m === null ? [] : [`mean ${depthText(meanDepth_m, units)}`]),
  ];
  const facts = [
    ...(region === null ? [] : [region]),
    ...(elevation_m === null ? [] : [`elevation ${elevationText(elevation_m, units)}`]),
    ...(area_ha === null ? [] : [areaText(area_ha, units)]),
    ...(depths.length === 0 ? [] : [depths.join(", ")]),
    ...(water === null ? [] : [`${water} water`]),
  ];
  return facts.length === 0 ? "" : `${capital(facts.join("; "))}.`;
}

/**
 * The cautions that a lake's card should carry, the most pressing first: in the guide's own order, those that always
 * hold or belong to what the lake is now, then those of what comes next.
 */
export function cardCautions({ cautions }: Pick<Guide, "cautions">, { now, next }: GuideLake): Caution[] {
  const first = cautions.filter(({ when }) => when.includes("always") || when.includes(now.state));
  const later = cautions.filter(({ when }) => next !== null && when.includes(stateOfPhase(next.phase)));
  return [...new Set([...first, ...later])];
}

/** Stands on every card that says what to do. */
export const LOCAL_RULES_TEXT = "Local rules and licensed instruction come first.";

/** The force from which small craft stay ashore. */
const ROUGH_FORCE = 5;

/** "Longest fetch 2.0 mi, WSW–ENE: waves to 1.5–2 ft at force 5." Nothing where the shore is not known. */
export function fetchText({ place: { wind } }: GuideLake, units: UnitSystem): string | null {
  const rough = wind?.forces.find(({ force }) => force === ROUGH_FORCE);
  if (wind === null || rough === undefined) return null;
  const { fetch_m, along } = wind.longest;
  const { from, to } = rough.height_m;
  const waves = noBreak(`${depthRange(from, to, units)} at force ${ROUGH_FORCE}`);
  return `Longest fetch ${noBreak(distanceText(fetch_m, units))}, ${along.join("–")}: waves to ${waves}.`;
}

/** "first light 05:05, sunrise 05:37, sunset 20:15, last light 20:47." What does not happen that day is left out. */
export function lightText({ place }: GuideLake, date: CalendarDate): string | null {
  const light = place.light.find((row) => row.date === date);
  if (light === undefined) return null;
  const times = [
    ["first light", light.firstLight],
    ["sunrise", light.sunrise],
    ["sunset", light.sunset],
    ["last light", light.lastLight],
  ] as const;
  const told = times.flatMap(([what, minute]) =>
    minute === null ? [] : [noBreak(`${what} ${clockText(minute)}`)],
  );
  return [...(told.length === 0 ? [] : [`${told.join(", ")}.`]), light.words ?? ""].join(" ").trim();
}

/** Cautions that follow one agency, to stand together. */
export interface AgencyCautions {
  /** "Dress for the water, not the air. Read the wind forecast." */
  readonly words: string;
  /** "(US National Weather Service)". */
  readonly agency: string;
}

/** Cautions by the agency they follow, in the order they come. */
export const byAgency = (cautions: readonly Caution[]): AgencyCautions[] =>
  [...new Set(cautions.map(({ agency }) => agency))].map((agency) => ({
    words: cautions
      .filter((caution) => caution.agency === agency)
      .map(({ short }) => short)
      .join(" "),
    agency: agencyText(agency),
  }));

/** "(US Coast Guard)". */
export const agencyText = (agency: string): string => noBreak(`(${agency})`);

/** What a card's QR code opens: the lake's page or, where the guide has no address, its place (RFC 5870). */
export function qrTarget({ baseUrl }: Pick<Guide, "baseUrl">, { slug, position }: GuideLake) {
  return baseUrl === null
    ? { uri: `geo:${position.lat},${position.lon}`, label: "This lake on a map" }
    : { uri: new URL(folderOf(ADDRESS.lake(slug)), baseUrl).href, label: "This lake's page" };
}
