import { describe, expect, test } from "vitest";
import { renderChapter, renderMarkdown } from "../../build/guide/markdown.ts";

describe("a club's prose cannot do harm", () => {
  test.each([
    ["a script", "Hello <script>alert(1)</script>", /<script/i],
    ["an event handler", '<p onclick="alert(1)">x</p>', /<p onclick/i],
    ["a style", "<style>body{display:none}</style>", /<style/i],
    ["a javascript: link", "[go](javascript:alert(1))", /href/i],
    ["a javascript: link in disguise", "[go](JaVaScRiPt&colon;alert(1))", /href="javascript/i],
    ["a data: link", "[go](data:text/html;base64,PHNjcmlwdD4=)", /href/i],
    ["an intent: link", "[go](intent://scan/#Intent;scheme=x;end)", /href/i],
    ["a blob: link", "[go](blob:https://elsewhere.example/1)", /href/i],
    ["a picture from elsewhere", "![x](https://elsewhere.example/x.png)", /<img/i],
  ])("%s is text, not markup", (_, text, harmful) => {
    expect(renderMarkdown(text)).not.toMatch(harmful);
  });

  test("what is harmless stays: emphasis, lists, links", () => {
    const html = renderMarkdown(
      "*Slow* down:\n\n- [sign](https://agency.example/)\n- [call](tel:+15550100)\n",
    );
    expect(html).toContain("<em>Slow</em>");
    expect(html).toContain('<li><a href="https://agency.example/">sign</a></li>');
    expect(html).toContain('<a href="tel:+15550100">');
  });
});

test("headings start under the page's own title", () => {
  expect(renderMarkdown("# One\n\n###### Six")).toBe("<h2>One</h2>\n<h6>Six</h6>");
});

test("a chapter's title is the page's, not part of its text", () => {
  expect(renderChapter("# Cautions\n\nStay off.\n")).toBe("<p>Stay off.</p>");
});

test("a chapter's own headings follow its title without a gap, and none is a second title", () => {
  expect(renderChapter("# Cautions\n\n## Ice\n\n### Thin\n\n# Water\n")).toBe(
    "<h2>Ice</h2>\n<h3>Thin</h3>\n<h2>Water</h2>",
  );
});
