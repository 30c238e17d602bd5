import { existsSync, readdirSync } from "node:fs";
import path from "node:path";

const DEMO = "demo-data";
const isClub = (dir: string): boolean => existsSync(path.join(dir, "club.yaml"));

/** The club folder that is meant when none is named: the demo, beside the program; elsewhere the only one there is. */
export function usualDataDir(here: string): string {
  if (isClub(path.join(here, DEMO))) return DEMO;
  const [only, second] = readdirSync(here).filter((name) => isClub(path.join(here, name)));
  return only === undefined || second !== undefined ? DEMO : only;
}
