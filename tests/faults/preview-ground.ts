import { cp, mkdtemp, readFile, rm } from "node:fs/promises";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { type Child, start } from "./child.ts";
import { tinyClubs } from "./tiny-club.ts";

/** A club, the real preview of it, and what else lies about. */
export interface PreviewGround {
  readonly dir: string;
  readonly club: string;
  readonly out: string;
  readonly child: Child;
  readonly port: number;
  close(): Promise<void>;
}

/** What `isDue` gives when it gives something, looked for again and again; undefined when that takes too long. */
export async function eventually<T>(
  isDue: () => T | undefined | Promise<T | undefined>,
  patience_ms = 20_000,
): Promise<T | undefined> {
  for (const end_ms = performance.now() + patience_ms; performance.now() < end_ms; await sleep(15)) {
    const found = await isDue();
    if (found !== undefined) return found;
  }
  return undefined;
}

export async function openPreviewGround(...options: readonly string[]): Promise<PreviewGround> {
  const clubs = await tinyClubs();
  const dir = await mkdtemp(path.join(tmpdir(), "preview-faults-"));
  const [club, out] = [path.join(dir, "club"), path.join(dir, "site")];
  await cp(clubs.old, club, { recursive: true });
  await rm(clubs.dir, { recursive: true });
  const child = start("build/bin.mjs", [
    ...["preview", "--data", club, "--out", out, "--no-cache"],
    ...options,
  ]);
  const port = await eventually(() => {
    if (child.process.exitCode !== null) throw new Error(child.text());
    const [, found] = /http:\/\/localhost:(\d+)/.exec(child.text()) ?? [];
    return child.text().includes("Watching") ? found : undefined;
  }, 120_000);
  if (port === undefined) throw new Error(`no preview: ${child.text()}`);
  return {
    ...{ dir, club, out, child, port: Number(port) },
    close: async () => {
      if (child.process.exitCode === null) child.process.kill("SIGKILL");
      await child.ended;
      await rm(dir, { recursive: true, force: true });
    },
  };
}

/** Sends bytes as they are and returns what comes back until the other side ends, or says nothing more for a while. */
export async function exchange(
  port: number,
  bytes: string | Buffer,
  { host = "127.0.0.1", wait_ms = 400, then }: { host?: string; wait_ms?: number; then?: Buffer } = {},
): Promise<string> {
  const socket = connect({ port, host });
  let text = "";
  socket.setTimeout(wait_ms, () => socket.destroy());
  socket.on("error", () => socket.destroy());
  socket.on("data", (chunk: Buffer) => {
    if (text === "" && then !== undefined) socket.write(then);
    text += chunk.toString("latin1");
  });
  socket.write(bytes);
  return new Promise((resolve) => socket.once("close", () => resolve(text)));
}

/** An ordinary browser's request. */
export const get = (ground: PreviewGround, address: string, more = ""): Promise<string> =>
  exchange(
    ground.port,
    `GET ${address} HTTP/1.1\r\nHost: localhost:${ground.port}\r\nConnection: close\r\n${more}\r\n`,
    { wait_ms: 10_000 },
  );

export const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1] ?? 0);

/** Whether the preview goes on and shows the guide. */
export async function isAlive(ground: PreviewGround): Promise<boolean> {
  if (ground.child.process.exitCode !== null || ground.child.process.signalCode !== null) return false;
  const answer = await get(ground, "/").catch(() => "");
  return statusOf(answer) === 200 && answer.includes("Old club");
}

/** Resident memory of a process; NaN where the system does not tell. Linux: proc(5). */
export async function memory_MB(pid: number | undefined): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, "utf8").catch(() => "");
  return Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1] ?? Number.NaN) / 1024;
}
