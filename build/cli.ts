import { main } from "./commands/command-line.ts";

process.exitCode = await main(process.argv.slice(2), {
  say: (line) => console.log(line),
  warn: (line) => console.error(line),
});
