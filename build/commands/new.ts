import { access } from "node:fs/promises";
import path from "node:path";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import { openReportDesk } from "../load/report-desk.ts";
import { editorSchemas, type ScaffoldClub, type ScaffoldKind, scaffold } from "../load/scaffold.ts";
import { slugOf } from "../load/slug.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { asArgument } from "./called-as.ts";
import { writeAll } from "./write-all.ts";

export interface NewRequest {
  readonly kind: ScaffoldKind;
  readonly name: string;
  readonly dataDir: string;
}

/** The club a file is begun for; for a new club, one of this year. Undefined, with its problems told, when there is none. */
async function clubFor({ kind, dataDir }: NewRequest, effects: Effects): Promise<ScaffoldClub | undefined> {
  const today = effects.today();
  if (kind === "club") return { season: Number(today.slice(0, 4)), side: "north", lakes: [] };
  const { desk, problems } = await openReportDesk(dataDir, today);
  if (desk === undefined) for (const problem of problems) effects.warn(formatDiagnostic(problem));
  return desk && { season: desk.season, side: desk.side, lakes: desk.sources.lakes.map(({ slug }) => slug) };
}

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );

function sayNext(dir: string, firstFile: string, effects: Effects): void {
  const data = `--data ${asArgument(dir)}`;
  effects.warn(`It can be built at once: npm run guide -- ${data}`);
  effects.warn(`Then put your own lake into ${firstFile}; npm run check -- ${data} says what is wrong.`);
}

/** Writes ready-to-edit files and the schemas that explain their keys; never over a file of the club's. */
export async function newCommand(request: NewRequest, effects: Effects): Promise<Exit> {
  const { kind, name, dataDir } = request;
  if (name === "") {
    effects.warn(`Give it a name: npm run new -- ${kind} "A name"`);
    return EXIT.badUsage;
  }
  const slug = slugOf(name);
  if (slug === "") {
    effects.warn(`“${name}” gives no file name: use a name with letters or digits in it.`);
    return EXIT.badUsage;
  }
  const club = await clubFor(request, effects);
  if (club === undefined) return EXIT.badUsage;
  const root = kind === "club" ? "." : dataDir;
  const files = scaffold(kind, name, club).map((file) => ({ ...file, path: path.join(root, file.path) }));
  for (const file of kind === "club" ? [slug] : files.map((target) => target.path)) {
    if (!(await exists(file))) continue;
    effects.warn(`${file} is there already: choose another name.`);
    return EXIT.badUsage;
  }
  await writeAll(".", files);
  await writeAll(kind === "club" ? slug : dataDir, editorSchemas());
  for (const file of files) effects.say(file.path);
  const lake = files.find((file) => file.path.includes(`lakes${path.sep}`));
  if (kind === "club" && lake !== undefined) sayNext(slug, lake.path, effects);
  return EXIT.done;
}
