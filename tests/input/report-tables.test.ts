import fc from "fast-check";
import { expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { readReports } from "../../build/input/report-file.ts";
import type { Report } from "../../build/model/club.ts";
import { type Diagnostic, formatDiagnostic } from "../../build/model/diagnostic.ts";
import { OWN_FORM } from "../../build/model/fields/report-form.ts";
import { CLUB_YAML, clubFolder } from "./club-folder.ts";

const PATTERN = "imitates: scud\nsizes: [12]\nphases: [ice-off]\nways: [indicator still]\n";
const FORM = `reportForm:
  dates: day.month.year
  columns:
    lake: Lake
    date: Day
    ice: Ice
    phase: Phase
    water: { column: Water, unit: degC }
    clarity: { column: Clarity, unit: m }
    oxygen: { column: Oxygen, unit: mg/L }
    rods: Rods
    hours: { column: Hours, unit: h }
    caught: Caught
    samples: Throats
    notes: Notes
`;

/** The reports of a club with this table or YAML file, without their places. */
async function reportsOf(
  file: string,
  text: string | Uint8Array,
  form = "",
): Promise<Omit<Report, "where">[]> {
  const { club, problems } = await loadClub(
    await clubFolder({
      "club.yaml": CLUB_YAML + form,
      "patterns/pale-scud.yaml": `name: Pale scud\n${PATTERN}`,
      "patterns/leech.yaml": `name: Leech\n${PATTERN}`,
      [file]: text,
    }),
  );
  expect(problems.map(formatDiagnostic)).toEqual([]);
  return (club?.reports ?? []).map(({ where, ...report }) => report);
}

const YAML = `- lake: ember
  date: 2026-05-12
  ice: off
  phase: ice-off
  water: 6.5 degC
  clarity: 2.5 m
  oxygen: 9.8 mg/L
  rods: 2
  hours: 3 h
  caught: [{ pattern: pale-scud, way: floating line, fish: 4, hours: 1.5 h }, { pattern: leech, fish: 0 }]
  samples: [{ scud: 12, chironomid pupa: { count: 3, weight: 0.2 g } }, { leech: 1 }, {}]
  notes: "A \\"fine\\" day, windy; cold."
- { lake: ember, date: 2026-05-13 }
`;

const ROW = [
  "Ember Lake",
  "12.5.2026",
  "Off",
  "Ice-off",
  "6.5",
  "2.5 m",
  "9.8",
  "2",
  "3",
  "Pale scud (Floating line) 4 in 90 min; 0 leech",
  "Scud 12, 3 chironomid pupa (0.2 g); leech 1; empty",
  'A "fine" day, windy; cold.',
];
/** The same where half is written ,5. */
const COMMA_ROW = ROW.map((cell) =>
  ["6.5", "2.5 m", "9.8"].includes(cell) ? cell.replace(".", ",") : cell.replace("0.2 g", "0,2 g"),
);
const HEADING = "Lake,Day,Ice,Phase,Water,Clarity,Oxygen,Rods,Hours,Caught,Throats,Notes".split(",");
/** As RFC 4180 writes a row. */
const row = (cells: readonly string[], separator: string): string =>
  cells.map((cell) => (/[",;\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(separator);
const table = (separator: string, lineEnd: string, cells = ROW): string =>
  [HEADING, cells, ["ember", "13.5.2026", ...Array(10).fill("")]]
    .map((line) => row(line, separator) + lineEnd)
    .join("");

test.each<[string, string | Uint8Array]>([
  ["commas", table(",", "\r\n")],
  ["a byte order mark and bare line feeds", `\ufeff${table(",", "\n")}`],
  ["semicolons", table(";", "\r\n")],
  ["semicolons and decimal commas", table(";", "\n", COMMA_ROW)],
  ["a line that names the separator", `sep=;\r\n${table(";", "\r\n")}`],
  ["tabs in UTF-16", Buffer.from(`\ufeff${table("\t", "\r\n")}`, "utf16le")],
])("a form's table with %s says the same as YAML", async (_, text) => {
  expect(await reportsOf("reports/2026.csv", text, FORM)).toEqual(await reportsOf("reports/2026.yaml", YAML));
});

test("columns may stand in any order among others, and cells may hold line ends", async () => {
  const text =
    'Stamp,"Notes",Day,"La\nke",Lake\r\n1,"two\r\nlines",12.5.2026,?,ember\r\n2,"",2026-05-13,?,ember\r\n';
  const found = await reportsOf(
    "reports/2026.csv",
    text,
    "reportForm: { dates: day.month.year, columns: { lake: Lake, date: Day, notes: Notes } }\n",
  );
  expect(found.map(({ date, notes }) => [date, notes])).toEqual([
    ["2026-05-12", "two\r\nlines"],
    ["2026-05-13", undefined],
  ]);
});

test("a report knows the line of the table that it stands on", async () => {
  const text = 'lake,date,notes\r\nember,2026-05-12,"two\r\nlines ""quoted"""\r\n\r\nember,2026-05-13,\r\n';
  const { club } = await loadClub(await clubFolder({ "reports/2026.csv": text }));
  expect(club?.reports.map(({ where }) => where)).toEqual([
    { file: "reports/2026.csv", line: 2, column: 1 },
    { file: "reports/2026.csv", line: 5, column: 1 },
  ]);
});

test("of many mistakes of one kind ten are listed and the rest is counted", async () => {
  const rows = Array.from({ length: 25 }, () => "ember,nonsense\n").join("");
  const { problems } = await loadClub(await clubFolder({ "reports/2026.csv": `lake,date\n${rows}` }));
  expect(problems).toHaveLength(11);
  expect(problems.at(-1)).toMatchObject({
    line: 12,
    code: "more-rows",
    message: "not-a-date here and in 14 more places",
  });
});

test("a lake or pattern whose own file is broken is no second problem, by whatever name a form calls it", async () => {
  const { problems } = await loadClub(
    await clubFolder({
      "lakes/tarn.yaml": "name: [\n",
      "patterns/pale-scud.yaml": "name: Pale scud\n",
      "reports/2026.csv": "lake,date,rods,hours,caught\nThe Long Tarn,2026-05-12,1,2 h,The pale one 3\n",
    }),
  );
  expect(new Set(problems.map(({ file }) => file))).toEqual(
    new Set(["lakes/tarn.yaml", "patterns/pale-scud.yaml"]),
  );
});

test("two lakes of one name must be called by their file names", async () => {
  const files = (lake: string) => ({
    "lakes/upper.yaml": "name: Long Tarn\nposition: { lat: 41, lon: -106 }\n",
    "lakes/lower.yaml": "name: Long Tarn\nposition: { lat: 41, lon: -106 }\n",
    "reports/2026.csv": `lake,date\n${lake},2026-05-12\n`,
  });
  const said = async (lake: string) =>
    (await loadClub(await clubFolder(files(lake)))).problems.map(formatDiagnostic);
  expect(await said("Long Tarn")).toEqual([
    "reports/2026.csv:2:1 error ambiguous-lake lake: 2 lakes are called “Long Tarn”\n    write the file name: lower or upper",
  ]);
  expect(await said("upper")).toEqual([]);
});

const GOOD = `lake,date,rods,hours,caught,samples,notes\r
ember,2026-05-12,2,3 h,"pale-scud 4 in 3 h; leech 0","scud 12; empty","a ""b"", c"\r
ember,2026-05-13,,,,,\r
`;
const piece = fc.constantFrom(
  ",",
  ";",
  "\t",
  '"',
  '""',
  "\n",
  "\r",
  "\r\n",
  "sep=;\n",
  "\ufeff",
  "湖",
  "-1",
  "1e9",
  "(",
  ")",
  "in",
);

test("whatever stands in a table, it is read or refused, at a place that is in it", () => {
  const damaged = fc
    .array(fc.tuple(fc.nat(GOOD.length), fc.nat(6), fc.oneof(piece, fc.string({ maxLength: 4 }))), {
      minLength: 1,
      maxLength: 5,
    })
    .map((edits) =>
      edits.reduce((text, [at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut), GOOD),
    );
  fc.assert(
    fc.property(damaged, (text) => {
      const problems: Diagnostic[] = [];
      const sources = {
        lakes: [{ slug: "ember", name: "Ember Lake", hemisphere: "north" as const }],
        patterns: [{ slug: "pale-scud", name: "Pale scud" }],
        form: OWN_FORM,
      };
      readReports({ file: "reports/2026.csv", slug: "2026", text }, sources, problems);
      const lines = text.split(/\r\n|\n|\r/);
      for (const { line, column, message, hint } of problems) {
        expect(line).toBeGreaterThanOrEqual(1);
        expect(line).toBeLessThanOrEqual(lines.length);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1);
        expect(`${message}${hint}`).not.toMatch(/[\n\r]|undefined|\[object|Invalid input|=> /);
      }
    }),
    { numRuns: 1500 },
  );
});
