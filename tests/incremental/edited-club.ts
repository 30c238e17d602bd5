import { cp, mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import fc from "fast-check";

/** Lakes of the demo: one sounded, five with contours, enough of them and of their records to score past seasons. */
const LAKES = ["peatkettle", "gannister", "chalkhen", "hobnail", "longcoat", "slatepin"];
const CLUB = `name: Small club
season: 2026
asOf: 2026-05-16
timezone: America/Denver
units: imperial
`;
const REPORTS = `- { lake: gannister, date: 2026-04-20, ice: on }
- { lake: chalkhen, date: 2026-05-02, ice: off, water: 7 degC }
`;

/** Writes a club cut from the demo: six lakes, or some of them. */
export async function writeSmallClub(dir: string, lakes: readonly string[] = LAKES): Promise<void> {
  await Promise.all(["lakes", "reports"].map((folder) => mkdir(path.join(dir, folder), { recursive: true })));
  await writeFile(path.join(dir, "club.yaml"), CLUB);
  await writeFile(path.join(dir, "reports/2026.yaml"), REPORTS);
  for (const lake of lakes)
    for (const ending of ["yaml", "geojson"])
      await cp(`demo-data/lakes/${lake}.${ending}`, path.join(dir, `lakes/${lake}.${ending}`));
  if (lakes.includes("peatkettle"))
    await cp("demo-data/lakes/peatkettle.csv", path.join(dir, "lakes/peatkettle.csv"));
}

/** One small change to a file of the club. */
export interface Edit {
  readonly says: string;
  readonly file: string;
  readonly change: (text: string) => string;
}

const without = (text: string, isWanted: (line: string) => boolean, which: number): string => {
  const lines = text.split("\n");
  const candidates = lines.flatMap((line, i) => (isWanted(line) ? [i] : []));
  const gone = candidates[which % Math.max(1, candidates.length)];
  return lines.filter((_, i) => i !== gone).join("\n");
};

const lakeFile = (lake: string, ending = "yaml"): string => `lakes/${lake}.${ending}`;

/** Edits as people make them: a note, a date, a depth, a contour, a sounding, a report, the club's own settings. */
export const edits: fc.Arbitrary<Edit> = fc
  .tuple(fc.constantFrom(...LAKES), fc.nat(18), fc.nat(11))
  .map(([lake, n, kind]): Edit => {
    const day = String(10 + n).padStart(2, "0");
    const all: readonly Edit[] = [
      {
        says: "note",
        file: lakeFile(lake),
        change: (text) => `${text.trimEnd()}\n  Seen again on day ${n}.\n`,
      },
      { says: "line at the top", file: lakeFile(lake), change: (text) => `# ${n}\n${text}` },
      {
        says: "ice-off day",
        file: lakeFile(lake),
        change: (text) => text.replace(/on: (\d{4})-0[45]-\d\d/, `on: $1-04-${day}`),
      },
      {
        says: "greatest depth",
        file: lakeFile(lake),
        change: (text) => text.replace(/max: [\d.]+ ft/, `max: ${15 + n} ft`),
      },
      {
        says: "elevation",
        file: lakeFile(lake),
        change: (text) => text.replace(/elevation: \d+ ft/, `elevation: ${8000 + 10 * n} ft`),
      },
      {
        says: "contour gone",
        file: lakeFile(lake, "geojson"),
        change: (text) => without(text, (line) => line.includes('"contour"') && line.endsWith(","), n),
      },
      {
        says: "shore moved",
        file: lakeFile(lake, "geojson"),
        change: (text) => text.replace(/(\[\[\[-106\.\d{3})\d*/, `$1${100 + n}`),
      },
      {
        says: "sounding gone",
        file: "lakes/peatkettle.csv",
        change: (text) => without(text, (line) => /^\d/.test(line), n),
      },
      {
        says: "report",
        file: "reports/2026.yaml",
        change: (text) =>
          `${text}- { lake: ${lake}, date: 2026-05-${String(1 + (n % 15)).padStart(2, "0")}, ice: part, notes: "${n}" }\n`,
      },
      {
        says: "units",
        file: "club.yaml",
        change: (text) =>
          text.includes("imperial") ? text.replace("imperial", "metric") : text.replace("metric", "imperial"),
      },
      {
        says: "as-of date",
        file: "club.yaml",
        change: (text) => text.replace(/asOf: .*/, `asOf: 2026-05-${day}`),
      },
      {
        says: "time zone",
        file: "club.yaml",
        change: (text) => text.replace(/timezone: .*/, `timezone: ${n % 2 === 0 ? "America/Boise" : "UTC"}`),
      },
    ];
    const edit = all[kind];
    if (edit === undefined) throw new RangeError(`no edit ${kind}`);
    return { ...edit, says: `${edit.says} ${lake} ${n}` };
  });

/** Makes an edit, and gives back how to undo it. */
export async function makeEdit(dir: string, { file, change }: Edit): Promise<() => Promise<void>> {
  const target = path.join(dir, file);
  const before = await readFile(target, "utf8");
  await writeFile(target, change(before));
  return () => writeFile(target, before);
}
