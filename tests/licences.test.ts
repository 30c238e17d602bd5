import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { type Lock, noticesText, usedPackages } from "./notices-text.ts";

/** SPDX names of licences under which a club may use, change and hand on the program with what it is built from. */
const ALLOWED = [
  "MIT",
  "ISC",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "Unlicense",
  "0BSD",
  "Python-2.0",
  "PSF-2.0",
  "MPL-2.0",
  "OFL-1.1",
];
const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as Lock;
const used = usedPackages(lock);

test("every library that ships with the program is under a licence that allows it", () => {
  expect(used.length).toBeGreaterThan(50);
  const others = used.filter(({ license }) => license.split(" AND ").some((word) => !ALLOWED.includes(word)));
  expect(others.map(({ name, license }) => `${name}: ${license}`)).toEqual([]);
});

test("none of them needs a script run when it is installed, but for one that is switched off", () => {
  const { allowScripts } = JSON.parse(readFileSync("package.json", "utf8")) as {
    allowScripts: Readonly<Record<string, boolean>>;
  };
  const scripted = used.filter(({ hasInstallScript }) => hasInstallScript === true).map(({ name }) => name);
  expect(scripted.filter((name) => allowScripts[name] !== false)).toEqual([]);
});

test("the notice of licences is in step with package-lock.json; else: npm run notices", () => {
  const notice = readFileSync("content/notices.txt", "utf8");
  expect(notice).toBe(noticesText(lock));
  const { dependencies, devDependencies } = JSON.parse(readFileSync("package.json", "utf8")) as Record<
    "dependencies" | "devDependencies",
    Readonly<Record<string, string>>
  >;
  for (const name of Object.keys(dependencies)) expect(notice).toContain(`\n  ${name} `);
  for (const name of Object.keys(devDependencies)) expect(notice).not.toContain(`\n  ${name} `);
});

test("the licence that goes with the fonts is theirs", () => {
  const file = createRequire(import.meta.url).resolve("@fontsource/atkinson-hyperlegible-next/LICENSE");
  const text = readFileSync(file, "utf8");
  expect(text).toMatch(/^Copyright .* The Atkinson Hyperlegible Next Project Authors/);
  expect(text).toContain("SIL OPEN FONT LICENSE Version 1.1");
});
