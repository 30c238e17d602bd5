import { access, mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import { type ScaffoldKind, scaffold } from "../load/scaffold.ts";

export interface NewRequest {
  readonly kind: ScaffoldKind;
  readonly name: string;
  readonly dataDir: string;
}

/** Writes ready-to-edit files; never over one that is there. */
export async function newCommand({ kind, name, dataDir }: NewRequest, effects: Effects): Promise<Exit> {
  const files = scaffold(kind, name);
  if (files.length === 0) {
    effects.warn(`“${name}” gives no file name: use a name with letters or digits in it.`);
    return EXIT.badUsage;
  }
  const root = kind === "club" ? "." : dataDir;
  const targets = files.map(({ path: relative, text }) => ({ file: path.join(root, relative), text }));
  for (const { file } of targets) {
    const taken = await access(file).then(
      () => true,
      () => false,
    );
    if (taken) {
      effects.warn(`${file} is there already: choose another name.`);
      return EXIT.badUsage;
    }
  }
  for (const { file, text } of targets) {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
    effects.say(file);
  }
  return EXIT.done;
}
