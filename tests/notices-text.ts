/** What a package-lock.json says of one package. */
interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}

export interface Lock {
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

export interface UsedPackage extends LockedPackage {
  readonly name: string;
  /** SPDX expression. */
  readonly license: string;
}

/** What the licence file of a package says where its package.json says nothing, or misspells it. */
const READ_FROM_ITS_FILE: Readonly<Record<string, string>> = {
  jstat: "MIT",
  "png-js": "MIT",
  "splaytree-ts": "BSD-3-Clause",
};

const HEAD = `Licences of what this program is built from
===========================================

Inside a guide and its cards lies one work of others, the typeface Atkinson Hyperlegible Next, under the SIL Open Font
License 1.1; its text lies beside the fonts. Scripts and styles of the pages are the program's own, under the MIT licence.

The program needs the packages below when it builds a guide. npm installs each of them with the text of its licence;
none of their code is in a guide. Written by npm run notices from package-lock.json.
`;

/** Every package that is needed to run the program, at whatever depth, in the order of its place in the tree. */
export const usedPackages = ({ packages }: Lock): UsedPackage[] =>
  Object.entries(packages)
    .filter(([place, { dev }]) => place !== "" && dev !== true)
    .map(([place, locked]) => {
      const name = place.replace(/^.*node_modules\//, "");
      return { ...locked, name, license: READ_FROM_ITS_FILE[name] ?? locked.license ?? "none said" };
    });

const inOrder = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

/** The notice: each licence, and the packages under it with their versions. */
export function noticesText(lock: Lock): string {
  const used = usedPackages(lock);
  const licences = [...new Set(used.map(({ license }) => license))].sort(inOrder);
  const parts = licences.map((licence) => {
    const packages = used
      .filter(({ license }) => license === licence)
      .map(({ name, version = "" }) => `  ${name} ${version}`);
    return `\n${licence}\n${[...new Set(packages)].sort(inOrder).join("\n")}\n`;
  });
  return HEAD + parts.join("");
}
