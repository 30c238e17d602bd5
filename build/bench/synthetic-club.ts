import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { seeded } from "./seeded.ts";

const SEASON = 2026;
const SEASONS_OF_RECORDS = 12;
const AS_OF_DAY = 136;

const dateOf = (season: number, day: number): string =>
  new Date(Date.UTC(season, 0, Math.round(day))).toISOString().slice(0, 10);

/** Writes a club folder of `lakes` made-up lakes with twelve seasons of records and a season of reports; the same for the same seed. */
export async function writeSyntheticClub(dir: string, lakes: number, seed = 1): Promise<void> {
  const random = seeded(seed);
  const noise = (sd: number): number => sd * (random() + random() + random() + random() - 2) * Math.sqrt(3);
  const spring = Array.from({ length: SEASONS_OF_RECORDS + 1 }, () => noise(7));
  await Promise.all(["lakes", "reports"].map((folder) => mkdir(path.join(dir, folder), { recursive: true })));
  await writeFile(
    path.join(dir, "club.yaml"),
    `name: Synthetic club\nseason: ${SEASON}\nasOf: ${dateOf(SEASON, AS_OF_DAY)}\ntimezone: America/Denver\nunits: imperial\n`,
  );
  const reports: string[] = [];
  for (let i = 0; i < lakes; i++) {
    const slug = `lake-${String(i).padStart(4, "0")}`;
    const elevation = 2200 + Math.round(random() * 900);
    const middle = 105 + (3.3 * (elevation - 2200)) / 100 + noise(3);
    const rows = Array.from({ length: SEASONS_OF_RECORDS }, (_, k) => SEASON - SEASONS_OF_RECORDS + k)
      .filter(() => random() < 0.8)
      .map(
        (season, k) =>
          `  - { season: ${season}, on: ${dateOf(season, middle + (spring[k] ?? 0) + noise(2.5))} }`,
      );
    await writeFile(
      path.join(dir, "lakes", `${slug}.yaml`),
      `name: Lake ${i}\nposition: { lat: ${(41 + random()).toFixed(4)}, lon: ${(-106 - random()).toFixed(4)} }\nelevation: ${elevation} m\ndepth: { max: ${4 + Math.round(random() * 14)} m }\niceOff:${rows.length === 0 ? " []" : `\n${rows.join("\n")}`}\n`,
    );
    const opens = middle + (spring[SEASONS_OF_RECORDS] ?? 0) + noise(2.5);
    if (random() < 0.6) {
      const seen = AS_OF_DAY - Math.round(random() * 14);
      reports.push(
        `- { lake: ${slug}, date: ${dateOf(SEASON, seen)}, ice: ${opens <= seen ? "off" : "on"} }`,
      );
    }
  }
  await writeFile(path.join(dir, "reports", `${SEASON}.yaml`), `${reports.join("\n")}\n`);
}
