import { rm, utimes } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { startGuide } from "./child.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

/** Whole builds in processes of their own, on machines that may be busy. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const YEAR_MS = 365.25 * 24 * 3600 * 1000;
/** Loaded before the program: every Date that asks for now gets another moment. */
const wrongClock = (wrong_ms: number): string =>
  `data:text/javascript,${encodeURIComponent(`
    const RealDate = Date;
    globalThis.Date = class Date extends RealDate {
      constructor(...args) { if (args.length === 0) super(RealDate.now() + ${wrong_ms}); else super(...args); }
      static now() { return RealDate.now() + ${wrong_ms}; }
    };
  `)}`;

let clubs: TinyClubs;
let right: Record<string, string>;
beforeAll(async () => {
  clubs = await tinyClubs();
  const out = path.join(clubs.dir, "right");
  const { exit, text } = await startGuide(clubs.old, out).ended;
  expect(exit, text).toBe(0);
  right = await contentsOf(out);
});
afterAll(() => rm(clubs.dir, { recursive: true, force: true }));

test.each([
  ["30 years slow", -30, "UTC"],
  ["50 years fast, where it is tomorrow already", 50, "Pacific/Kiritimati"],
])("a clock %s changes no byte", async (name, years, TZ) => {
  const out = path.join(clubs.dir, name);
  const far = new Date(Date.now() - years * YEAR_MS);
  await utimes(path.join(clubs.old, "club.yaml"), far, far);
  const wrong = { nodeArgs: ["--import", wrongClock(years * YEAR_MS)], env: { TZ } };
  for (const round of ["first", "over itself"]) {
    const { exit, text } = await startGuide(clubs.old, out, wrong).ended;
    expect(exit, `${round}: ${text}`).toBe(0);
  }
  expect(await contentsOf(out)).toEqual(right);
});
