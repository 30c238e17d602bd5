import type { z } from "zod";
import { type CalendarDate, type Hemisphere, seasonOf } from "../model/calendar.ts";
import type { Holiday, Report } from "../model/club.ts";
import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import { quoted } from "../model/fault.ts";
import { clubSchema } from "../model/fields/club-fields.ts";
import { type ClubOf, clubRecordIfWhole } from "../model/fields/field.ts";
import { formOf, OWN_FORM, type ReportForm } from "../model/fields/report-form.ts";
import { fromAfterTo, type Moment } from "./checks/season-checks.ts";
import type { ClubFile } from "./club-files.ts";
import { didYouMean } from "./names.ts";
import { errorAt } from "./problem.ts";
import { readRecord, readRows } from "./schema/read-record.ts";
import { readYaml, type YamlDocument } from "./yaml/yaml-document.ts";

/** What the Club takes from club.yaml as it stands there. */
const settingsSchema = clubSchema.omit({ asOf: true, reportForm: true });

/** club.yaml as far as it could be read. */
interface ClubFacts extends Partial<z.output<typeof clubSchema>> {
  /** Undefined when a key that must be there is missing. */
  readonly settings: ClubOf<typeof settingsSchema> | undefined;
  /** True when the day to speak from is written, be it wrongly. */
  readonly namesAsOf: boolean;
  /** How tables of reports are read; undefined when that is written and cannot be read. */
  readonly form: ReportForm | undefined;
  spot(key: string): SourceSpot;
}

function isTimezone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false; // a RangeError is how the runtime says that it does not know the zone
  }
}

function readHolidays(doc: YamlDocument, problems: Diagnostic[]): Holiday[] {
  return readRows(clubSchema.shape.holidays.unwrap(), ["holidays"], doc, problems).map(({ value, path }) => {
    if (value.to < value.from)
      problems.push(errorAt(doc.spot([...path, "to"]), fromAfterTo(value.from, value.to)));
    return value;
  });
}

/** Reads club.yaml; undefined when it is not YAML. */
export function readClubFacts({ file, text }: ClubFile, problems: Diagnostic[]): ClubFacts | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const { holidays: _, timezone, ...fields } = readRecord(clubSchema, doc, problems, ["holidays"]);
  const isKnown = timezone !== undefined && isTimezone(timezone);
  if (timezone !== undefined && !isKnown) {
    const meant = didYouMean(timezone, Intl.supportedValuesOf("timeZone"));
    problems.push(
      errorAt(doc.spot(["timezone"]), {
        code: "unknown-timezone",
        message: `${quoted(timezone)} is not a time zone that is known`,
        hint:
          meant === undefined
            ? "write its IANA name, REGION/CITY, such as America/Denver or Europe/Oslo"
            : `did you mean “${meant}”?`,
      }),
    );
  }
  const form = fields.reportForm === undefined ? undefined : formOf(fields.reportForm);
  const known = { ...fields, ...(isKnown ? { timezone } : {}), holidays: readHolidays(doc, problems) };
  return {
    ...known,
    settings: clubRecordIfWhole(settingsSchema, known),
    form: doc.has("reportForm") ? form : OWN_FORM,
    namesAsOf: doc.has("asOf"),
    spot: (key) => doc.spot([key]),
  };
}

/** The season and as-of date: as asked for, else club.yaml's, else the season's latest report. */
export function momentOf(
  facts: ClubFacts,
  asked: CalendarDate | undefined,
  reports: readonly Report[],
  hemisphere: Hemisphere,
  problems: Diagnostic[],
): Moment | undefined {
  const { season } = facts;
  if (season === undefined || (asked === undefined && facts.asOf === undefined && facts.namesAsOf))
    return undefined;
  const asOf =
    asked ??
    facts.asOf ??
    reports
      .map(({ date }) => date)
      .filter((date) => seasonOf(date, hemisphere) === season)
      .sort()
      .at(-1);
  const refuse = (key: string, message: string, hint: string, code: string): undefined => {
    problems.push(errorAt(facts.spot(key), { code, message, hint }));
    return undefined;
  };
  if (asOf === undefined)
    return refuse(
      "asOf",
      `nothing says which day the guide speaks from: there is no asOf, and no report of season ${season}`,
      `add a line such as “asOf: ${season}-05-16”`,
      "missing-as-of",
    );
  const actual = seasonOf(asOf, hemisphere);
  return actual === season
    ? { season, asOf }
    : refuse(
        asked === undefined ? "asOf" : "season",
        `the day the guide speaks from, ${asOf}, is not in season ${season}`,
        `correct the day, or write season: ${actual}`,
        "as-of-outside-season",
      );
}
