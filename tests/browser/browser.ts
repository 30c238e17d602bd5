import { accessSync, constants } from "node:fs";
import path from "node:path";
import { type Browser, chromium } from "playwright-core";

const NAMES = ["chromium", "chromium-browser", "google-chrome"];
const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

const { PATH = "", CI } = process.env;

/** The first Chromium on the search path. */
const BROWSER_PATH = NAMES.flatMap((name) =>
  PATH.split(path.delimiter).map((folder) => path.join(folder, name)),
).find(isProgram);

/** False where there is no browser to test with and nobody demands one. @throws in CI, where one must be there */
export function browserAtHand(): boolean {
  if (BROWSER_PATH !== undefined) return true;
  const missing = `no browser to test with: install one of ${NAMES.join(", ")}`;
  if (CI === "true") throw new Error(missing);
  console.warn(`Skipped, ${missing}.`);
  return false;
}

/** Starts the browser. @throws where there is none */
export async function startBrowser(): Promise<Browser> {
  if (BROWSER_PATH === undefined) throw new Error("no browser");
  return chromium.launch({ executablePath: BROWSER_PATH, args: FLAGS });
}
