import type { Browser, BrowserContext } from "playwright-core";

/** A browser's context, and what went wrong in it so far. */
export type Watched = [BrowserContext, string[]];

/** Opens a context whose pages write down what goes wrong in them, refusals by the content policy included. */
export async function watched(
  browser: Browser,
  options: Parameters<Browser["newContext"]>[0] = {},
): Promise<Watched> {
  const context = await browser.newContext(options);
  const faults: string[] = [];
  context.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(message.text());
  });
  context.on("weberror", (error) => faults.push(String(error.error())));
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText ?? "";
    // What was still on its way when the next page was opened is no fault.
    if (why !== "net::ERR_ABORTED") faults.push(`not loaded: ${request.url()}, ${why}`);
  });
  return [context, faults];
}
