import { describe, expect, test } from "vitest";
import { rewriteNpmCommands, shellQuoted } from "../../build/commands/npm-invocation.ts";
import { durationText, progressLine } from "../../build/commands/progress-line.ts";

function place(isTerminal: boolean) {
  const written: string[] = [];
  let now = 0;
  const line = progressLine({ isTerminal, now_ms: () => now, write: (text) => void written.push(text) });
  const pass = (ms: number): void => {
    now += ms;
  };
  return { line, written, pass };
}
/** What stands in the line once all has been written: behind the last return to its beginning. */
const shown = (written: readonly string[]): string => written.join("").split("\r\u001b[K").at(-1) ?? "";

describe("at a terminal", () => {
  test("one line says what is done and how far it is", () => {
    const { line, written, pass } = place(true);
    line.progress("load", 0, 0);
    expect(shown(written)).toBe("Reading the club folder …");
    line.progress("pages", 0, 8);
    expect(shown(written)).toBe(`Pages ${"░".repeat(24)} 0/8`);
    pass(100);
    line.progress("pages", 2, 8);
    expect(shown(written)).toBe(`Pages ${"█".repeat(6)}${"░".repeat(18)} 2/8`);
    expect(written.join("")).not.toContain("\n");
  });

  test("it is redrawn when some time has passed, and always at the end of a stage", () => {
    const { line, written } = place(true);
    for (let done = 0; done <= 500; done++) line.progress("cards", done, 500);
    expect(written).toHaveLength(2);
    expect(shown(written)).toContain("500/500");
  });

  test("it is taken away before something else is printed, once", () => {
    const { line, written } = place(true);
    line.clear();
    expect(written).toEqual([]);
    line.progress("load", 0, 0);
    line.clear();
    line.clear();
    expect(written).toHaveLength(2);
    expect(shown(written)).toBe("");
  });
});

describe("where there is no terminal", () => {
  test("a quick build is silent", () => {
    const { line, written, pass } = place(false);
    for (const stage of ["load", "pages", "cards"] as const) {
      line.progress(stage, 0, 0);
      pass(300);
    }
    line.clear();
    expect(written).toEqual([]);
  });

  test("a slow stage has one plain line, behind it", () => {
    const { line, written, pass } = place(false);
    line.progress("compute", 0, 0);
    pass(12_345);
    line.progress("pages", 0, 70);
    pass(1000);
    line.progress("pages", 70, 70);
    pass(1500);
    line.clear();
    expect(written).toEqual(["Computing the season, the water and the rigs (12 s)\n", "Pages: 70 (2.5 s)\n"]);
  });
});

test.each([
  [0, "0.0 s"],
  [9949, "9.9 s"],
  [9950, "10 s"],
  [59_600, "1 min 0 s"],
  [185_000, "3 min 5 s"],
])("%i ms are %s", (ms, text) => {
  expect(durationText(ms)).toBe(text);
});

describe("commands are told as they are called here", () => {
  const own = rewriteNpmCommands({ npm_package_name: "lake-season-guide", npm_lifecycle_event: "guide" });
  const installed = rewriteNpmCommands({ npm_package_name: "our-club", npm_lifecycle_event: "npx" });
  test.each([
    ["npm run guide -- --data my-club", "npx lake-season-guide guide --data my-club"],
    ["npm start -- --data my-club", "npx lake-season-guide preview --data my-club"],
    ["Mend it (npm run check), or", "Mend it (npx lake-season-guide check), or"],
    ["nothing to call", "nothing to call"],
  ])("%s", (line, called) => {
    expect(own(line)).toBe(line);
    expect(installed(line)).toBe(called);
    expect(rewriteNpmCommands({})(line)).toBe(called);
  });

  test("a folder with a space is one argument", () => {
    expect(shellQuoted("my-club/lakes")).toBe("my-club/lakes");
    expect(shellQuoted("my club")).toBe('"my club"');
  });
});
