import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { programHash } from "../../build/program/program-hash.mjs";

let root: string;
const write = (file: string, text: string): void => {
  mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
  writeFileSync(path.join(root, file), text);
};
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), "program-"));
  write("build/cli.ts", "run();\n");
  write("build/water/basin.ts", "lay();\n");
  write("templates/assets/site.css", "body {}\n");
  write("content/cautions.yaml", "[]\n");
  write("package.json", "{}\n");
  write("package-lock.json", "{}\n");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

test("a copy elsewhere is the same program", () => {
  const copy = `${root}-copy`;
  cpSync(root, copy, { recursive: true });
  expect(programHash(copy)).toBe(programHash(root));
  rmSync(copy, { recursive: true });
});

test.each<[string, () => void]>([
  ["one source edited", () => write("build/water/basin.ts", "lay(1);\n")],
  ["a style edited", () => write("templates/assets/site.css", "body { }\n")],
  ["a caution edited", () => write("content/cautions.yaml", "[ ]\n")],
  ["a library changed", () => write("package-lock.json", '{"name":"x"}\n')],
  ["another version", () => write("package.json", '{"version":"2"}\n')],
  ["no lock file", () => rmSync(path.join(root, "package-lock.json"))],
  ["a source added", () => write("build/water/empty.ts", "")],
  [
    "a source renamed",
    () => renameSync(path.join(root, "build/water/basin.ts"), path.join(root, "build/water/bowl.ts")),
  ],
  [
    "text moved from the end of one file to the beginning of the next",
    () => {
      write("build/cli.ts", "run();\nlay();\n");
      write("build/water/basin.ts", "");
    },
  ],
])("another program: %s", (_, edit) => {
  const before = programHash(root);
  edit();
  expect(programHash(root)).not.toBe(before);
});

test("what lies beside the sources does not count, nor what was compiled from them", () => {
  const before = programHash(root);
  write("build/compiled/x/cli.js", "");
  write("site/index.html", "<p>");
  write("demo-data/club.yaml", "name: x");
  expect(programHash(root)).toBe(before);
});

test("as it will be packed, it has no lock file", () => {
  const packed = programHash(root, { isPacked: true });
  expect(packed).not.toBe(programHash(root));
  rmSync(path.join(root, "package-lock.json"));
  expect(packed).toBe(programHash(root));
});
