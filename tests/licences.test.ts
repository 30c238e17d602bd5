import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}

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
/** What the licence file of a package says where its package.json says nothing, or misspells it. */
const READ_FROM_ITS_FILE: Readonly<Record<string, string>> = {
  jstat: "MIT",
  "png-js": "MIT",
  "splaytree-ts": "BSD-3-Clause",
};

const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
  packages: Readonly<Record<string, Locked>>;
};
const used = Object.entries(packages)
  .filter(([place, { dev }]) => place !== "" && dev !== true)
  .map(([place, locked]) => ({ name: place.replace(/^.*node_modules\//, ""), ...locked }));

test("every library that ships with the program is under a licence that allows it", () => {
  expect(used.length).toBeGreaterThan(50);
  const others = used.filter(({ name, license = "" }) =>
    (READ_FROM_ITS_FILE[name] ?? license).split(" AND ").some((word) => !ALLOWED.includes(word)),
  );
  expect(others.map(({ name, license }) => `${name}: ${license ?? "none said"}`)).toEqual([]);
});

test("none of them needs a script run when it is installed, but for one that is switched off", () => {
  const { allowScripts } = JSON.parse(readFileSync("package.json", "utf8")) as {
    allowScripts: Readonly<Record<string, boolean>>;
  };
  const scripted = used.filter(({ hasInstallScript }) => hasInstallScript === true).map(({ name }) => name);
  expect(scripted.filter((name) => allowScripts[name] !== false)).toEqual([]);
});
