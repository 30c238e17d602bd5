import { main } from "../commands/command-line.ts";
import { today } from "../commands/today.ts";

/** Runs one command line as the CLI would, then says the most memory the process ever held, in MB. */
process.exitCode = await main(process.argv.slice(2), {
  say: () => {},
  warn: (line) => console.error(line),
  today,
});
console.log(Math.round(process.resourceUsage().maxRSS / 1024));
