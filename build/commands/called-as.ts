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
export function asCalled(start: Start): (line: string) => string {
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
export const startOfCommand = (command: string): string =>
  `${command === "preview" ? "npm start" : `npm run ${command}`} -- `;

/** A word as a shell takes it: in quotes where it holds more than letters, digits and the signs of a path. */
export const asArgument = (word: string): string => (/^[\w./\\:~-]+$/.test(word) ? word : `"${word}"`);
