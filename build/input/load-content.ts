import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { load } from "js-yaml";
import { z } from "zod";
import { BOAT_KINDS } from "../model/club.ts";
import { type Chapter, COUNTED_EACH, COUNTED_ONCE, type StandingContent } from "../model/content.ts";
import { DAY_STATES } from "../model/phase.ts";
import { programFile } from "../program/program-files.ts";

const CONTENT_DIR = programFile("content");

const cautionsSchema = z.array(
  z.strictObject({
    id: z.string(),
    when: z.array(z.enum(["always", ...DAY_STATES])).min(1),
    short: z.string().max(90),
    agency: z.string(),
  }),
);

const packingSchema = z.array(
  z
    .strictObject({
      id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
      group: z.string(),
      item: z.string(),
      per: z.enum([...COUNTED_ONCE, ...COUNTED_EACH]),
      number: z.number().positive().optional(),
      every: z.number().positive().optional(),
      least: z.number().int().positive().optional(),
      states: z.array(z.enum(DAY_STATES)).min(1).optional(),
      only: z.enum(["indicator", "boats"]).optional(),
      boats: z.array(z.enum(BOAT_KINDS)).min(1).optional(),
      why: z.string().optional(),
      caution: z.string().optional(),
    })
    .refine(({ number, every }) => (number === undefined) !== (every === undefined), {
      message: "a packing rule has either number or every",
    }),
);

async function loadChapter(file: string): Promise<Chapter> {
  const markdown = await readFile(path.join(CONTENT_DIR, "chapters", file), "utf8");
  const title = /^\s*# (.+)$/m.exec(markdown)?.[1];
  if (title === undefined) throw new Error(`content/chapters/${file} has no title: begin it with "# Title"`);
  return { slug: path.basename(file, ".md"), title: title.trim(), markdown };
}

/** Reads the standing chapters, cautions and packing rules that come with the program. @throws when one of them is malformed */
export async function loadContent(): Promise<StandingContent> {
  const files = (await readdir(path.join(CONTENT_DIR, "chapters")))
    .filter((file) => file.endsWith(".md"))
    .sort();
  const list = async (file: string): Promise<unknown> =>
    load(await readFile(path.join(CONTENT_DIR, file), "utf8"));
  const cautions = cautionsSchema.parse(await list("cautions.yaml"));
  const packing = packingSchema.parse(await list("packing.yaml"));
  const known = new Set(cautions.map(({ id }) => id));
  const lost = packing.find(({ caution }) => caution !== undefined && !known.has(caution));
  if (lost !== undefined)
    throw new Error(`content/packing.yaml: no caution “${lost.caution}” for ${lost.id}`);
  return { chapters: await Promise.all(files.map(loadChapter)), cautions, packing };
}
