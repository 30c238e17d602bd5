import { mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { makeGuide } from "../../build/pipeline.ts";
import { seeded } from "../seeded-random.ts";
import { eventually, get, type PreviewGround, statusOf } from "./preview-ground.ts";
import { contentsOf } from "./tiny-club.ts";

/** How editors, and those who move files about, change a club. */
const EDITS = ["in place", "by rename", "burst", "folder away and back", "new folder"] as const;
type EditKind = (typeof EDITS)[number];

const LAKE = "lakes/ember.yaml";
const LAKE_PAGE = "/lakes/ember/";

interface Edit {
  readonly kind: EditKind;
  readonly number: number;
}

const markOf = ({ number }: Edit): string => `Mark ${number} seen.`;

/** Makes one change, and returns the address whose page must then hold the mark. */
async function edit(ground: PreviewGround, one: Edit, random: () => number): Promise<string> {
  const { club } = ground;
  const lake = path.join(club, LAKE);
  const whole = await readFile(lake, "utf8");
  const next = `${whole.replace(/^notes:.*\n/m, "")}notes: ${markOf(one)}\n`;
  switch (one.kind) {
    case "in place":
      await writeFile(lake, next);
      return LAKE_PAGE;
    case "by rename":
      await writeFile(path.join(club, "lakes/.ember.yaml.part"), next);
      await rename(path.join(club, "lakes/.ember.yaml.part"), lake);
      return LAKE_PAGE;
    case "burst":
      for (let i = 0; i < 5; i++) {
        await writeFile(lake, `${next}# ${i}\n`);
        await sleep(random() * 60);
      }
      await writeFile(lake, next);
      return LAKE_PAGE;
    case "folder away and back": {
      const away = path.join(ground.dir, "away");
      await rename(path.join(club, "lakes"), away);
      await sleep(random() * 300);
      await writeFile(path.join(away, "ember.yaml"), next);
      await rename(away, path.join(club, "lakes"));
      return LAKE_PAGE;
    }
    case "new folder": {
      await rm(path.join(club, "pages"), { recursive: true, force: true });
      await sleep(random() * 100);
      await mkdir(path.join(club, "pages"));
      await writeFile(path.join(club, `pages/note-${one.number}.md`), `# A note\n\n${markOf(one)}\n`);
      return `/pages/note-${one.number}/`;
    }
  }
}

export interface EditsResult {
  readonly made: number;
  readonly missed: readonly string[];
  /** Files that differ at the end from a clean build, or pages served that differ from the folder's. */
  readonly unlike: readonly string[];
}

/** The page without what the preview adds to it. */
const pageIn = (answer: string): string =>
  answer.slice(answer.indexOf("\r\n\r\n") + 4).replace(/<script[^>]*"\/\.(?:live|11ty)[^>]*><\/script>/, "");

async function unlikeCleanBuild(ground: PreviewGround): Promise<string[]> {
  const clean = path.join(ground.dir, "clean");
  const { version } = JSON.parse(await readFile("package.json", "utf8")) as { version: string };
  await makeGuide({ dataDir: ground.club, outDir: clean, version, cache: false, preview: true });
  const wanted = await contentsOf(clean);
  const isSame = async (): Promise<true | undefined> => {
    const found = await contentsOf(ground.out).catch(() => ({}) as Record<string, string>);
    return JSON.stringify(found) === JSON.stringify(wanted) ? true : undefined;
  };
  await eventually(isSame, 60_000);
  const found = await contentsOf(ground.out);
  const names = [...new Set([...Object.keys(found), ...Object.keys(wanted)])];
  const unlike = names.filter((name) => found[name] !== wanted[name]);
  for (const name of names.filter((file) => file.endsWith(".html"))) {
    const answer = await get(ground, `/${encodeURI(name)}`);
    if (pageIn(answer) !== wanted[name]) unlike.push(`served ${name}`);
  }
  return unlike;
}

/** Edits the club again and again; each edit must be shown before the next is made. The same seed makes the same edits. */
export async function editUnderPreview(
  ground: PreviewGround,
  count: number,
  seed: number,
  patience_ms: number,
): Promise<EditsResult> {
  const random = seeded(seed);
  const missed: string[] = [];
  for (let number = 0; number < count; number++) {
    const one = { kind: EDITS[number % EDITS.length] ?? "in place", number };
    const address = await edit(ground, one, random);
    const seen = await eventually(async () => {
      const answer = await get(ground, address).catch(() => "");
      return statusOf(answer) === 200 && answer.includes(markOf(one)) ? true : undefined;
    }, patience_ms);
    if (seen === undefined) missed.push(`${number}: ${one.kind}`);
    if (ground.child.process.exitCode !== null) {
      missed.push(`the preview ended: ${ground.child.text().slice(-2000)}`);
      return { made: number + 1, missed, unlike: ["nothing to compare"] };
    }
  }
  return { made: count, missed, unlike: await unlikeCleanBuild(ground) };
}
