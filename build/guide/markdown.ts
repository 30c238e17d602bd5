import MarkdownIt from "markdown-it";

/**
 * Club prose to HTML that can do no harm: raw HTML is shown as text, and a link leads to a page, a letter or a telephone
 * or nowhere. Pictures are left out: a guide holds nothing from elsewhere.
 */
const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false }).disable("image");

/** A scheme that browsers open without doing anything by themselves; or none, within the guide. RFC 3986, 3.1. */
markdown.validateLink = (url) => {
  const [, scheme] = /^\s*([a-z][a-z0-9+.-]*):/i.exec(url) ?? [];
  return scheme === undefined || ["http", "https", "mailto", "tel", "geo"].includes(scheme.toLowerCase());
};

/** Headings go `deeper` than written, and never as high as the page's own title. */
markdown.core.ruler.push("set-headings", (state) => {
  const { deeper } = state.env;
  for (const token of state.tokens)
    if (token.type === "heading_open" || token.type === "heading_close")
      token.tag = `h${Math.min(6, Math.max(2, Number(token.tag.slice(1)) + Number(deeper)))}`;
});

/** Renders Markdown to harmless HTML. A first-level heading becomes `h2`. */
export const renderMarkdown = (text: string): string => markdown.render(text, { deeper: 1 }).trim();

/** Renders a chapter without its first-level heading, which the page shows as its title; the next level is `h2`. */
export const renderChapter = (text: string): string =>
  markdown.render(text.replace(/^\s*# .*\n?/, ""), { deeper: 0 }).trim();
