import path from "node:path";
import type { UserConfig } from "@11ty/eleventy";
import { pageGuide } from "../../templates/_includes/page-context.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type ClubPartials, configureClubEngines, drawPartials } from "./club-templates.ts";
import { EXTENSION, type SitePage, TEMPLATES, type TemplateData, type Templates } from "./pages.ts";

const FORMAT = EXTENSION.slice(1);

/** What one run of Eleventy writes. */
interface Run {
  readonly guide: Guide;
  readonly templates: Templates;
  /** The pages to write, by address. */
  readonly pages: ReadonlyMap<string, SitePage>;
  readonly partials: ClubPartials;
  /** Called for every page that is drawn. */
  readonly drawn: () => void;
}

/** Eleventy's configuration: `templates/*.11ty.tsx` over the Guide. */
export default function eleventyConfiguration({ guide, templates, pages, partials, drawn }: Run) {
  const templateAt = (inputPath: string) => {
    const template = templates.get(path.basename(inputPath, EXTENSION));
    if (template === undefined) throw new Error(`${inputPath} is no template of the program`);
    return template;
  };
  /** The page to write that a template makes of some data. */
  const pageAt = (inputPath: string, data: TemplateData): SitePage | undefined =>
    pages.get(templateAt(inputPath).data.permalink(data) || "");

  const frame = pageGuide(guide);
  return async (eleventyConfig: UserConfig): Promise<void> => {
    eleventyConfig.setTemplateFormats([FORMAT]);
    eleventyConfig.setUseGitIgnore(false);
    // Where the program is installed its templates lie there.
    eleventyConfig.ignores.delete("**/node_modules/**");
    eleventyConfig.setDataFileSuffixes([]);

    // Frozen, for Eleventy copies any other object for every template.
    eleventyConfig.addGlobalData("guide", () => Object.freeze({ ...guide }));
    // Nothing iterates over collections, and Eleventy would keep pages for them.
    eleventyConfig.addGlobalData("eleventyExcludeFromCollections", true);

    eleventyConfig.addExtension(FORMAT, {
      read: false,
      useJavaScriptImport: false,
      // Eleventy's own import would load every template once more for each run.
      getInstanceFromInputPath: async (inputPath) => templateAt(inputPath),
      getData: async (inputPath) => {
        const { data } = templateAt(inputPath);
        if (data.pagination === undefined) return data;
        const { alias } = data.pagination;
        const before = (items: readonly unknown[], given: TemplateData) =>
          items.filter((item) => pageAt(inputPath, { ...given, [alias]: item }) !== undefined);
        return { ...data, pagination: { ...data.pagination, before } };
      },
      compile(_text, inputPath) {
        // A partial of the club's own, where the program's templates end in .11ty.js too.
        if (!templates.has(path.basename(inputPath, EXTENSION))) return this.defaultRenderer;
        const { renderFile } = this.config.javascriptFunctions;
        return (data) => {
          const page = pageAt(inputPath, data);
          drawn();
          if (partials.length === 0) return page?.text();
          return drawPartials(partials, frame, renderFile, data).then((own) => page?.text(own));
        };
      },
    });

    // A page that is taken over from the last guide, or that the guide does not have, is skipped before it is drawn.
    eleventyConfig.addPreprocessor("pages to write", FORMAT, (data) =>
      data.pagination === undefined && pageAt(data.page.inputPath, data) === undefined ? false : undefined,
    );

    const [partial] = partials;
    if (partial === undefined) return;
    await configureClubEngines(eleventyConfig);
    eleventyConfig.setLayoutsDirectory("_includes");
    eleventyConfig.setIncludesDirectory(path.relative(TEMPLATES, path.dirname(partial[1])));
  };
}
