import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from "commander";
import type { ScaffoldKind } from "../edit/scaffold.ts";
import type { GuideRequest } from "../incremental/up-to-date.ts";
import { type CalendarDate, parseCalendarDate } from "../model/calendar.ts";
import { programFile } from "../program/program-files.ts";
import { type Effects, EXIT, type Exit } from "./effects.ts";
import { npmCommand, optionsTakenByNpm, shellQuoted } from "./npm-invocation.ts";
import type { PreviewPlace } from "./preview.ts";

const DEMO = "demo-data";
const isClub = (dir: string): boolean => existsSync(path.join(dir, "club.yaml"));

/** The club folder that is meant when none is named: the demo, beside the program; elsewhere the only one there is. */
export function defaultDataDir(here: string): string {
  if (isClub(path.join(here, DEMO))) return DEMO;
  const [only, second] = readdirSync(here).filter((name) => isClub(path.join(here, name)));
  return only === undefined || second !== undefined ? DEMO : only;
}

/** Written here as well, so that a start does not load what makes the files. */
const NEW_KINDS = ["lake", "pattern", "trip", "club"] as const satisfies readonly ScaffoldKind[];
const { version } = JSON.parse(readFileSync(programFile("package.json"), "utf8")) as {
  version: string;
};

function dateArgument(text: string): CalendarDate {
  const date = parseCalendarDate(text);
  if (date === undefined) throw new InvalidArgumentError("Write a day of the calendar as YYYY-MM-DD.");
  return date;
}

function urlArgument(text: string): string {
  if (!/^https?:$/.test(URL.canParse(text) ? new URL(text).protocol : ""))
    throw new InvalidArgumentError("Write a web address such as https://club.example/guide/.");
  const { username, password, search, hash } = new URL(text);
  if (username + password + search + hash !== "")
    throw new InvalidArgumentError("It is printed on cards: write it without a name, a password, ? and #.");
  return text.endsWith("/") ? text : `${text}/`;
}

function portArgument(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port < 1 || port > 65_535)
    throw new InvalidArgumentError("Write a port: a whole number from 1 to 65535.");
  return port;
}

const dataOption = () => new Option("--data <dir>", "club folder").default(defaultDataDir("."));
const outOption = () => new Option("--out <dir>", "where to publish").default("site");
const cacheOption = () =>
  new Option("--cache <dir>", "where results are kept for the next run, instead of your cache folder");
const noCacheOption = () => new Option("--no-cache", "keep no results, and use none");
const formatOption = () =>
  new Option("--format <format>", "how to print").choices(["text", "json"]).default("text");

interface GuideOptions {
  readonly data: string;
  readonly out: string;
  readonly asOf?: CalendarDate;
  readonly baseUrl?: string;
  readonly only?: string;
  readonly cache?: string | false;
  readonly zip?: string;
}

interface CheckOptions {
  readonly data: string;
  readonly format: "text" | "json";
  readonly cache?: string | false;
}

interface NewOptions {
  readonly data: string;
  readonly ask: boolean;
}

const guideRequest = ({ data, out, asOf, baseUrl, only, cache }: GuideOptions): GuideRequest => ({
  dataDir: data,
  outDir: out,
  version,
  ...(asOf === undefined ? {} : { asOf }),
  ...(baseUrl === undefined ? {} : { baseUrl }),
  ...(only === undefined ? {} : { only }),
  ...(cache === undefined ? {} : { cache }),
});

/**
 * Runs one command line and returns its exit code; never ends the process itself. Each command is
 * loaded when it is asked for: checking a folder needs neither the page nor the preview library.
 */
export async function main(args: readonly string[], effects: Effects): Promise<Exit> {
  let exit: Exit = EXIT.done;
  const program = new Command("lake-season-guide")
    .description("Turns a fly club's lake notes into a field guide and pocket cards.")
    .version(version)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => effects.say(text.trimEnd()),
      writeErr: (text) => effects.warn(text.trimEnd()),
    });
  program
    .command("guide")
    .description("build the guide: pages, cards, data")
    .addOption(dataOption())
    .addOption(outOption())
    .option("--as-of <date>", "the day to speak from, YYYY-MM-DD", dateArgument)
    .option("--base-url <url>", "where it will be published, for QR codes and link previews", urlArgument)
    .option("--only <slug>", "make one lake's page and card anew, keep the rest as published")
    .option("--zip <file>", "also pack the guide into one file, to hand on")
    .addOption(cacheOption())
    .addOption(noCacheOption())
    .action(async (options: GuideOptions) => {
      const { guideCommand } = await import("./guide.ts");
      exit = await guideCommand(guideRequest(options), effects, options.zip);
    });
  program
    .command("check")
    .description("read the club folder and print every problem")
    .addOption(dataOption())
    .addOption(formatOption())
    .addOption(cacheOption())
    .addOption(noCacheOption())
    .action(async ({ data, format, cache }: CheckOptions) => {
      const { checkCommand } = await import("./check.ts");
      const kept = cache === undefined ? {} : { cache };
      exit = await checkCommand({ dataDir: data, format, version, ...kept }, effects);
    });
  program
    .command("preview")
    .description("serve the guide and rebuild it on every edit")
    .addOption(dataOption())
    .addOption(outOption())
    .option("--port <number>", "where to serve; the next free one of eleven is taken", portArgument, 8080)
    .option("--host <address>", "serve to other machines too: 0.0.0.0, or a name of this one", "127.0.0.1")
    .addOption(cacheOption())
    .addOption(noCacheOption())
    .action(async ({ host, port, ...options }: GuideOptions & PreviewPlace) => {
      const { previewCommand } = await import("./preview.ts");
      exit = await previewCommand({ ...guideRequest(options), preview: true }, { host, port }, effects);
    });
  program
    .command("new")
    .description("write a ready-to-edit file, or a whole club folder")
    .addArgument(new Argument("<kind>", "what to begin").choices([...NEW_KINDS, "report"]))
    .argument("[name...]", "its name; for a report, the lake")
    .addOption(dataOption())
    .option("--no-ask", "write a report to fill in, without questions")
    .action(async (kind: ScaffoldKind | "report", words: string[], { data, ask }: NewOptions) => {
      const name = words.join(" ");
      if (kind === "report") {
        const { newReportCommand } = await import("./new.ts");
        exit = await newReportCommand({ lake: name, dataDir: data, mayAsk: ask }, effects);
      } else {
        const { newCommand } = await import("./new.ts");
        exit = await newCommand({ kind, name, dataDir: data }, effects);
      }
    });
  program
    .command("import")
    .description("add ice-off days from a CSV table to the lakes' files")
    .argument("<file>", "the table: lake, season, on, or after and by")
    .addOption(dataOption())
    .option("--dry-run", "print what would be added, and write nothing", false)
    .action(async (table: string, { data, dryRun }: { data: string; dryRun: boolean }) => {
      const { importCommand } = await import("./import.ts");
      exit = await importCommand({ table, dataDir: data, isDryRun: dryRun }, effects);
    });
  program
    .command("backtest")
    .description("score the season model on this club's past seasons")
    .addOption(dataOption())
    .addOption(formatOption())
    .option("--past-only", "forecast each season from earlier ones alone, not from all others", false)
    .action(async ({ data, ...options }: { data: string; format: "text" | "json"; pastOnly: boolean }) => {
      const { backtestCommand } = await import("./backtest.ts");
      exit = await backtestCommand(data, options, effects);
    });
  const asked = program.commands.find((command) => command.name() === args[0]);
  const lost = optionsTakenByNpm(asked?.options ?? [], args, effects.env ?? {});
  if (lost !== undefined) {
    effects.warn(lost);
    return EXIT.badUsage;
  }
  try {
    await program.parseAsync(args, { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.code === "commander.excessArguments")
      effects.warn(
        `The club folder is named behind --data: ${npmCommand(args[0] ?? "")}--data ${shellQuoted(args[1] ?? "my-club")}`,
      );
    return error.exitCode === 0 ? EXIT.done : EXIT.badUsage;
  }
  return exit;
}
