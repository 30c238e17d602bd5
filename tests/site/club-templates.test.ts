import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { unzipSync } from "fflate";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { writeData } from "../../build/feeds/write-data.ts";
import { writeOfflineListAndSitemap } from "../../build/site/offline-and-sitemap.ts";
import { writeSite } from "../../build/site/site.ts";
import { zipGuide } from "../../build/site/zip.ts";
import { manualPages } from "../commands/manual.ts";
import { siteGuide } from "./site-fixture.ts";

vi.setConfig({ testTimeout: 180_000 });

let work: string;
const guide = siteGuide();
const read = (address: string): Promise<string> => readFile(path.join(work, "site", address), "utf8");

async function write(files: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(work, "club", name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}
const build = () => writeSite(guide, path.join(work, "site"), { clubDir: path.join(work, "club") });

beforeEach(async () => {
  work = await mkdtemp(path.join(tmpdir(), "lake-season-club-"));
});
afterEach(() => rm(work, { recursive: true, force: true }));

test("the manual's example: a page added, a part of every page written anew, a page replaced, a file copied", async () => {
  const manual = (await manualPages()).find(({ name }) => name === "change-pages.md");
  const files = (manual?.blocks ?? []).flatMap(({ about, text }) =>
    about.startsWith("file=") ? [[about.slice("file=".length), text] as const] : [],
  );
  await write({ ...Object.fromEntries(files), "static/launch.txt": "The ramp is steep.\n" });
  await write({ "static/.hidden": "not for readers\n", "outside.txt": "not for readers\n" });
  await symlink(path.join(work, "club/outside.txt"), path.join(work, "club/static/link.txt"));
  const { outputs, problems } = await build();
  expect(problems).toEqual([]);

  const boats = await read("boats/index.html");
  expect(boats).toContain("<h1>Club boats</h1>");
  expect(boats).toContain(`<a href="../lakes/ember/index.html">Ember Lake</a>`);
  expect(boats).toContain("default-src 'none'");
  expect(await read("when/index.html")).toContain("Ask at the club evening");
  for (const [page, href] of [
    ["lakes/ember/index.html", "../../boats/index.html"],
    ["boats/index.html", "../boats/index.html"],
    ["404.html", "boats/index.html"],
  ] as const) {
    const footer = (await read(page)).split("<footer>")[1];
    expect(footer, page).toContain(`<a href="${href}">Club boats</a>`);
    expect(footer, page).toContain("says nothing about safe ice");
  }
  expect(await read("static/launch.txt")).toBe("The ramp is steep.\n");
  const added = outputs
    .map(({ address }) => address)
    .filter((address) => /^(static|boats|when)/.test(address));
  expect(added.sort()).toEqual(["boats/index.html", "static/launch.txt", "when/index.html"]);

  const site = path.join(work, "site");
  await writeData(guide, {}, site);
  await writeOfflineListAndSitemap(guide, outputs, site);
  expect(await read("offline-files.js")).toMatch(/"boats\/index\.html".*"static\/launch\.txt"/);
  await zipGuide(guide, site, path.join(work, "guide.zip"));
  const packed = Object.keys(unzipSync(await readFile(path.join(work, "guide.zip"))));
  expect(packed).toEqual(expect.arrayContaining(["guide/boats/index.html", "guide/static/launch.txt"]));
});

test("Markdown runs no template code and no HTML, and nobody comes upon an unlisted trip", async () => {
  await write({
    "templates/notes.md": "---\nlayout: page\ntitle: Notes\n---\n<b>x</b> {{ guide.season }} {% if true %}\n",
    "templates/names.liquid":
      "---\npermalink: names.txt\n---\n{% for trip in guide.trips %}{{ trip.name }}\n{% endfor %}{{ markup }}",
    "templates/templates.json": "{}",
    "templates/_data/markup.json": '"<i>"',
  });
  const { problems } = await build();
  expect(problems).toEqual([]);
  expect(await read("notes/index.html")).toContain(
    "<p>&lt;b&gt;x&lt;/b&gt; {{ guide.season }} {% if true %}</p>",
  );
  const names = await read("names.txt");
  expect(names).toContain("June weekend");
  expect(names).not.toContain("Quiet trip");
  expect(names).toContain("&lt;i&gt;");
});

test.each([
  [
    "an address of the program's",
    { "templates/mine.njk": "---\npermalink: index.html\n---\n" },
    "index.html is made",
  ],
  ["a mistake", { "templates/bad.njk": "{% for lake in %}" }, "bad.njk"],
  ["a mistake in a part", { "templates/_includes/footer.njk": "{% for lake in %}" }, "footer.njk"],
  ["a layout that is not there", { "templates/a.njk": "---\nlayout: none\n---\n" }, "none"],
])("%s is a problem of the club's own file", async (_, files, message) => {
  await write(files);
  const { problems } = await build();
  expect(problems.map(({ severity }) => severity)).toEqual(["error"]);
  expect(`${problems[0]?.file} ${problems[0]?.message}`).toContain(message);
});
