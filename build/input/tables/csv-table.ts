import { CsvError, parse } from "csv-parse/sync";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import type { Fault } from "../../model/fault.ts";
import type { ClubFile } from "../club-files.ts";
import { errorAt, startOf } from "../problem.ts";
import { spotter } from "../yaml/yaml-document.ts";

export interface Cell {
  /** Without spaces at its ends. */
  readonly text: string;
  /** Where the cell begins. */
  readonly where: SourceSpot;
}

export interface Table {
  readonly heading: readonly Cell[];
  /** Rows in which something is written. */
  readonly rows: readonly (readonly Cell[])[];
  /** Between the cells: a comma, a semicolon or a tab. */
  readonly separator: string;
}

const SEPARATORS = [",", ";", "\t"];
/** Some spreadsheets write a first line that names the separator. */
const SEPARATOR_LINE = /^sep=(.)(?:\r\n|\n|\r)/;
const QUOTED = /"(?:[^"]|"")*"/g;
/** The first row: its quoted cells may hold line ends. */
const FIRST_ROW = /^(?:"(?:[^"]|"")*"|[^"\r\n])*/;

/** The separator that stands most often in the heading, outside quotes. */
function separatorOf(text: string): string {
  const heading = (FIRST_ROW.exec(text)?.[0] ?? "").replace(QUOTED, "");
  const times = (separator: string): number => heading.split(separator).length;
  return SEPARATORS.reduce((best, next) => (times(next) > times(best) ? next : best));
}

interface Parsed {
  readonly record: readonly string[];
  /** As it stands in the file. */
  readonly raw: string;
}

/** Offsets of a row's cells, counted from the row's beginning: a quoted cell has its quotes, those inside twice. */
function cellOffsets({ record, raw }: Parsed): number[] {
  let next = 0;
  return record.map((cell) => {
    const start = next;
    const quotes = raw[start] === '"' ? 2 + (cell.match(/"/g)?.length ?? 0) : 0;
    next = start + cell.length + quotes + 1;
    return start;
  });
}

const WORDS: Readonly<Record<string, { message: string; hint: string }>> = {
  CSV_QUOTE_NOT_CLOSED: {
    message: "a quote is opened and not closed in the row that begins here",
    hint: "write the missing quote at the end of the cell",
  },
  INVALID_OPENING_QUOTE: {
    message: "a quote stands in the middle of a cell",
    hint: 'put the whole cell in quotes and write each quote inside it twice: "a 6"" fish"',
  },
  CSV_INVALID_CLOSING_QUOTE: {
    message: "a cell in quotes goes on behind its closing quote",
    hint: 'write each quote inside the cell twice: "a 6"" fish"',
  },
};

type Body = { readonly text: string; readonly separator: string };

const parsed = ({ text, separator }: Body, most?: number): Parsed[] =>
  parse(text, {
    delimiter: separator,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    raw: true,
    ...(most === undefined ? {} : { to: most }),
  }) as unknown as Parsed[];

/** Offsets at which the rows begin, and at which the next one would. */
function rowOffsets(rows: readonly Parsed[], text: string): number[] {
  const offsets = [0];
  for (const { raw } of rows) {
    const end = (offsets.at(-1) ?? 0) + raw.length;
    // The parser leaves the second half of a Windows line end to the next row.
    offsets.push(text[end - 1] === "\r" && text[end] === "\n" ? end + 1 : end);
  }
  return offsets;
}

/** Where the row begins that cannot be read: behind those that could. */
function faultOffset(error: CsvError, body: Body): number {
  const { records } = error as { records?: unknown };
  if (typeof records !== "number" || records === 0) return 0;
  return rowOffsets(parsed(body, records), body.text).at(-1) ?? 0;
}

const NOT_CSV = {
  message: "this line cannot be read as a table row",
  hint: "export the file again as CSV",
};

/** Reads a table with a heading, by RFC 4180; undefined, with a problem, when it is none. */
export function readTable({ file, text }: ClubFile, problems: Diagnostic[]): Table | undefined {
  const said = SEPARATOR_LINE.exec(text);
  const before = said?.[0].length ?? 0;
  const bodyText = text.slice(before);
  const body: Body = { text: bodyText, separator: said?.[1] ?? separatorOf(bodyText) };
  const spotOf = spotter(file, text);
  const refuse = (where: SourceSpot, fault: Fault): undefined => {
    problems.push(errorAt(where, fault));
    return undefined;
  };
  try {
    const records = parsed(body);
    const starts = rowOffsets(records, bodyText);
    const [heading, ...rows] = records.map((row, i) => {
      const offsets = cellOffsets(row);
      return row.record.map(
        (cell, j): Cell => ({
          text: cell.trim(),
          where: spotOf(before + (starts[i] ?? 0) + (offsets[j] ?? 0)),
        }),
      );
    });
    if (heading === undefined || heading.every((cell) => cell.text === ""))
      return refuse(startOf(file), {
        code: "empty-file",
        message: "the first row is empty; it should name the columns",
        hint: "export the file again with its heading, or delete it",
      });
    const written = rows.filter((row) => row.some((cell) => cell.text !== ""));
    return { heading, rows: written, separator: body.separator };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const where = spotOf(before + faultOffset(error, body));
    return refuse(where, { code: "not-csv", ...(WORDS[error.code] ?? NOT_CSV) });
  }
}
