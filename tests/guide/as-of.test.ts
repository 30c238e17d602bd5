import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";

/** What more of the season came through the demo club's form: not in the order of the dates. */
const FORM_ROWS = `Which lake?,Date fished,Ice?,How was the water?,Water temperature,How many of you,Hours each,Fish by pattern,Throat samples,Anything else?
Longcoat Lake,5/16/2026,part,,41,1,2,bloodworm 0,,Going fast.
Hobnail Lake,4/27/2026,off,ice-off,43,2,3,olive scud 3 in 5 h; bloodworm 0,scud 9; scud 3,
Slatepin Lake,5/9/2026,on,,,,,,,White.
Oxbar Reservoir,5/14/2026,,post-turnover,54,2,4,chironomid pupa 6 in 7 h,chironomid pupa 20,
Quern Lake,4/30/2026,part,,,,,,,
Chalkhen Lake,5/5/2026,,turnover,48,1,2,blob 0,,
`;
const REPORTS = "reports/2026.yaml";
const TABLE = "reports/2026.csv";

let written: string;
beforeAll(async () => {
  written = await readFile(`demo-data/${REPORTS}`, "utf8");
});

/** A YAML file of reports without its rows after a day. */
const rowsUntil = (text: string, asOf: string): string =>
  text
    .split(/^(?=- )/m)
    .filter((row) => (/^ {2}date: (\S+)$/m.exec(row)?.[1] ?? "") <= asOf)
    .join("");

/** The form's table without its rows after a day. */
const tableUntil = (text: string, asOf: string): string =>
  text
    .split(/^/m)
    .filter((row) => {
      const [, month, day, year] = /,(\d+)\/(\d+)\/(\d+),/.exec(row) ?? [];
      return year === undefined || `${year}-${month?.padStart(2, "0")}-${day?.padStart(2, "0")}` <= asOf;
    })
    .join("");

const made = new Map<string, unknown>();
/** Tables of rigs and other computing that no day has a say in are made once for all guides. */
function once<Inputs, T>(kind: string, inputs: Inputs, compute: (inputs: Inputs) => T): T {
  const name = JSON.stringify([kind, inputs]);
  if (!made.has(name)) made.set(name, compute(inputs));
  return made.get(name) as T;
}

/** The demo club's guide of a day, as it is published, and what is doubted; with these reports of the season. */
async function guideOf(
  asOf: string,
  reports: string,
  table: string,
): Promise<{ json: string; doubts: string[] }> {
  const dir = await mkdtemp(path.join(tmpdir(), "as-of-"));
  onTestFinished(() => rm(dir, { recursive: true, force: true }));
  // Shorelines take most of the time, and no report has a say in them.
  await cp("demo-data", dir, { recursive: true, filter: (file) => !file.endsWith(".geojson") });
  await writeFile(path.join(dir, REPORTS), reports);
  await writeFile(path.join(dir, TABLE), table);
  const date = parseCalendarDate(asOf);
  if (date === undefined) throw new Error(`${asOf} is no day`);
  const { club, problems } = await loadClub(dir, { asOf: date });
  if (club === undefined) throw new Error(problems.map(formatDiagnostic).join("\n"));
  const { guide, problems: doubts } = composeGuide(club, await loadContent(), {
    version: "0.0.0",
    memoize: once,
  });
  if (guide === undefined) throw new Error("no guide");
  return { json: JSON.stringify(guide), doubts: doubts.map(({ code, message }) => `${code} ${message}`) };
}

describe("a guide of an earlier day knows nothing that was reported later", () => {
  test.each(["2026-04-15", "2026-05-12"])("%s", async (asOf) => {
    const whole = await guideOf(asOf, written, FORM_ROWS);
    const cut = { reports: rowsUntil(written, asOf), table: tableUntil(FORM_ROWS, asOf) };
    expect(cut.reports.length).toBeLessThan(written.length);
    expect(cut.table.length).toBeLessThan(FORM_ROWS.length);
    expect(await guideOf(asOf, cut.reports, cut.table)).toEqual(whole);
  });

  test("nor does it when the later rows stand first", async () => {
    const [comment = "", ...rows] = written.split(/^(?=- )/m);
    const turned = comment + rows.toReversed().join("");
    expect(await guideOf("2026-04-29", turned, FORM_ROWS)).toEqual(
      await guideOf("2026-04-29", rowsUntil(turned, "2026-04-29"), tableUntil(FORM_ROWS, "2026-04-29")),
    );
  });

  test("a row of the form until that day is known", async () => {
    const without = FORM_ROWS.replace(/^Hobnail.*\n/m, "");
    expect((await guideOf("2026-04-29", written, without)).json).not.toBe(
      (await guideOf("2026-04-29", written, FORM_ROWS)).json,
    );
  });
});
