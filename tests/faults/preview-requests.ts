import { createHash, randomBytes } from "node:crypto";
import { seeded } from "../seeded-random.ts";
import { exchange, isAlive, memory_MB, type PreviewGround } from "./preview-ground.ts";

const KEY = randomBytes(16).toString("base64");
/** RFC 6455, 4.1. */
export const upgrade = (port: number, address = "/", origin = `http://localhost:${port}`): string =>
  [
    `GET ${address} HTTP/1.1`,
    `Host: localhost:${port}`,
    `Origin: ${origin}`,
    ...[
      "Connection: Upgrade",
      "Upgrade: websocket",
      "Sec-WebSocket-Version: 13",
      `Sec-WebSocket-Key: ${KEY}`,
    ],
    "\r\n",
  ].join("\r\n");

/** Frames that RFC 6455, 5.2 forbids: reserved bits, a masked frame cut off in its length, text that is no UTF-8. */
export const BAD_FRAMES: readonly Buffer[] = [
  Buffer.from([0xf1, 0x80, 1, 2, 3, 4]),
  Buffer.from([0x81, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff]),
  Buffer.from([0x81, 0x82, 0, 0, 0, 0, 0xff, 0xfe]),
];

/** Requests that ended a preview once. */
export const BAD_REQUESTS: Readonly<Record<string, (port: number) => string>> = {
  "/%ff": (port) => `GET /%ff HTTP/1.1\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`,
  "//": (port) => `GET // HTTP/1.1\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`,
  "OPTIONS *": (port) => `OPTIONS * HTTP/1.1\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`,
  "an absolute form": (port) =>
    `GET http://[/ HTTP/1.1\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`,
  "/%00": (port) => `GET /%00 HTTP/1.1\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`,
  CONNECT: (port) => `CONNECT x HTTP/1.1\r\nHost: localhost:${port}\r\n\r\n`,
};

const PARTS = [
  "..",
  "%2f",
  "%2e%2e",
  "%ff",
  "%",
  "%00",
  "%5c",
  "\\",
  "//",
  "?",
  "#",
  "lakes",
  "ember",
  "index.html",
];
const METHODS = [
  "GET",
  "GET",
  "GET",
  "HEAD",
  "OPTIONS",
  "POST",
  "PUT",
  "DELETE",
  "PATCH",
  "TRACE",
  "CONNECT",
];
const HEADERS = [
  "Range: bytes=0-5, 7-, -1",
  "Range: bytes=99999999-",
  "If-None-Match: *",
  "Origin: null",
  "Accept: text/event-stream",
  "Expect: 100-continue",
  "Transfer-Encoding: chunked",
  "Content-Length: -1",
  "Upgrade: h2c\r\nConnection: Upgrade",
  "Sec-Fetch-Mode: cors",
];

/** One request or frame that no browser sends, and what a socket sends after the first answer. */
function wildBytes(
  random: () => number,
  port: number,
): { readonly bytes: string | Buffer; readonly then?: Buffer } {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const noise = (most: number): Buffer =>
    Buffer.from(Array.from({ length: Math.floor(random() * most) }, () => Math.floor(random() * 256)));
  const target = (): string => {
    const parts = Array.from({ length: 1 + Math.floor(random() * 6) }, () =>
      random() < 0.7 ? pick(PARTS) : `%${Math.floor(random() * 256).toString(16)}`,
    );
    const joined = parts.join(random() < 0.5 ? "/" : "");
    return pick([
      `/${joined}`,
      joined,
      "*",
      `http://${joined}`,
      `//${joined}`,
      `/${"a".repeat(random() * 20_000)}`,
    ]);
  };
  const kind = random();
  if (kind < 0.05) return { bytes: noise(400) };
  if (kind < 0.2) {
    const then = random() < 0.5 ? pick(BAD_FRAMES) : noise(200);
    return { bytes: upgrade(port, random() < 0.5 ? "/" : "/.live"), then };
  }
  const host =
    random() < 0.8
      ? `localhost:${port}`
      : noise(12)
          .toString("latin1")
          .replace(/[\r\n]/g, "");
  const headers = Array.from({ length: Math.floor(random() * 3) }, () => pick(HEADERS));
  const lines = [
    `${pick(METHODS)} ${target()} HTTP/1.${random() < 0.9 ? 1 : 0}`,
    `Host: ${host}`,
    ...headers,
  ];
  const whole = `${lines.join("\r\n")}\r\n\r\n`;
  return { bytes: random() < 0.9 ? whole : whole.slice(0, Math.floor(random() * whole.length)) };
}

export interface FuzzResult {
  readonly sent: number;
  /** How many were sent when the preview no longer answered; undefined when it goes on. */
  readonly endedAfter?: number;
  readonly answered: number;
  /** After each quarter of the requests. */
  readonly memory_MB: readonly number[];
  /** Answers that hold what is no part of the guide. */
  readonly leaks: number;
  readonly secret: string;
}

const AT_ONCE = 16;

/** Sends requests and frames that no browser sends. The same seed sends the same. */
export async function fuzzPreview(
  ground: PreviewGround,
  count: number,
  seed: number,
  secret: string,
): Promise<FuzzResult> {
  const random = seeded(seed);
  const { port, child } = ground;
  let [sent, answered, leaks] = [0, 0, 0];
  const memory: number[] = [];
  let endedAfter: number | undefined;
  const worker = async (): Promise<void> => {
    while (sent < count && endedAfter === undefined) {
      const number = ++sent;
      const { bytes, then } = wildBytes(random, port);
      const answer = await exchange(port, bytes, { wait_ms: 40, ...(then === undefined ? {} : { then }) });
      if (answer !== "") answered++;
      if (answer.includes(secret)) leaks++;
      if (number % Math.ceil(count / 4) === 0) memory.push(await memory_MB(child.process.pid));
      if (number % 500 === 0 && !(await isAlive(ground))) endedAfter = number;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  if (endedAfter === undefined && !(await isAlive(ground))) endedAfter = sent;
  return {
    ...{ sent, answered, leaks, secret },
    ...(endedAfter === undefined ? {} : { endedAfter }),
    memory_MB: memory,
  };
}

/** What a WebSocket's server answers to a key. RFC 6455, 4.2.2. */
export const acceptOf = (key = KEY): string =>
  createHash("sha1").update(`${key}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`).digest("base64");
