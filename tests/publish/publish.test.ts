import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { PublishError, publish } from "../../build/publish/publish.ts";

const MARK = '{"program":{"name":"lake-season-guide"}}';
let parent: string;
let out: string;

beforeEach(async () => {
  parent = await mkdtemp(path.join(tmpdir(), "publish-"));
  out = path.join(parent, "site");
});
afterEach(() => rm(parent, { recursive: true, force: true }));

const guideSaying = (text: string) => async (staging: string) => {
  await writeFile(path.join(staging, "guide.json"), MARK);
  await writeFile(path.join(staging, "index.html"), text);
  return true;
};
const published = (): Promise<string> => readFile(path.join(out, "index.html"), "utf8");

describe("publish", () => {
  test("a new guide replaces the whole of the old one", async () => {
    await publish(out, false, guideSaying("old"));
    await writeFile(path.join(out, "left-behind.html"), "");
    await publish(out, false, guideSaying("new"));
    expect(await published()).toBe("new");
    expect(await readdir(out)).toEqual(["guide.json", "index.html"]);
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("keep begins with a copy of what is published", async () => {
    await publish(out, false, guideSaying("old"));
    await publish(out, true, async (staging) => {
      await writeFile(path.join(staging, "card.pdf"), "card");
      return true;
    });
    expect(await published()).toBe("old");
    expect(await readdir(out)).toEqual(["card.pdf", "guide.json", "index.html"]);
  });

  test("keep with nothing published is refused", async () => {
    await expect(publish(out, true, guideSaying("new"))).rejects.toThrow(/without --only/);
  });

  test("a write that gives up, or breaks, leaves the old guide", async () => {
    await publish(out, false, guideSaying("old"));
    expect(await publish(out, false, async () => false)).toBe(false);
    await expect(
      publish(out, false, async () => {
        throw new Error("broken card");
      }),
    ).rejects.toThrow("broken card");
    expect(await published()).toBe("old");
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("a folder of somebody's own files is refused and untouched", async () => {
    await mkdir(out);
    await writeFile(path.join(out, "letters.txt"), "mine");
    await expect(publish(out, false, guideSaying("new"))).rejects.toThrow(PublishError);
    expect(await readdir(out)).toEqual(["letters.txt"]);
  });

  test("an empty folder is taken", async () => {
    await mkdir(out);
    await publish(out, false, guideSaying("new"));
    expect(await published()).toBe("new");
  });

  test("a run killed between the two renames is mended by the next", async () => {
    const last = path.join(parent, ".site.last");
    await mkdir(last);
    await guideSaying("old")(last);
    await mkdir(path.join(parent, ".site.next"));
    expect(await publish(out, false, async () => false)).toBe(false);
    expect(await published()).toBe("old");
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("a place that cannot be written is a PublishError", async () => {
    const file = path.join(parent, "a-file");
    await writeFile(file, "");
    await expect(publish(path.join(file, "site"), false, guideSaying("new"))).rejects.toThrow(PublishError);
  });
});
