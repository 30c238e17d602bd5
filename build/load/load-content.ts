import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { load } from "js-yaml";
import { z } from "zod";
import type { Chapter, StandingContent } from "../model/content.ts";
import { DAY_STATES } from "../model/phase.ts";

const CONTENT_DIR = fileURLToPath(new URL("../../content/", import.meta.url));

const cautionsSchema = z.array(
  z.strictObject({
    id: z.string(),
    when: z.array(z.enum(["always", ...DAY_STATES])).min(1),
    short: z.string().max(90),
    agency: z.string(),
  }),
);

async function loadChapter(file: string): Promise<Chapter> {
  const markdown = await readFile(path.join(CONTENT_DIR, "chapters", file), "utf8");
  const title = /^\s*# (.+)$/m.exec(markdown)?.[1];
  if (title === undefined) throw new Error(`content/chapters/${file} has no title: begin it with "# Title"`);
  return { slug: path.basename(file, ".md"), title: title.trim(), markdown };
}

/** Reads the standing chapters and cautions that come with the program. @throws when one of them is malformed */
export async function loadContent(): Promise<StandingContent> {
  const files = (await readdir(path.join(CONTENT_DIR, "chapters")))
    .filter((file) => file.endsWith(".md"))
    .sort();
  const cautions = load(await readFile(path.join(CONTENT_DIR, "cautions.yaml"), "utf8"));
  return { chapters: await Promise.all(files.map(loadChapter)), cautions: cautionsSchema.parse(cautions) };
}
