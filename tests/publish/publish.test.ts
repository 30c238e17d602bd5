import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { PublishError, publish, recoverOutput } from "../../build/publish/publish.ts";

let parent: string;
let out: string;

beforeEach(async () => {
  parent = await mkdtemp(path.join(tmpdir(), "publish-"));
  out = path.join(parent, "site");
});
afterEach(() => rm(parent, { recursive: true, force: true }));

const guideSaying = (text: string) => async (staging: string) => {
  await writeFile(path.join(staging, "guide.json"), "{}");
  await writeFile(path.join(staging, "index.html"), text);
  return true;
};
const published = (): Promise<string> => readFile(path.join(out, "index.html"), "utf8");

describe("publish", () => {
  test("a new guide replaces the whole of the old one", async () => {
    await publish(out, guideSaying("old"));
    await publish(out, guideSaying("new"));
    expect(await published()).toBe("new");
    expect(await readdir(out)).toEqual(["guide-files.json", "guide.json", "index.html"]);
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("keep begins with a copy of what is published", async () => {
    await publish(out, guideSaying("old"));
    const addCard = async (staging: string): Promise<boolean> => {
      await writeFile(path.join(staging, "card.pdf"), "card");
      return true;
    };
    await publish(out, addCard, { keep: true });
    expect(await published()).toBe("old");
    expect(await readdir(out)).toEqual(["card.pdf", "guide-files.json", "guide.json", "index.html"]);
  });

  test("what somebody adds while the next guide is written, or replaces, is in the next one", async () => {
    await publish(out, guideSaying("old"));
    await writeFile(path.join(out, "CNAME"), "old.example");
    await publish(out, async (staging) => {
      await writeFile(path.join(out, "pier.jpg"), "a photograph");
      await rename(path.join(out, "CNAME"), path.join(parent, "before"));
      await writeFile(path.join(out, "CNAME"), "new.example");
      return guideSaying("new")(staging);
    });
    expect(await readFile(path.join(out, "pier.jpg"), "utf8")).toBe("a photograph");
    expect(await readFile(path.join(out, "CNAME"), "utf8")).toBe("new.example");
    expect(await published()).toBe("new");
  });

  test("what somebody added to the last guide just after the swap is moved to the next one", async () => {
    await publish(out, guideSaying("new"));
    const next = path.join(parent, ".site.next");
    await publish(next, guideSaying("old"));
    await writeFile(path.join(next, "pier.jpg"), "a photograph");
    await recoverOutput(out);
    expect(await readFile(path.join(out, "pier.jpg"), "utf8")).toBe("a photograph");
    expect(await published()).toBe("new");
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("an unlisted file is known as the guide's own, and its address cannot be read out of the list", async () => {
    const secret = "trips/over-the-pass/index.html";
    const write = async (staging: string): Promise<boolean> => {
      await mkdir(path.join(staging, path.dirname(secret)), { recursive: true });
      await writeFile(path.join(staging, secret), "a secret");
      return guideSaying("old")(staging);
    };
    await publish(out, write, { isUnlisted: (address) => address === secret });
    expect(await readFile(path.join(out, "guide-files.json"), "utf8")).not.toContain("over-the-pass");
    await publish(out, guideSaying("new"));
    expect(await readdir(out)).toEqual(["guide-files.json", "guide.json", "index.html"]);
  });

  test("keep with nothing published is refused", async () => {
    await expect(publish(out, guideSaying("new"), { keep: true })).rejects.toThrow(/without --only/);
  });

  test("a write that gives up, or breaks, leaves the old guide", async () => {
    await publish(out, guideSaying("old"));
    expect(await publish(out, async () => false)).toBe(false);
    await expect(
      publish(out, async () => {
        throw new Error("broken card");
      }),
    ).rejects.toThrow("broken card");
    expect(await published()).toBe("old");
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("a folder of somebody's own files is refused and untouched", async () => {
    await mkdir(out);
    await writeFile(path.join(out, "letters.txt"), "mine");
    await expect(publish(out, guideSaying("new"))).rejects.toThrow(PublishError);
    expect(await readdir(out)).toEqual(["letters.txt"]);
  });

  test("an empty folder is taken", async () => {
    await mkdir(out);
    await publish(out, guideSaying("new"));
    expect(await published()).toBe("new");
  });

  test("a run killed between the two renames is mended by the next", async () => {
    const last = path.join(parent, ".site.last");
    await publish(last, guideSaying("old"));
    await mkdir(path.join(parent, ".site.next"));
    expect(await publish(out, async () => false)).toBe(false);
    expect(await published()).toBe("old");
    expect(await readdir(parent)).toEqual(["site"]);
  });

  test("a place that cannot be written is a PublishError", async () => {
    const file = path.join(parent, "a-file");
    await writeFile(file, "");
    await expect(publish(path.join(file, "site"), guideSaying("new"))).rejects.toThrow(PublishError);
  });
});
