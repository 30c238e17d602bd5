import { readFile } from "node:fs/promises";
import path from "node:path";
import { ADDRESS } from "../../templates/sheet.ts";

/** A file that a reader can come to. */
export interface ListedFile {
  /** Inside the guide, such as "lakes/ember/index.html". */
  readonly address: string;
  readonly bytes: Buffer;
}

/** What a page, and what a style sheet, says it needs or leads to. */
const LINKS: Readonly<Record<string, RegExp>> = {
  ".html": /\s(?:href|src)="([^"#?]+)/g,
  ".css": /url\("([^"]+)"\)/g,
};
const ELSEWHERE = /^([a-z][a-z0-9+.-]*:|\/)/i;

function linksOf({ address, bytes }: ListedFile): string[] {
  const links = LINKS[path.posix.extname(address)];
  if (links === undefined) return [];
  return [...bytes.toString("utf8").matchAll(links)]
    .map(([, link = ""]) => link.replaceAll("&amp;", "&"))
    .filter((link) => !ELSEWHERE.test(link))
    .map((link) => path.posix.join(path.posix.dirname(address), decodeURI(link)));
}

const readIfThere = (file: string): Promise<Buffer | undefined> => readFile(file).catch(() => undefined);

/**
 * Every file that links lead to from the board and from the page for missing addresses, in the order of their
 * addresses. What only an unlisted page leads to is not among them: whoever was not given its address gets none of it.
 * @param dir a guide written whole
 */
export async function listedFiles(dir: string): Promise<ListedFile[]> {
  const found = new Map<string, ListedFile>();
  const addresses = new Set<string>([ADDRESS.board, ADDRESS.notFound]);
  for (const address of addresses) {
    const bytes = await readIfThere(path.join(dir, address));
    if (bytes === undefined) continue;
    const file = { address, bytes };
    found.set(address, file);
    for (const link of linksOf(file)) addresses.add(link);
  }
  return [...found.values()].sort((a, b) => (a.address < b.address ? -1 : 1));
}
