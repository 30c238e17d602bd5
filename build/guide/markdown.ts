import MarkdownIt from "markdown-it";

/**
 * Club prose to HTML that can do no harm: raw HTML is shown as text, and markdown-it refuses `javascript:`,
 * `vbscript:`, `file:` and `data:` links by itself. Pictures are left out: a guide holds nothing from elsewhere.
 */
const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false }).disable("image");

/** Headings start one level under the page's own. */
markdown.core.ruler.push("demote-headings", (state) => {
  for (const token of state.tokens)
    if (token.type === "heading_open" || token.type === "heading_close")
      token.tag = `h${Math.min(6, Number(token.tag.slice(1)) + 1)}`;
});

/** Renders Markdown to harmless HTML. A first-level heading becomes `h2`. */
export const renderMarkdown = (text: string): string => markdown.render(text).trim();

/** Renders a chapter without its first-level heading, which the page shows as its title. */
export const renderChapter = (text: string): string => renderMarkdown(text.replace(/^\s*# .*\n?/, ""));
