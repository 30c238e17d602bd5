import { mkdir, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { networkInterfaces } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { start } from "./child.ts";
import { editUnderPreview } from "./preview-edits.ts";
import { exchange, get, isAlive, openPreviewGround, type PreviewGround, statusOf } from "./preview-ground.ts";
import { acceptOf, BAD_FRAMES, BAD_REQUESTS, fuzzPreview, upgrade } from "./preview-requests.ts";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const SECRET = "only for those who keep it";
let ground: PreviewGround;
async function open(): Promise<void> {
  ground = await openPreviewGround();
  await writeFile(path.join(ground.dir, "site-private.txt"), SECRET);
  await writeFile(path.join(ground.out, "CNAME"), SECRET);
  await mkdir(path.join(ground.out, ".git"));
  await writeFile(path.join(ground.out, ".git/config"), SECRET);
}
beforeAll(open);
afterAll(() => ground.close());
/** One that was ended is begun again, so that each line is tried. */
async function mustLive(): Promise<void> {
  if (await isAlive(ground)) return;
  const { child } = ground;
  await ground.close();
  await open();
  throw new Error(`the preview ended: ${child.text().slice(-1500)}`);
}

describe("who is answered", () => {
  test("listens on this machine alone", async () => {
    const others = Object.values(networkInterfaces()).flatMap((all = []) =>
      all.filter(({ family, internal }) => family === "IPv4" && !internal).map(({ address }) => address),
    );
    const ask = `GET / HTTP/1.1\r\nHost: localhost:${ground.port}\r\nConnection: close\r\n\r\n`;
    for (const host of others) expect(await exchange(ground.port, ask, { host })).toBe("");
    expect(statusOf(await exchange(ground.port, ask))).toBe(200);
  });

  test("asked under a name that is not this machine's, it shows nothing", async () => {
    for (const host of ["evil.example", `evil.example:${ground.port}`, "", "localhost:1"]) {
      const ask = `GET / HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`;
      const answer = await exchange(ground.port, ask);
      expect(statusOf(answer), host).toBe(403);
      expect(answer).not.toContain("Old club");
    }
  });

  test("a page from elsewhere is told of no edit", async () => {
    for (const address of ["/", "/.live"]) {
      const answer = await exchange(ground.port, upgrade(ground.port, address, "http://evil.example"));
      expect(answer).not.toContain(acceptOf());
      expect(statusOf(answer)).toBe(403);
    }
    await mustLive();
  });

  test.each([
    "/..%2fsite-private.txt",
    "/%2e%2e/site-private.txt",
    "/lakes/..%2f..%2fsite-private.txt",
    "/..%5csite-private.txt",
    "/CNAME",
    "/.git/config",
    "/.git%2fconfig",
  ])("nothing but the guide is shown: %s", async (address) => {
    const answer = await get(ground, address);
    expect(answer).not.toContain(SECRET);
    expect(statusOf(answer)).toBe(404);
    await mustLive();
  });

  test("every kind of the guide's files is shown, with its type", async () => {
    for (const [address, type] of [
      ["/", "text/html; charset=utf-8"],
      ["/lakes/ember/?from=a-card", "text/html; charset=utf-8"],
      ["/assets/site.css", "text/css; charset=utf-8"],
      ["/assets/today.js", "text/javascript; charset=utf-8"],
      ["/assets/icon.svg", "image/svg+xml"],
      ["/assets/text.woff2", "font/woff2"],
      ["/cards/ember.pdf", "application/pdf"],
      ["/guide.json", "application/json; charset=utf-8"],
      ["/lakes/ember/season.ics", "text/calendar; charset=utf-8"],
    ] as const) {
      const answer = await get(ground, address);
      expect(statusOf(answer), address).toBe(200);
      expect(answer.toLowerCase()).toContain(`content-type: ${type}\r\n`);
    }
    expect(await get(ground, "/lakes/ember")).toMatch(
      /^HTTP\/1\.1 301[\s\S]*\r\nlocation: \/lakes\/ember\/\r\n/i,
    );
    expect(statusOf(await get(ground, "/nowhere/"))).toBe(404);
  });
});

describe("no request ends it:", () => {
  test.each(Object.keys(BAD_REQUESTS))("%s", async (name) => {
    await exchange(ground.port, BAD_REQUESTS[name]?.(ground.port) ?? "");
    await mustLive();
  });

  test.each([0, 1, 2])("a bad WebSocket frame, %d", async (i) => {
    const then = BAD_FRAMES[i];
    await exchange(ground.port, upgrade(ground.port), then === undefined ? {} : { then });
    await mustLive();
  });

  test("600 wild requests and frames", async () => {
    const result = await fuzzPreview(ground, 600, 1, SECRET);
    expect(result.endedAfter).toBeUndefined();
    expect(result.leaks).toBe(0);
    expect(result.answered).toBeGreaterThan(300);
  });
});

test("every save is seen: 15 edits of five kinds, and the folder is a clean build at the end", async () => {
  for (const own of ["CNAME", ".git"]) await rm(path.join(ground.out, own), { recursive: true });
  expect(await editUnderPreview(ground, 15, 1, 15_000)).toEqual({ made: 15, missed: [], unlike: [] });
});

test("all ports busy: one sentence, with an option that exists", async () => {
  const first = 20_000 + (process.pid % 20_000);
  const servers = await Promise.all(
    Array.from({ length: 11 }, (_, i) => {
      const server = createServer();
      return new Promise<Server>((resolve) => {
        server.once("error", () => resolve(server));
        server.listen({ port: first + i, host: "127.0.0.1" }, () => resolve(server));
      });
    }),
  );
  try {
    const { exit, text } = await start("build/bin.mjs", [
      ...["preview", "--data", ground.club, "--out", path.join(ground.dir, "other"), "--no-cache"],
      ...["--port", String(first)],
    ]).ended;
    expect(exit).toBe(3);
    expect(text.trim().split("\n")).toEqual([
      `ports ${first} to ${first + 10} are all taken: give another with --port, such as --port ${first + 11}.`,
    ]);
  } finally {
    for (const server of servers) server.close();
  }
});
