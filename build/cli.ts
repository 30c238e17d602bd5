import { openAsker } from "./commands/asker.ts";
import { main } from "./commands/command-line.ts";
import { today } from "./commands/today.ts";

process.exitCode = await main(process.argv.slice(2), {
  say: (line) => console.log(line),
  warn: (line) => console.error(line),
  today,
  ...(process.stdin.isTTY ? { openAsker: () => openAsker(process.stdin, process.stderr) } : {}),
});
