import { create } from "xmlbuilder2";

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
