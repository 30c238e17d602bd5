import { readdir } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { renderToString } from "preact-render-to-string";
import { type PageGuide, pageContextAt, pageGuide } from "../../templates/_includes/page-context.ts";
import type { PageTemplate } from "../../templates/_includes/page-template.ts";
import type { Guide } from "../guide/guide-schema.ts";
import type { Inputs } from "../model/memoize.ts";
import { programModule, templatesFolder } from "../program/program-files.ts";

/** The program's own templates, assets and partials. */
export const TEMPLATES = templatesFolder();
/** ".11ty.tsx" or, in the compiled program, ".11ty.js". */
export const EXTENSION = `.11ty${path.extname(programModule("templates/lake.11ty.tsx").pathname)}`;

/** The part of Eleventy's data that a template's functions see: the Guide and, under its alias, one item of a list. */
export type TemplateData = {
  readonly guide: Guide;
  readonly lake?: Guide["lakes"][number];
} & Readonly<Record<string, unknown>>;
type Template = PageTemplate<TemplateData>;
/** By name: "lake" is templates/lake.11ty.tsx. */
export type Templates = ReadonlyMap<string, Template>;

/** Reads the program's page templates. */
export async function loadTemplates(): Promise<Templates> {
  const files = (await readdir(TEMPLATES)).filter((file) => file.endsWith(EXTENSION)).sort();
  return new Map(
    await Promise.all(
      files.map(async (file) => {
        const template = (await import(pathToFileURL(path.join(TEMPLATES, file)).href)) as Template;
        return [path.basename(file, EXTENSION), template] as const;
      }),
    ),
  );
}

/** One page of the site: where it goes, what it is made of, and how it is drawn from that alone. */
export interface SitePage {
  readonly address: string;
  /** False for a page that nothing may lead to: an unlisted trip's. */
  readonly listed: boolean;
  readonly inputs: Inputs;
  /** @param partials HTML of the club's own partials, by name */
  readonly text: (partials?: Readonly<Record<string, string>>) => string;
}

/** The data of each page of a template, as Eleventy's pagination gives it. */
function paginated({ data: { pagination } }: Template, guide: Guide): TemplateData[] {
  if (pagination === undefined) return [{ guide }];
  const list = guide[pagination.data.replace("guide.", "") as keyof Guide] as readonly unknown[];
  return list.map((item) => ({ guide, [pagination.alias]: item }));
}

function pageOf({ data, render }: Template, given: TemplateData, frame: PageGuide): SitePage[] {
  const address = data.permalink(given);
  if (address === false) return [];
  const inputs = data.inputs(given);
  return [
    {
      address,
      listed: data.listed?.(given) ?? true,
      inputs: { ...inputs, guide: frame, address },
      text: (partials) => {
        const sheet = { ...pageContextAt(frame, address), partials };
        return `<!DOCTYPE html>\n${renderToString(render({ ...inputs, sheet }))}\n`;
      },
    },
  ];
}

/**
 * Every page that templates make of a guide, known before any is drawn, by address.
 * @param only a lake's slug: its own pages alone
 */
export function sitePages(templates: Templates, guide: Guide, only?: string): SitePage[] {
  const frame = pageGuide(guide);
  const isWanted = (given: TemplateData): boolean => only === undefined || given.lake?.slug === only;
  return [...templates.values()]
    .flatMap((template) =>
      paginated(template, guide)
        .filter(isWanted)
        .flatMap((given) => pageOf(template, given, frame)),
    )
    .sort((a, b) => (a.address < b.address ? -1 : 1));
}
