import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { startBrowser } from "./browser.ts";
import { type Watched, watched } from "./watched.ts";

/** Pages in a folder. */
interface InFolder {
  readonly dir: string;
  remove(): Promise<void>;
}

/** A browser, and what the tests of one describe block look at with it. May be asked inside tests only. */
export interface Opened<Made> {
  readonly browser: Browser;
  readonly made: Made;
  /** The address of one of its files, opened from the disk. */
  onDisk(address: string): string;
  watched(options?: Parameters<Browser["newContext"]>[0]): Promise<Watched>;
}

/** Starts a browser and makes what it should show before the first test of the describe block around; takes both away after the last. */
export function openedWith<Made extends InFolder>(make: () => Promise<Made>): Opened<Made> {
  const there: { browser?: Browser; made?: Made } = {};
  beforeAll(async () => {
    [there.browser, there.made] = await Promise.all([startBrowser(), make()]);
  });
  afterAll(async () => {
    await there.browser?.close();
    await there.made?.remove();
  });
  const known = <Thing>(thing: Thing | undefined): Thing => {
    if (thing === undefined) throw new Error("asked before the tests began");
    return thing;
  };
  return {
    get browser() {
      return known(there.browser);
    },
    get made() {
      return known(there.made);
    },
    onDisk: (address) => new URL(address, pathToFileURL(`${known(there.made).dir}/`)).href,
    watched: (options) => watched(known(there.browser), options),
  };
}
