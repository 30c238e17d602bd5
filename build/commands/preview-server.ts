import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { isIP } from "node:net";
import { hostname } from "node:os";
import path from "node:path";

/** A file as it is sent. */
export type Body = string | Buffer;

export interface PreviewServer {
  readonly port: number;
  /** Has every open page loaded again. */
  reload(): void;
  close(): void;
}

/** The server cannot listen; in words for whoever runs the preview. */
export class ListenError extends Error {
  override readonly name = "ListenError";
}

const TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".geojson": "application/geo+json; charset=utf-8",
  ".gif": "image/gif",
  ".gpx": "application/gpx+xml; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ics": "text/calendar; charset=utf-8",
  ".jpeg": "image/jpeg",
  ".jpg": "image/jpeg",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".pdf": "application/pdf",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".webp": "image/webp",
  ".woff2": "font/woff2",
  ".xml": "application/xml; charset=utf-8",
};

/** Server-sent events (WHATWG HTML, 9.2): the browser connects again by itself. */
const EVENTS = ".live";
const SCRIPT = ".live.js";
const SCRIPT_TEXT = `new EventSource("/${EVENTS}").addEventListener("reload", () => location.reload());\n`;
const withScript = (page: string): string =>
  page.replace("</head>", `<script src="/${SCRIPT}" defer></script></head>`);

const MOST_CONNECTIONS = 256;
/** Open pages; a browser allows itself six for one server. */
const MOST_STREAMS = 64;
/** How many ports are tried, one after the other. */
const PORTS = 11;
const LAST_PORT = 65_535;

/** Where inside the guide a request leads; undefined where it is no address: "*", a whole URL, broken percent signs. */
function addressOf(url: string): string | undefined {
  const [pathname = ""] = url.split(/[?#]/);
  if (!pathname.startsWith("/")) return undefined;
  try {
    const address = decodeURIComponent(pathname.slice(1));
    return address === "" || address.endsWith("/") ? `${address}index.html` : address;
  } catch {
    return undefined;
  }
}

const LOCAL = ["localhost", "127.0.0.1", "[::1]"];

/**
 * True for a request under a name of this machine. A page elsewhere on the web can have its own name lead here (DNS
 * rebinding), so a name counts only when it is known; a number cannot be such a name.
 */
function isOwnHost(header: string | undefined, host: string, port: number): boolean {
  const [, name = "", asked = "80"] =
    /^(\[[^\]]*\]|[^:]*)(?::(\d+))?$/.exec(header?.toLowerCase() ?? "") ?? [];
  if (Number(asked) !== port) return false;
  if (LOCAL.includes(name)) return true;
  if (LOCAL.includes(host)) return false;
  return (
    name === host.toLowerCase() || name === hostname().toLowerCase() || isIP(name.replace(/^\[|\]$/g, "")) > 0
  );
}

interface Reply {
  readonly status: number;
  readonly type: string | undefined;
  readonly body: Body;
  readonly more?: Readonly<Record<string, string>>;
}

const refusal = (status: number, words: string): Reply => ({
  ...{ status, type: TYPES[".txt"], body: `${words}\n` },
  more: { Allow: "GET, HEAD", Connection: "close" },
});

function send({ status, type, body, more }: Reply, response: ServerResponse): void {
  response.writeHead(status, {
    "Content-Type": type ?? "application/octet-stream",
    "Content-Length": Buffer.byteLength(body),
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Resource-Policy": "same-origin",
    ...more,
  });
  response.end(response.req.method === "HEAD" ? undefined : body);
}

/** Listens on the first free port. @throws ListenError */
async function listen(server: Server, host: string, first: number): Promise<number> {
  const last = Math.min(first + PORTS - 1, LAST_PORT);
  for (let port = first; port <= last; port++) {
    const error = await new Promise<NodeJS.ErrnoException | undefined>((resolve) => {
      server.once("error", resolve);
      server.listen({ port, host }, () => resolve(undefined));
    });
    server.removeAllListeners("error").removeAllListeners("listening");
    if (error === undefined) return port;
    if (error.code !== "EADDRINUSE")
      throw new ListenError(`cannot listen on ${host}, port ${port}: ${error.message}.`);
  }
  const other = last < LAST_PORT ? last + 1 : 8080;
  throw new ListenError(
    `ports ${first} to ${last} are all taken: give another with --port, such as --port ${other}.`,
  );
}

/**
 * Serves a guide to browsers on this machine, and to others where `host` says so. No request can end it: what is not an
 * address of the guide is answered with 4xx.
 * @param fileAt a file of the guide by its address, such as "lakes/ember/index.html"; nothing else is ever read
 * @throws ListenError
 */
export async function openPreviewServer(
  { host, port: first }: { readonly host: string; readonly port: number },
  fileAt: (address: string) => Body | undefined,
  warn: (line: string) => void,
): Promise<PreviewServer> {
  const streams = new Set<ServerResponse>();
  let port = first;

  function openStream(response: ServerResponse): Reply | undefined {
    if (streams.size >= MOST_STREAMS) return refusal(503, "Too many pages are open.");
    response.writeHead(200, { "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
    response.write("retry: 500\n\n");
    streams.add(response);
    response.once("close", () => streams.delete(response));
    return undefined;
  }

  function fileReply(address: string): Reply {
    const body = fileAt(address);
    const type = TYPES[path.posix.extname(address).toLowerCase()];
    if (body !== undefined)
      return { status: 200, type, body: type === TYPES[".html"] ? withScript(`${body}`) : body };
    if (fileAt(`${address}/index.html`) !== undefined)
      return { ...refusal(301, ""), more: { Location: `/${encodeURI(address)}/` } };
    const notFound = `${fileAt("404.html") ?? "<head></head>Not found\n"}`;
    return { status: 404, type: TYPES[".html"], body: withScript(notFound) };
  }

  /** Undefined where the response stays open. */
  function replyTo(
    { method, url = "", headers }: IncomingMessage,
    response: ServerResponse,
  ): Reply | undefined {
    if (!isOwnHost(headers.host, host, port))
      return refusal(403, "Not a name of this machine: start the preview with --host to serve under others.");
    if (headers.origin !== undefined && headers.origin !== `http://${headers.host}`)
      return refusal(403, "Not for pages from elsewhere.");
    if (method !== "GET" && method !== "HEAD") return refusal(405, "Only GET and HEAD.");
    const address = addressOf(url);
    if (address === undefined) return refusal(400, "Not an address.");
    if (address === SCRIPT) return { status: 200, type: TYPES[".js"], body: SCRIPT_TEXT };
    if (address !== EVENTS) return fileReply(address);
    return method === "GET" ? openStream(response) : refusal(405, "Only GET.");
  }

  const timeouts = { headersTimeout: 10_000, requestTimeout: 20_000, connectionsCheckingInterval: 5_000 };
  const server = createServer(timeouts, (request, response) => {
    response.on("error", () => response.destroy());
    try {
      const reply = replyTo(request, response);
      if (reply !== undefined) send(reply, response);
    } catch (error) {
      warn(`The preview could not answer ${request.url}: ${error instanceof Error ? error.message : error}`);
      if (response.headersSent) response.destroy();
      else send(refusal(500, "The preview failed here; its terminal says why."), response);
    }
  });
  server.maxConnections = MOST_CONNECTIONS;
  port = await listen(server, host, first);
  server.on("error", (error) => warn(`The preview's server: ${error.message}`));
  return {
    port,
    reload: () => {
      for (const stream of streams) stream.write("event: reload\ndata:\n\n");
    },
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
