import { z } from "zod";
import type { Boat } from "../model/club.ts";
import type { COUNTED_ONCE, PackingRule } from "../model/content.ts";
import type { DayState } from "../model/phase.ts";

/** What to put in the car, group by group; every line has a count. */
export const packingSchema = z.array(
  z.strictObject({
    group: z.string(),
    items: z.array(
      z.strictObject({
        id: z.string(),
        item: z.string(),
        count: z.number().int().min(1),
        how: z.string().meta({ description: "How the count comes about." }),
        why: z.string().nullable(),
      }),
    ),
  }),
);
export type Packing = z.infer<typeof packingSchema>;

/** Counted by boats that the rule may choose among. */
type Afloat = "boat" | "aboard";
type Once = Exclude<(typeof COUNTED_ONCE)[number], Afloat>;
type Each = Exclude<PackingRule["per"], Once | Afloat>;

/** One of several things of a kind, how many units of it the trip takes, and what else to say of it. */
export interface PackingQuantity {
  readonly name: string;
  /** Pieces, or metres of tippet. */
  readonly units: number;
  /** How the units come about. */
  readonly how: string;
  readonly note?: string;
}

/** What a trip's list is counted from. */
export interface PackingInputs {
  readonly once: Readonly<Record<Once, number>>;
  readonly each: Readonly<Record<Each, readonly PackingQuantity[]>>;
  /** States that the trip's lakes may well be in. */
  readonly states: ReadonlySet<DayState>;
  readonly underIndicator: boolean;
  /** With how many people each carries. */
  readonly boats: readonly (Pick<Boat, "kind"> & { readonly aboard: number })[];
  /** Length of anchor rope for the deepest water fished, in chop; null where none is anchored over. */
  readonly rope: string | null;
}

type Group = Packing[number];
type Item = Group["items"][number];

/** Sums of decimals may come out a hair above a whole number. */
const HAIR = 1e-9;

function countOf({ number, every, least }: PackingRule, units: number): number {
  const exact = every === undefined ? units * (number ?? 0) : units / every;
  return Math.max(least ?? 0, Math.ceil(exact - HAIR));
}

/** The boats a rule counts: those of its kinds, else every one that floats. */
const boatsFor = ({ boats: kinds }: PackingRule, { boats }: PackingInputs): PackingInputs["boats"] =>
  boats.filter(({ kind }) => (kinds === undefined ? kind !== "shore" : kinds.includes(kind)));

function applies(rule: PackingRule, inputs: PackingInputs): boolean {
  if (rule.only === "indicator" && !inputs.underIndicator) return false;
  if (rule.only === "boats" && boatsFor(rule, inputs).length === 0) return false;
  return rule.states === undefined || rule.states.some((state) => inputs.states.has(state));
}

/** What is counted once, in words. */
const COUNTED: Readonly<Record<Once | Afloat, readonly [one: string, many: string]>> = {
  trip: ["trip", "trips"],
  rod: ["rod", "rods"],
  person: ["person", "people"],
  boat: ["boat", "boats"],
  aboard: ["person in such a boat", "people in such boats"],
  rodDay: ["rod-day", "rod-days"],
  personDay: ["person-day", "person-days"],
  leader: ["leader", "leaders"],
};

/** "2 for each of 4 rods", "1 for every 4 of 12 rod-days", "at least 1". */
function howText({ number, every, least = 0 }: PackingRule, units: number, counted: string): string {
  const count = every === undefined ? units * (number ?? 0) : units / every;
  if (count < least) return `at least ${least}`;
  return every === undefined ? `${number} for each of ${counted}` : `1 for every ${every} of ${counted}`;
}

const countedOnce = ({ per, ...rule }: PackingRule, inputs: PackingInputs): number | undefined => {
  const chosen = boatsFor({ per, ...rule }, inputs);
  if (per === "boat") return chosen.length;
  if (per === "aboard") return chosen.reduce((sum, { aboard }) => sum + aboard, 0);
  return per in inputs.once ? inputs.once[per as Once] : undefined;
};

function itemsOf(rule: PackingRule, inputs: PackingInputs, cautions: ReadonlyMap<string, string>): Item[] {
  const { id, per, why } = rule;
  const item = rule.item.replace("{rope}", () => inputs.rope ?? "enough");
  const caution = rule.caution === undefined ? undefined : cautions.get(rule.caution);
  const line = (
    lineId: string,
    text: string,
    { units, how }: { readonly units: number; readonly how: string },
    notes: readonly (string | undefined)[],
  ): Item[] => {
    const count = countOf(rule, units);
    const words = notes.filter((part) => part !== undefined).join(" ");
    return count < 1 ? [] : [{ id: lineId, item: text, count, how, why: words === "" ? null : words }];
  };
  const units = countedOnce(rule, inputs);
  if (units !== undefined) {
    const [one, many] = COUNTED[per as Once | Afloat];
    const how = howText(rule, units, `${units} ${units === 1 ? one : many}`);
    return line(id, item, { units, how }, [why, caution]);
  }
  return inputs.each[per as Each].flatMap(({ name, units: pieces, how, note }, i) =>
    line(
      `${id} ${name}`,
      item.replace("{name}", () => name),
      { units: pieces, how },
      i === 0 ? [why, note, caution] : [note],
    ),
  );
}

/**
 * The packing list of a trip: every line a whole number of pieces, one or more.
 * @param cautions the short text of each caution, by id
 */
export function packingList(
  rules: readonly PackingRule[],
  inputs: PackingInputs,
  cautions: ReadonlyMap<string, string>,
): Packing {
  const groups = new Map<string, Item[]>();
  for (const rule of rules.filter((candidate) => applies(candidate, inputs))) {
    const items = itemsOf(rule, inputs, cautions);
    if (items.length > 0) groups.set(rule.group, [...(groups.get(rule.group) ?? []), ...items]);
  }
  return [...groups].map(([group, items]) => ({ group, items }));
}
