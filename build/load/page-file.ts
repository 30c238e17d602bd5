import type { Chapter } from "../model/content.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { errorAt, startOf } from "./problem.ts";

/** Reads a page of the club's own; its title is its first heading. */
export function readPage({ file, slug, text }: ClubFile, problems: Diagnostic[]): Chapter | undefined {
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
