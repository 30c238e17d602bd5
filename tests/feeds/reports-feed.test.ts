import { describe, expect, test } from "vitest";
import { reportsFeed, uuidV5 } from "../../build/feeds/atom-and-sitemap.ts";
import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { buildSite, pageOf } from "../site/built-site.ts";
import { bareGuide, siteGuide } from "../site/site-fixture.ts";
import { parseXml, type XmlNode } from "../xml.ts";

/**
 * RFC 4287, appendix B, RELAX NG: which elements may stand in which, and how many ("1", "?" or "*"). Transcribed from memory of its
 * text; extension elements are left out, as the feed has none.
 */
const CONTENT: Readonly<Record<string, Readonly<Record<string, "1" | "?" | "*">>>> = {
  feed: {
    ...{ author: "*", category: "*", contributor: "*", generator: "?", icon: "?", id: "1", link: "*" },
    ...{ logo: "?", rights: "?", subtitle: "?", title: "1", updated: "1", entry: "*" },
  },
  entry: {
    ...{ author: "*", category: "*", content: "?", contributor: "*", id: "1", link: "*", published: "?" },
    ...{ rights: "?", source: "?", summary: "?", title: "1", updated: "1" },
  },
  author: { name: "1", uri: "?", email: "?" },
};
const COMMON = ["base", "lang", "xml:base", "xml:lang", "xmlns"];
const ATTRIBUTES: Readonly<Record<string, readonly string[]>> = {
  link: ["href", "rel", "type", "hreflang", "title", "length"],
  generator: ["uri", "version"],
  content: ["type", "src"],
  title: ["type"],
  subtitle: ["type"],
};
/** RFC 3339, section 5.6, with a capital T and Z as RFC 4287, section 3.3 asks. */
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/;

const named = ({ children }: XmlNode, name: string): XmlNode[] =>
  children.filter((child) => child.name === name);
const textOf = (node: XmlNode, name: string): string => named(node, name)[0]?.text ?? "";
const linkOf = (node: XmlNode, rel: string): string =>
  named(node, "link")
    .find(({ attributes }) => attributes.get("rel") === rel)
    ?.attributes.get("href") ?? "";

function schemaFaults(node: XmlNode): string[] {
  const allowed = CONTENT[node.name] ?? {};
  const [wanted, known] = [Object.entries(allowed), [...COMMON, ...(ATTRIBUTES[node.name] ?? [])]];
  return [
    ...(node.space === "http://www.w3.org/2005/Atom" ? [] : [`${node.name} lies in “${node.space}”`]),
    ...[...node.attributes.keys()]
      .filter((name) => !known.includes(name))
      .map((name) => `${node.name} @${name}`),
    ...node.children.filter(({ name }) => !(name in allowed)).map(({ name }) => `${name} in ${node.name}`),
    ...wanted.flatMap(([name, times]) => {
      const count = named(node, name).length;
      const isRight = times === "*" || count === 1 || (times === "?" && count === 0);
      return isRight ? [] : [`${count} ${name} in ${node.name}`];
    }),
    ...(node.name === "updated" && !INSTANT.test(node.text) ? [`updated ${node.text}`] : []),
    ...(node.name === "link" && !node.attributes.has("href") ? ["link without href"] : []),
    ...node.children.flatMap(schemaFaults),
  ];
}

/** RFC 4287, sections 4.1.1 and 4.1.2: what the schema cannot say. */
function proseFaults(feed: XmlNode): string[] {
  const entries = named(feed, "entry");
  const ids = [feed, ...entries].map((node) => textOf(node, "id"));
  const authored =
    named(feed, "author").length > 0 || entries.every((one) => named(one, "author").length > 0);
  return [
    ...(authored ? [] : ["an entry without an author"]),
    ...(new Set(ids).size === ids.length ? [] : ["an id twice"]),
    ...ids.filter((id) => !/^[a-z][a-z0-9+.-]*:\S+$/i.test(id)).map((id) => `${id} is no absolute IRI`),
    ...[feed, ...entries].flatMap((node) => {
      const kinds = named(node, "link").map(({ attributes }) =>
        ["rel", "type", "hreflang"].map((name) => attributes.get(name)).join(" "),
      );
      return new Set(kinds).size === kinds.length ? [] : ["two alternates of one kind"];
    }),
    ...entries
      .filter((entry) => named(entry, "content").length === 0 && linkOf(entry, "alternate") === "")
      .map((entry) => `${textOf(entry, "id")} leads nowhere`),
  ];
}

function feedOf(guide: Guide): XmlNode {
  const xml = reportsFeed(guide);
  if (xml === undefined) throw new Error("no feed");
  return parseXml(xml);
}

const changed = (change: (report: GuideLake["reports"][number]) => Partial<GuideLake["reports"][number]>) => {
  const guide = siteGuide();
  return {
    ...guide,
    lakes: guide.lakes.map((lake) => ({
      ...lake,
      reports: lake.reports.map((report) => ({ ...report, ...change(report) })),
    })),
  };
};

describe("the feed of reports, read back by another library", () => {
  const guide = siteGuide();
  const feed = feedOf(guide);
  const entries = named(feed, "entry");

  test("is built as RFC 4287 asks", () => {
    expect(feed.name).toBe("feed");
    expect(schemaFaults(feed)).toEqual([]);
    expect(proseFaults(feed)).toEqual([]);
  });

  test("holds each report once, newest first, dated by its own day and by no clock", () => {
    const dates = guide.lakes.flatMap(({ reports }) => reports.map(({ date }) => date));
    const expected = dates
      .toSorted()
      .toReversed()
      .map((date) => `${date}T00:00:00Z`);
    expect(entries.map((entry) => textOf(entry, "updated"))).toEqual(expected);
    expect(textOf(feed, "updated")).toBe(expected[0]);
  });

  test("tells seen, catch, throats and notes as plain text, days without a fish too", () => {
    const told = entries.map((entry) => textOf(entry, "content"));
    expect(told[1]).toBe(
      "Ice off, water 40 °F, clear to 7 ft, oxygen 9.8 mg/L. 5 fish in 8 rod-hours: 5 on Marl Scud (indicator still), none on Ash Leech. 2 throats: scud 12; 1 empty. Open along the south shore.",
    );
    expect(told[2]).toContain("No fish in 4 rod-hours: none on Ash Leech (floating line).");
  });

  test("is the same on a second run; its ids are the same at any address, and other for another club", () => {
    expect(reportsFeed(siteGuide())).toBe(reportsFeed(guide));
    const idsOf = (one: Guide): string[] => {
      const root = feedOf(one);
      return [root, ...named(root, "entry")].map((node) => textOf(node, "id"));
    };
    expect(idsOf({ ...guide, baseUrl: "https://elsewhere.example/" })).toEqual(idsOf(guide));
    const other = idsOf({ ...guide, club: { ...guide.club, name: "Other Rods" } });
    expect(other.filter((id) => idsOf(guide).includes(id))).toEqual([]);
  });

  test("two reports of one lake and day have ids of their own", () => {
    const [first] = guide.lakes.flatMap(({ reports }) => reports);
    const same = feedOf(changed(() => ({ date: first?.date ?? guide.asOf })));
    expect(named(same, "entry")).toHaveLength(entries.length);
    expect(proseFaults(same)).toEqual([]);
  });

  test("what looks like markup stays text, and what XML 1.0 forbids is replaced", () => {
    const notes = `<b>"5" & up</b> ]]> \u0001`;
    const content = textOf(named(feedOf(changed(() => ({ notes }))), "entry")[0] ?? feed, "content");
    expect(content).toContain(`<b>"5" & up</b> ]]> \ufffd`);
  });

  test("a guide without reports has no feed", () => {
    expect(reportsFeed(bareGuide())).toBeUndefined();
  });
});

describe.each([null, "https://guide.example/spring/"])("links of the feed of a guide at %s", (baseUrl) => {
  test("lead to the report on its season's page", async () => {
    const guide = siteGuide({ baseUrl });
    const base = baseUrl ?? "https://any.example/";
    const feed = feedOf(guide);
    const site = await buildSite(guide);
    try {
      const self = new URL(linkOf(feed, "self"), `${base}reports/feed.xml`);
      expect(self.href).toBe(`${base}reports/feed.xml`);
      for (const node of [feed, ...named(feed, "entry")]) {
        const href = linkOf(node, "alternate");
        if (baseUrl !== null) expect(href.startsWith(baseUrl)).toBe(true);
        const url = new URL(href, self);
        const html = pageOf(site, url.href.slice(base.length).replace(/#.*/, ""));
        if (url.hash !== "") expect(html).toContain(`id="${url.hash.slice(1)}"`);
      }
    } finally {
      await site.remove();
    }
  });
});

// RFC 9562, appendix A.4: the DNS namespace and "www.example.com".
test("a name's UUID is the RFC's example", () => {
  expect(uuidV5("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com")).toBe(
    "2ed6657d-e927-568b-95e1-2665a8aea6a2",
  );
});
