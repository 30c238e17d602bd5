import { z } from "zod";
import type { PackingRule } from "../model/content.ts";
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
        why: z.string().nullable(),
      }),
    ),
  }),
);
export type Packing = z.infer<typeof packingSchema>;

type Once = "trip" | "rod" | "person" | "boat" | "rodDay" | "personDay" | "leader";
type Each = Exclude<PackingRule["per"], Once>;

/** One of several things of a kind, how many units of it the trip takes, and what else to say of it. */
export interface PackingQuantity {
  readonly name: string;
  /** Pieces, or metres of tippet. */
  readonly units: number;
  readonly note?: string;
}

/** What a trip's list is counted from. */
export interface PackingInputs {
  readonly once: Readonly<Record<Once, number>>;
  readonly each: Readonly<Record<Each, readonly PackingQuantity[]>>;
  /** States that the trip's lakes may well be in. */
  readonly states: ReadonlySet<DayState>;
  readonly underIndicator: boolean;
}

type Group = Packing[number];
type Item = Group["items"][number];

/** Sums of decimals may come out a hair above a whole number. */
const HAIR = 1e-9;

function countOf({ number, every, least }: PackingRule, units: number): number {
  const exact = every === undefined ? units * (number ?? 0) : units / every;
  return Math.max(least ?? 0, Math.ceil(exact - HAIR));
}

function applies({ states, only }: PackingRule, needs: PackingInputs): boolean {
  if (only === "indicator" && !needs.underIndicator) return false;
  if (only === "boats" && needs.once.boat === 0) return false;
  return states === undefined || states.some((state) => needs.states.has(state));
}

const isOnce = (per: PackingRule["per"], { once }: PackingInputs): per is Once => per in once;

function itemsOf(rule: PackingRule, needs: PackingInputs, cautions: ReadonlyMap<string, string>): Item[] {
  const { id, item, per, why } = rule;
  const caution = rule.caution === undefined ? undefined : cautions.get(rule.caution);
  const line = (
    lineId: string,
    text: string,
    units: number,
    notes: readonly (string | undefined)[],
  ): Item[] => {
    const count = countOf(rule, units);
    const words = notes.filter((part) => part !== undefined).join(" ");
    return count < 1 ? [] : [{ id: lineId, item: text, count, why: words === "" ? null : words }];
  };
  if (isOnce(per, needs)) return line(id, item, needs.once[per], [why, caution]);
  return needs.each[per].flatMap(({ name, units, note }, i) =>
    line(
      `${id} ${name}`,
      item.replace("{name}", () => name),
      units,
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
  needs: PackingInputs,
  cautions: ReadonlyMap<string, string>,
): Packing {
  const groups = new Map<string, Item[]>();
  for (const rule of rules.filter((candidate) => applies(candidate, needs))) {
    const items = itemsOf(rule, needs, cautions);
    if (items.length > 0) groups.set(rule.group, [...(groups.get(rule.group) ?? []), ...items]);
  }
  return [...groups].map(([group, items]) => ({ group, items }));
}
