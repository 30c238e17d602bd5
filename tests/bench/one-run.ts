import "../../build/commands/heap-growth.ts";
import { main } from "../../build/commands/command-line.ts";
import { today } from "../../build/commands/effects.ts";
import { openStageWatch } from "./stage-watch.ts";

/** Runs one command line as the CLI would, then says as JSON what each stage of it cost. */
const watch = openStageWatch();
process.exitCode = await main(process.argv.slice(2), {
  say: () => {},
  warn: (line) => console.error(line),
  today,
  now_ms: () => performance.now(),
  progress: watch.progress,
});
console.log(JSON.stringify(watch.close()));
