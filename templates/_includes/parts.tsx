import type { ComponentChildren } from "preact";
import type { Drawing as DrawingTree } from "../../build/draw/drawing.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { hasChapter } from "../../build/guide/guide-contents.ts";
import type { GuideFrame } from "../../build/guide/guide-frame.ts";
import type { Caution } from "../../build/guide/guide-schema.ts";
import { type PrintFile, SHEETS } from "../../build/guide/print-files.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { dayMonthYear } from "../../build/model/calendar.ts";
import type { DayState } from "../../build/model/phase.ts";
import type { PageContext } from "./page-context.ts";

/** A heading in the margin and what belongs to it. */
export const Section = ({
  title,
  id,
  children,
}: {
  title: string;
  id: string;
  children: ComponentChildren;
}) => (
  <section aria-labelledby={id}>
    <h2 id={id}>{title}</h2>
    <div class="in">{children}</div>
  </section>
);

/** A row that already answers; the rest is a tap away, and always printed. */
export const Fold = ({
  title,
  id,
  answer,
  children,
}: {
  title: string;
  id: string;
  answer: string;
  children: ComponentChildren;
}) => (
  <details class="fold">
    <summary>
      <h2 id={id}>{title}</h2>
      <span class="small">{answer}</span>
    </summary>
    <div class="in">{children}</div>
  </details>
);

/** A line of a short list of facts; left out where there is nothing to say. */
export const Fact = ({ name, children }: { name: string; children: ComponentChildren }) =>
  children === null || children === undefined || children === "" ? null : (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );

/** A wide table that scrolls by itself, by touch and by keyboard. */
export const Scroll = ({ label, children }: { label: string; children: ComponentChildren }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1)
  <section class="scroll" aria-label={label} tabIndex={0}>
    {children}
  </section>
);

/** HTML that has already been made harmless: a drawing, or Markdown rendered without raw HTML. */
export const Harmless = ({ html, class: name }: { html: string; class: string }) => (
  <div class={name} dangerouslySetInnerHTML={{ __html: html }} />
);

/** A drawing, and the same facts in words. */
export const Drawing = ({ drawing }: { drawing: DrawingTree }) => (
  <figure>
    <Harmless class="drawing" html={renderSvg(drawing)} />
    <figcaption class="small">{drawing.title}</figcaption>
  </figure>
);

/** What stands under every forecast: its date, and how it was made. */
export const ForecastNote = ({ sheet, children }: { sheet: PageContext; children?: ComponentChildren }) => (
  <p class="small">
    As of {dayMonthYear(sheet.guide.asOf)}. {children}
    {hasChapter(sheet.guide, "methods") ? (
      <a href={sheet.to(ADDRESS.chapter("methods"))}>How these dates are made</a>
    ) : null}
  </p>
);

/** Cautions for one state of a lake, or those that always hold. */
export const cautionsFor = (
  { cautions }: Pick<GuideFrame, "cautions">,
  when: DayState | "always",
): Caution[] => cautions.filter((caution) => caution.when.includes(when));

/** Cautions beside the risk they warn of, each with the agency it follows. */
export function Cautions({ cautions, sheet }: { cautions: readonly Caution[]; sheet: PageContext }) {
  if (cautions.length === 0) return null;
  return (
    <div class="cautions">
      <ul>
        {cautions.map(({ short, agency }) => (
          <li>
            <strong>{short}</strong> <span class="small">{agency}</span>
          </li>
        ))}
      </ul>
      {hasChapter(sheet.guide, "cautions") ? (
        <p class="small">
          <a href={sheet.to(ADDRESS.chapter("cautions"))}>All cautions</a>; local rules and licensed
          instruction come first.
        </p>
      ) : null}
    </div>
  );
}

/** "Indicator still": a word of the data at the start of a line. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "sizes 12, 14", "size 12". */
export const sizesText = (sizes: readonly number[]): string =>
  sizes.length === 0 ? "" : `${sizes.length === 1 ? "size" : "sizes"} ${sizes.join(", ")}`;

/** Whatever is known, in one line: "16 ha · 2,580 m". */
export const inOneLine = (parts: readonly (string | null)[]): string =>
  parts.filter((part) => part !== null && part !== "").join(" · ");

/** PDFs to print: each card alone where it has a file of its own, and on sheets. */
export const PrintList = ({ files, sheet }: { files: readonly PrintFile[]; sheet: PageContext }) => (
  <Section title="To print" id="print">
    <ul class="plain">
      {files.map(({ what, size, alone, sheets }) => (
        <li>
          {alone === null ? what : <a href={sheet.to(ADDRESS.card(alone))}>{what}</a>}, {size}
          {sheets === null
            ? null
            : SHEETS.map(([ending, paper]) => (
                <>
                  {" · "}
                  <a href={sheet.to(ADDRESS.card(`${sheets}-${ending}`))}>{paper} sheets</a>
                </>
              ))}
        </li>
      ))}
    </ul>
    {hasChapter(sheet.guide, "printing") ? (
      <p class="small">
        PDF. <a href={sheet.to(ADDRESS.chapter("printing"))}>All files, and how to print them</a>
      </p>
    ) : null}
  </Section>
);
