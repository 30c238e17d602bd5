import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css",
  ".js": "text/javascript",
  ".svg": "image/svg+xml",
  ".pdf": "application/pdf",
  ".webmanifest": "application/manifest+json",
};

export interface WebServer {
  /** The guide's own address, which ends with a slash. */
  readonly url: string;
  /** Inside the guide, in the order they were asked for. */
  readonly asked: string[];
  /** From now on nobody answers. */
  cut(): Promise<void>;
}

/** Serves a folder below a folder of its own, as any web space would. */
export async function serve(dir: string, below = "/club/spring/"): Promise<WebServer> {
  const asked: string[] = [];
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const address = pathname.startsWith(below) ? pathname.slice(below.length) : undefined;
    const file = address === "" || address?.endsWith("/") ? `${address}index.html` : address;
    if (address !== undefined) asked.push(address);
    try {
      if (file === undefined || file.includes("..")) throw new Error("outside");
      const bytes = await readFile(path.join(dir, file));
      response.writeHead(200, { "Content-Type": TYPES[path.extname(file)] ?? "application/octet-stream" });
      response.end(bytes);
    } catch {
      response.writeHead(404, { "Content-Type": "text/plain" });
      response.end("not here");
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${below}`,
    asked,
    cut: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
