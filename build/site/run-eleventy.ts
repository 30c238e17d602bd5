import path from "node:path";
import type { UserConfig, Written } from "@11ty/eleventy";

/** Eleventy takes paths from where the program was started. */
const fromHere = (file: string): string => path.relative(process.cwd(), file);

/** Eleventy is loaded only when there is something to draw. */
export async function runEleventy(
  inputDir: string,
  outDir: string,
  config: (eleventyConfig: UserConfig) => void | Promise<void>,
): Promise<readonly Written[]> {
  const { default: Eleventy } = await import("@11ty/eleventy");
  const eleventy = new Eleventy(fromHere(inputDir), fromHere(outDir), {
    configPath: false,
    quietMode: true,
    config,
  });
  eleventy.disableLogger();
  const [, written] = await eleventy.write();
  return written;
}

/** True for the system's own refusals, such as a full disk. */
export function isSystemError(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ("errno" in error) return true;
  return "originalError" in error && isSystemError(error.originalError);
}

/** The message of an error of Eleventy's, with that of the error it came from. */
export function messageOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const cause = "originalError" in error ? error.originalError : undefined;
  return cause === undefined ? error.message : messageOf(cause);
}
