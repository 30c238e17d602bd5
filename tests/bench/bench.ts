import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { Command, InvalidArgumentError } from "commander";
import { growthLines, measuredLines } from "./bench-report.ts";
import { type Measured, measure } from "./measure.ts";
import { writeSyntheticClub } from "./synthetic-club.ts";

const SIZES: readonly number[] = [10, 100, 1000, 3000];

function sizesArgument(text: string): readonly number[] {
  const sizes = text.split(",").map(Number);
  if (sizes.every((size) => Number.isInteger(size) && size >= 2)) return sizes;
  throw new InvalidArgumentError("Write whole numbers from 2 with commas between them, such as 10,100.");
}

const { lakes: sizes } = new Command("bench")
  .description("seconds and memory of a build at several sizes, beside the bare libraries and a copy")
  .option("--lakes <sizes>", "numbers of lakes", sizesArgument, SIZES)
  .parse()
  .opts<{ lakes: readonly number[] }>();

const say = (lines: readonly string[]): void => console.log(lines.join("\n"));

const work = await mkdtemp(path.join(tmpdir(), "lake-season-bench-"));
try {
  say([`Node.js ${process.version}; MB: the most memory held up to the end of the stage.`]);
  const clubs: Measured[] = [];
  for (const size of sizes) {
    const dataDir = path.join(work, `club-${size}`);
    await writeSyntheticClub(dataDir, size);
    const club = await measure(`${size} lakes`, dataDir, size, work);
    clubs.push(club);
    say(measuredLines(club));
  }
  say(growthLines(clubs));
} finally {
  await rm(work, { recursive: true, force: true });
}
