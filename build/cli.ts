import { openAsker } from "./commands/asker.ts";
import { asCalled } from "./commands/called-as.ts";
import { main } from "./commands/command-line.ts";
import { today } from "./commands/today.ts";

const called = asCalled(process.env);

process.exitCode = await main(process.argv.slice(2), {
  say: (line) => console.log(called(line)),
  warn: (line) => console.error(called(line)),
  today,
  ...(process.stdin.isTTY ? { openAsker: () => openAsker(process.stdin, process.stderr) } : {}),
});
