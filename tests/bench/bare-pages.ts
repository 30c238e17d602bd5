import { mkdir, readdir, readFile } from "node:fs/promises";
import path from "node:path";
import Eleventy from "@11ty/eleventy";
import { startCost } from "./stage-watch.ts";

/**
 * Writes the pages of a finished guide again by Eleventy alone: as many, with the same bytes, each known beforehand.
 * Says the cost as JSON. Arguments: the finished guide, and a folder to write to.
 */
const [site = "", outDir = ""] = process.argv.slice(2);
const files = (await readdir(site, { recursive: true })).filter((file) => file.endsWith(".html"));
const pages = await Promise.all(
  files.map(async (file) => ({ file, text: await readFile(path.join(site, file), "utf8") })),
);
const noTemplates = path.join(outDir, "no-templates");
await mkdir(noTemplates, { recursive: true });
/** Eleventy takes paths from where it is started. */
const fromHere = (dir: string): string => path.relative(process.cwd(), dir);
const cost = startCost();
const eleventy = new Eleventy(fromHere(noTemplates), fromHere(path.join(outDir, "pages")), {
  configPath: false,
  quietMode: true,
  config: (config) => {
    config.setTemplateFormats(["11ty.js"]);
    config.setDataFileSuffixes([]);
    for (const { file, text } of pages)
      config.addTemplate(`${file}.11ty.js`, { data: () => ({ permalink: file }), render: () => text });
  },
});
eleventy.disableLogger();
await eleventy.write();
const spent = cost();
const written = (await readdir(path.join(outDir, "pages"), { recursive: true })).filter((file) =>
  file.endsWith(".html"),
);
if (written.length !== pages.length) throw new Error(`${written.length} pages instead of ${pages.length}`);
console.log(JSON.stringify({ ...spent, made: pages.length }));
