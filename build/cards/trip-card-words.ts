import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideTrip } from "../guide/guide-schema.ts";
import { clockText } from "../model/clock.ts";
import { phaseName } from "../model/phase.ts";
import { chanceNumber, chanceText } from "../model/units.ts";
import { cardRigs, rigNumber, rigText, whole } from "./card-words.ts";

type Day = GuideTrip["days"][number];
type Group = GuideTrip["packing"][number];
type GearLake = GuideTrip["gear"]["lakes"][number];

/** A lake's chance on a day, in percent; nothing where its road is closed. */
export function dayChance({ lakes }: Day, slug: string): string {
  const row = lakes.find((lake) => lake.slug === slug);
  if (row === undefined) return "";
  return row.open ? chanceNumber(row.good) : "closed";
}

/** "05:03–21:03", or what to say of a day without. */
export function lightSpan({ light }: GuideTrip, date: Day["date"]): string {
  const row = light.find((one) => one.date === date);
  if (row === undefined) return "";
  const { firstLight, lastLight } = row;
  return firstLight === null || lastLight === null
    ? row.sun
    : `${clockText(firstLight)}–${clockText(lastLight)}`;
}

/** "One of the two over 99 %, mean over the days." */
export const eitherText = (either: number): string =>
  `One of the two ${whole(chanceText(either))}, mean over the days.`;

/** "The pram: Ines, Tobin". */
export function seatTexts({ boats, people, ashore }: GuideTrip): string[] {
  if (boats.length === 0) return people.length === 0 ? [] : [people.join(", ")];
  return [
    ...boats.map(({ name, seats, aboard }) =>
      aboard.length === 0
        ? `${name}, ${whole(`seats ${seats}`)}`
        : `${name}: ${aboard.map(whole).join(", ")}`,
    ),
    ...(ashore.length === 0 ? [] : [`No seat for ${ashore.map(whole).join(", ")}`]),
  ];
}

/** The rigs to build for a lake, a line each: the phase and its number, and how. */
export function rigLines(
  { name, phases }: GearLake,
  { club }: GuideFrame,
): { readonly strong: string; readonly words: string }[] {
  return phases.flatMap((plan) =>
    cardRigs(plan).map((rig) => {
      const { label, value } = rigNumber(rig, plan.band, club.units);
      return {
        strong: `${name}, ${phaseName(plan.phase).toLowerCase()}: ${label.toLowerCase()} ${whole(value)}`,
        words: rigText(rig),
      };
    }),
  );
}

/** "4 life jackets; 2 throw lines": what to pack of a group, without the reasons. */
export const packingText = ({ items }: Group): string =>
  `${items.map(({ count, item }) => `${count}\u00a0${item}`).join("; ")}.`;
