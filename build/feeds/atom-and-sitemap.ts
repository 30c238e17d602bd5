import { createHash } from "node:crypto";
import path from "node:path";
import { create } from "xmlbuilder2";
import type { Guide } from "../guide/guide-schema.ts";
import { type ListedReport, listReports } from "../guide/report-seasons.ts";
import { reportSentences } from "../guide/report-words.ts";
import { ADDRESS } from "../model/addresses.ts";
import { type CalendarDate, dayMonthYear } from "../model/calendar.ts";

/** Four bits of version 5 and two of variant lie over the digest. */
const VERSION_BYTE = 6;
const VARIANT_BYTE = 8;

/**
 * The UUID that a name always has within a namespace: version 5, from SHA-1.
 * @param namespace a UUID with its hyphens
 * @source RFC 9562, section 5.5
 */
export function uuidV5(namespace: string, name: string): string {
  const bytes = createHash("sha1")
    .update(Buffer.from(namespace.replaceAll("-", ""), "hex"))
    .update(name, "utf8")
    .digest()
    .subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(VERSION_BYTE) & 0x0f) | 0x50, VERSION_BYTE);
  bytes.writeUInt8((bytes.readUInt8(VARIANT_BYTE) & 0x3f) | 0x80, VARIANT_BYTE);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

const ATOM_NAMESPACE = "http://www.w3.org/2005/Atom";
/** Stands for a character that no XML 1.0 file may hold. */
const NO_CHARACTER = "\ufffd";
/** Drawn once by lot for the names of this program. */
const NAMES = "5fd02789-999b-4538-b6f1-d7d580e92918";
/** A reader asks for what is new; the rest stands on the pages. */
const MOST_ENTRIES = 100;

const FOLDER = path.posix.dirname(ADDRESS.reportsFeed);

/** Reports name a day and no hour. */
const instant = (date: CalendarDate): string => `${date}T00:00:00Z`;

/**
 * An id that is the same on every build, wherever the guide is published: a club may have no domain to make a tag: URI of, and may
 * move. It changes with the club's name.
 */
const idOf = ({ club }: Guide, name: string): string => `urn:uuid:${uuidV5(NAMES, `${club.name}\n${name}`)}`;

/**
 * Where a file of the guide is. Without the guide's address relative to the feed itself, which RFC 4287 allows: it resolves
 * against the address the feed came from.
 */
const hrefOf = ({ baseUrl }: Guide, address: string): string =>
  baseUrl === null ? path.posix.relative(FOLDER, address) : new URL(address, baseUrl).href;

const titleOf = ({ lake, report }: ListedReport): string => `${lake.name}, ${dayMonthYear(report.date)}`;

/**
 * The newest reports as an Atom feed (RFC 4287), dated by the days they speak of; undefined for a guide without reports.
 */
export function reportsFeed(guide: Guide): string | undefined {
  const reports = listReports(guide.lakes).slice(0, MOST_ENTRIES);
  const [newest] = reports;
  if (newest === undefined) return undefined;
  const feed = create({ version: "1.0", encoding: "UTF-8", invalidCharReplacement: NO_CHARACTER }).ele(
    ATOM_NAMESPACE,
    "feed",
    { "xml:lang": "en" },
  );
  feed.ele("id").txt(idOf(guide, "reports"));
  feed.ele("title").txt(`${guide.club.name}: reports`);
  if (guide.club.notice !== null) feed.ele("subtitle").txt(guide.club.notice);
  feed.ele("updated").txt(instant(newest.report.date));
  feed.ele("author").ele("name").txt(guide.club.name);
  feed.ele("generator", { version: guide.program.version }).txt(guide.program.name);
  feed.ele("link", { rel: "self", type: "application/atom+xml", href: hrefOf(guide, ADDRESS.reportsFeed) });
  feed.ele("link", { rel: "alternate", type: "text/html", href: hrefOf(guide, ADDRESS.reports) });
  for (const one of reports) {
    const entry = feed.ele("entry");
    const href = `${hrefOf(guide, ADDRESS.reportSeason(one.season))}#${one.id}`;
    entry.ele("id").txt(idOf(guide, one.id));
    entry.ele("title").txt(titleOf(one));
    entry.ele("updated").txt(instant(one.report.date));
    entry.ele("link", { rel: "alternate", type: "text/html", href });
    entry
      .ele("content", { type: "text" })
      .txt(reportSentences(one.report, guide.club.units).join(" ") || titleOf(one));
  }
  return `${feed.end({ prettyPrint: true })}\n`;
}

const NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9";

/**
 * A site map for search engines.
 * @param urls full addresses
 * @source the sitemap protocol, sitemaps.org
 */
export function sitemapXml(urls: readonly string[]): string {
  const root = create({ version: "1.0", encoding: "UTF-8" }).ele(NAMESPACE, "urlset");
  for (const url of urls) root.ele("url").ele("loc").txt(url);
  return `${root.end({ prettyPrint: true })}\n`;
}
