import { type CalendarDate, dayMonthYear } from "../model/calendar.ts";
import { whole } from "./card-words.ts";
import { addRule, addText, type Column } from "./column.ts";
import { run } from "./flow.ts";
import { ascent_pt, GLANCE, STRONG } from "./type-styles.ts";

interface HeadWords {
  /** What the card is about, read at a glance. */
  readonly title: string;
  /** What this side of it holds; in small type behind the title. */
  readonly side?: string;
  /** The club's field that the title comes from. */
  readonly field: string;
}

/** The head of every side of every card: its title, the day it speaks from at the right, and a rule. */
export function addCardHead(column: Column, asOf: CalendarDate, { title, side, field }: HeadWords): void {
  const day = whole(`as of ${dayMonthYear(asOf)}`);
  const indent_pt = column.width_pt - column.ruler.width_pt(day, STRONG);
  const top_pt = column.y_pt;
  const words = [run(side === undefined ? title : `${title}  `, GLANCE)];
  addText(column, side === undefined ? words : [...words, run(side, STRONG)], {
    role: "H1",
    field,
    width_pt: indent_pt - 8,
    maxLines: 2,
  });
  const below_pt = column.y_pt;
  column.y_pt = top_pt + ascent_pt(GLANCE) - ascent_pt(STRONG);
  addText(column, [run(day, STRONG)], { role: "P", field: "asOf", indent_pt });
  column.y_pt = below_pt + 1;
  addRule(column, 1.6);
  column.y_pt += 3;
}
