/** How the program was started, as far as npm tells it. */
interface Start {
  readonly npm_lifecycle_event?: string | undefined;
  readonly npm_package_name?: string | undefined;
}

const OWN_NAME = "lake-season-guide";
const NPM_START = /npm (?:run (?<script>[a-z]+)|(?<start>start))(?: --(?= ))?/g;

/**
 * Commands in what the program says are written as the repository's own scripts, `npm run check -- --data my-club`. Where
 * the program is installed in another folder they are called by its name; this turns the one into the other.
 */
export function rewriteNpmCommands(start: Start): (line: string) => string {
  const isOwnScript = start.npm_package_name === OWN_NAME && start.npm_lifecycle_event !== "npx";
  return isOwnScript
    ? (line) => line
    : (line) =>
        line.replaceAll(
          NPM_START,
          (_, script: string | undefined) => `npx ${OWN_NAME} ${script ?? "preview"}`,
        );
}

/** How a command is begun: `npm run check -- `. */
export const npmCommand = (command: string): string =>
  `${command === "preview" ? "npm start" : `npm run ${command}`} -- `;

/** A word as a shell takes it: in quotes where it holds more than letters, digits and the signs of a path. */
export const shellQuoted = (word: string): string => (/^[\w./\\:~-]+$/.test(word) ? word : `"${word}"`);

/** What a program was started with, by name. */
type Environment = Readonly<Record<string, string | undefined>>;

/** An option of a command line, as commander names it. */
interface Named {
  /** With its dashes: `--as-of`, `--no-ask`. */
  readonly long?: string | undefined;
  /** Whether a word belongs to it. */
  readonly required: boolean;
}

/**
 * Options of npm's own, by which nothing can be told: npm sets them always (`cache`), or leaves out of the environment what is
 * no value of its own (`only`, and `format`, which it takes for an option of its own too).
 */
const NPMS_OWN: readonly string[] = ["--cache", "--no-cache", "--only", "--format"];

/** npm keeps `--as-of` as npm_config_as_of; `--no-ask` as npm_config_ask, and empty. */
const keptAs = (long: string): string => `npm_config_${long.replace(/^--(no-)?/, "").replaceAll("-", "_")}`;
const isLost = (long: string, env: Environment): boolean => {
  const value = env[keptAs(long)];
  return value !== undefined && (value === "") === long.startsWith("--no-");
};

/** The options as they should have been written; a word npm left behind goes back to the only option that can have lost it. */
function rewritten(lost: readonly Named[], words: readonly string[], env: Environment): string[] {
  const bare = lost.filter(({ long = "", required }) => required && env[keptAs(long)] === "true");
  const last = words.length > 1 && bare.length === 1 ? words.at(-1) : undefined;
  const options = lost.flatMap((option) => {
    const { long = "", required } = option;
    if (!required) return [long];
    const value = bare.includes(option) ? last : env[keptAs(long)];
    return [long, value === undefined ? "…" : shellQuoted(value)];
  });
  const kept = bare.length === 0 ? words.slice(1) : words.slice(1, last === undefined ? 1 : -1);
  return [...kept.map(shellQuoted), ...options];
}

/**
 * What to write instead, where npm kept options of a command for itself; undefined when it kept none. Of
 * `npm run new lake X --data my-club`, without two dashes alone, it hands on `new lake X my-club` and sets npm_config_data to
 * `true`; of `--data=my-club`, `new lake X`, and sets it to `my-club` (npm 10 and 11, seen by trying).
 * @param options all options of the command
 * @param words the command's name and what stood behind it
 */
export function optionsTakenByNpm(
  options: readonly Named[],
  words: readonly string[],
  env: Environment,
): string | undefined {
  const lost = options.filter(({ long = "" }) => !NPMS_OWN.includes(long) && isLost(long, env));
  const [command = ""] = words;
  if (lost.length === 0) return undefined;
  const names = lost.map(({ long }) => long).join(" and ");
  return [
    `npm kept ${names} for itself, so nothing was done: two dashes alone (--) must stand before what is meant for the program.`,
    `Write: ${npmCommand(command)}${rewritten(lost, words, env).join(" ")}`,
  ].join("\n");
}
