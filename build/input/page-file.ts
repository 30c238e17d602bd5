import type { Chapter } from "../model/content.ts";
import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";
import type { ClubFile } from "./club-files.ts";
import { errorAt, startOf, warningAt } from "./problem.ts";
import { spotter } from "./yaml/yaml-document.ts";

/** Text that stands for itself: what looks like a picture or a tag there is none. */
const CODE = /^(```|~~~)[\s\S]*?^\1|`[^`\n]*`/gm;
const blanked = (text: string): string => text.replace(/[^\r\n]/g, " ");

/** What Markdown elsewhere may hold and a guide does not show. */
const UNSHOWN: readonly { readonly sign: RegExp; readonly fault: Fault }[] = [
  {
    sign: /!\[[^\]\n]{0,300}\]\([^)\n]{0,500}\)/,
    fault: {
      code: "page-picture",
      message: "this picture is not shown: a guide holds no pictures from elsewhere",
      hint: "take it out, and say in words what it shows",
    },
  },
  {
    sign: /<\/?[a-z][a-z0-9-]*(?:\s[^<>\n]*)?>/i,
    fault: {
      code: "page-html",
      message: "this HTML is shown as it is written, and does nothing",
      hint: "write Markdown: **bold**, - a list, [a link](https://club.example/)",
    },
  },
];

/** The first picture and the first tag of a text, at their places. */
export function unshown(text: string, spotOf: (offset: number) => SourceSpot): Diagnostic[] {
  const prose = text.replace(CODE, blanked);
  return UNSHOWN.flatMap(({ sign, fault }) => {
    const offset = prose.search(sign);
    return offset < 0 ? [] : [warningAt(spotOf(offset), fault)];
  });
}

/** Reads a page of the club's own; its title is its first heading. */
export function readPage({ file, slug, text }: ClubFile, problems: Diagnostic[]): Chapter | undefined {
  problems.push(...unshown(text, spotter(file, text)));
  const title = /^#[ \t]+(\S.*)$/m.exec(text)?.[1]?.trim();
  if (title !== undefined) return { slug, title, markdown: text };
  const isTight = /^#[^\s#]/m.test(text);
  problems.push(
    errorAt(startOf(file), {
      code: "page-without-title",
      message: "the page has no title",
      hint: isTight
        ? "write a space behind the #, as in “# Manners on the water”"
        : "begin it with a heading, such as “# Manners on the water”",
    }),
  );
  return undefined;
}
