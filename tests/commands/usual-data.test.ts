import path from "node:path";
import { expect, test } from "vitest";
import { defaultDataDir } from "../../build/commands/command-line.ts";
import { type Files, folderOf } from "../input/club-folder.ts";

test.each<[string, Files, string]>([
  ["the demo, where it is", { "demo-data/club.yaml": "a", "ours/club.yaml": "b" }, "demo-data"],
  ["the only club there is", { "ours/club.yaml": "a", "photos/list.txt": "b" }, "ours"],
  ["no guess between two clubs", { "ours/club.yaml": "a", "theirs/club.yaml": "b" }, "demo-data"],
  ["nothing in a folder without a club", { "photos/list.txt": "b" }, "demo-data"],
])("%s", async (_, files, usual) => {
  expect(defaultDataDir(path.resolve(await folderOf(files)))).toBe(usual);
});
