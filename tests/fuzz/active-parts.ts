import { type HtmlElement, Parser, StaticConfigLoader } from "html-validate";

const config = await new StaticConfigLoader({ root: true }).getConfigFor("page.html");

/** Elements that load, run, style or lead elsewhere by themselves. */
const ACTIVE = new Set(
  "script style link meta base iframe frame object embed applet form input button img image video audio source track foreignobject animate set use portal template".split(
    " ",
  ),
);
/** Attributes that are read, not run: a club's text may stand in them. */
const isText = (key: string): boolean =>
  /^(data-|aria-)/.test(key) ||
  ["id", "for", "name", "value", "title", "alt", "label", "content"].includes(key);
const URL_ATTRIBUTES = new Set(
  "href src srcset action formaction data poster xlink:href background ping cite".split(" "),
);
/** What stays of an address when its relative way is left out. */
const shortened = (url: string): string => url.replace(/^(\.\.\/)+/, "");
const schemeOf = (url: string): string =>
  // Browsers skip controls and blanks within a scheme (WHATWG URL, 4.4).
  /^([a-z][a-z0-9+.-]*):/i.exec(url.replace(/[\p{Cc} ]/gu, ""))?.[1]?.toLowerCase() ?? "";

function partsOf(element: HtmlElement): string[] {
  const name = element.tagName.toLowerCase();
  const attributes = element.attributes.map(
    ({ key, value }) => [key.toLowerCase(), String(value ?? "")] as const,
  );
  const isActive =
    ACTIVE.has(name) &&
    !(name === "meta" && attributes.some(([key]) => key === "name" || key === "property"));
  const shown = attributes
    .map(([key, value]) => (isText(key) && name !== "meta" ? key : `${key}=${shortened(value)}`))
    .sort();
  return [
    ...(isActive
      ? [`<${name} ${shown.join(" ")}>${["script", "style"].includes(name) ? element.textContent : ""}`]
      : []),
    ...attributes.flatMap(([key, value]) => [
      ...(key.startsWith("on") ? [`${key}=`] : []),
      ...(key === "style" ? [`style=${value}`] : []),
      ...(URL_ATTRIBUTES.has(key) && schemeOf(value) !== "" ? [`${key}: ${schemeOf(value)}`] : []),
    ]),
  ];
}

/** Everything in a page that runs, loads, styles or leads out of it, one line each. @throws when it is no HTML */
export function activeParts(html: string): Set<string> {
  const parser = new Parser(config);
  const parts = new Set<string>();
  for (const element of parser.parseHtml(html).querySelectorAll("*"))
    for (const part of partsOf(element)) parts.add(part);
  return parts;
}

/** Where a club's own links may lead. */
export const HARMLESS = new Set(["href: http", "href: https", "href: mailto", "href: tel", "href: ftp"]);
