import { CsvError, parse } from "csv-parse/sync";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { type Fault, isFault, quoted } from "../../model/fault.ts";
import type { LonLat, Sounding } from "../../model/lake-shape.ts";
import { QUANTITY_KINDS } from "../../model/units.ts";
import type { ClubFile } from "../club-files.ts";
import { errorAt, startOf } from "../problem.ts";
import { readSoundingDepth } from "./positions-and-depths.ts";

/** A column's heading: its name, and a unit behind it. */
const HEADINGS = {
  lat: /^lat(itude)?$/i,
  lon: /^(lon|lng|long|longitude)$/i,
  depth: /^depth(?:[\s_]*[([]?\s*([a-z]+)\s*[)\]]?)?$/i,
} as const;

/** Rows with mistakes that are listed one by one; the rest is counted. */
const MOST_LISTED = 10;

interface Row {
  readonly cells: readonly string[];
  readonly where: SourceSpot;
}

/** What stands between the headings: a file with semicolons may hold decimal commas, which are then said to be wrong. */
function separatorOf(text: string): string {
  const heading = text.split("\n").find((line) => /lat/i.test(line) && !line.startsWith("#")) ?? "";
  return [";", "\t"].find((separator) => heading.includes(separator)) ?? ",";
}

function rowsOf({ file, text }: ClubFile, problems: Diagnostic[]): Row[] {
  try {
    const parsed: unknown = parse(text, {
      delimiter: separatorOf(text),
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
      comment: "#",
      info: true,
    });
    return (parsed as { record: string[]; info: { lines: number } }[]).map(({ record, info }) => ({
      cells: record,
      where: { file, line: info.lines, column: 1 },
    }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines } = error as { lines?: unknown };
    problems.push(
      errorAt(
        { file, line: typeof lines === "number" ? lines : 1, column: 1 },
        {
          code: "not-csv",
          message: "this line cannot be read as a table row",
          hint: "look for a quote that is opened and not closed",
        },
      ),
    );
    return [];
  }
}

const number = (cell: string | undefined): number | undefined =>
  cell !== undefined && /^[+-]?(\d+\.?\d*|\.\d+)$/.test(cell) ? Number(cell) : undefined;

function noNumber(name: string, cell: string | undefined): Fault {
  const shown = cell === undefined || cell === "" ? "nothing is written" : `${quoted(cell)} is not a number`;
  return {
    code: "not-a-number",
    message: `${name}: ${shown}`,
    hint:
      cell?.includes(",") === true ? "write a decimal point, not a comma" : "correct the row, or remove it",
  };
}

const UNITS = QUANTITY_KINDS.length.allowed;

/** A map of them is made in seconds. */
const MOST_SOUNDINGS = 100_000;

/** Reads a table of soundings: latitude, longitude and depth, its unit in the heading or in each row. */
export function readSoundings(csv: ClubFile, problems: Diagnostic[]): Sounding[] {
  const [heading, ...rows] = rowsOf(csv, problems);
  const columnOf = (name: keyof typeof HEADINGS): number =>
    heading?.cells.findIndex((cell) => HEADINGS[name].test(cell)) ?? -1;
  const [lat, lon, depth] = [columnOf("lat"), columnOf("lon"), columnOf("depth")];
  if (heading === undefined || lat < 0 || lon < 0 || depth < 0) {
    if (problems.every(({ file, code }) => file !== csv.file || code !== "not-csv"))
      problems.push(
        errorAt(heading?.where ?? startOf(csv.file), {
          code: "no-heading",
          message: "the first row does not name the columns lat, lon and depth",
          hint: "begin the file with a row such as: lat,lon,depth (ft)",
        }),
      );
    return [];
  }
  const unit = HEADINGS.depth.exec(heading.cells[depth] ?? "")?.[1];
  if (unit !== undefined && !UNITS.some((known) => known === unit)) {
    problems.push(
      errorAt(heading.where, {
        code: "wrong-unit",
        message: `${quoted(unit)} is not a unit of depth`,
        hint: `allowed here: ${UNITS.join(", ")}`,
      }),
    );
    return [];
  }
  const [tooMany] = rows.slice(MOST_SOUNDINGS);
  if (tooMany !== undefined) {
    problems.push(
      errorAt(tooMany.where, {
        code: "too-many-soundings",
        message: `the file holds ${rows.length} soundings; one may hold ${MOST_SOUNDINGS}`,
        hint: "export fewer: one every few metres draws the same map",
      }),
    );
    return [];
  }
  let refused = 0;
  const read = ({ cells, where }: Row): Sounding | undefined => {
    const refuse = (fault: Fault): undefined => {
      refused++;
      if (refused <= MOST_LISTED) problems.push(errorAt(where, fault));
      return undefined;
    };
    const place = [number(cells[lon]), number(cells[lat])];
    const [x, y] = place;
    if (y === undefined) return refuse(noNumber("lat", cells[lat]));
    if (x === undefined) return refuse(noNumber("lon", cells[lon]));
    const cell = cells[depth] ?? "";
    if (unit !== undefined && number(cell) === undefined) return refuse(noNumber("depth", cell));
    const found = readSoundingDepth(unit === undefined ? cell : `${cell} ${unit}`);
    return isFault(found) ? refuse(found) : { at: [x, y], depth_m: found, where };
  };
  const soundings = rows.flatMap((row) => read(row) ?? []);
  if (refused > MOST_LISTED)
    problems.push(
      errorAt(heading.where, {
        code: "more-rows",
        message: `${refused - MOST_LISTED} more rows cannot be read`,
        hint: "correct the first ones and look again",
      }),
    );
  return soundings;
}

/** The shoreline that a club walked with a receiver: the rows of depth 0, in their order, closed. */
export function shorelineFromSoundings(soundings: readonly Sounding[]): LonLat[] {
  const shore = soundings.filter(({ depth_m }) => depth_m === 0).map(({ at }) => at);
  const [first] = shore;
  return first === undefined || shore.length < 3 ? [] : [...shore, first];
}
