import { HtmlValidate, StaticConfigLoader } from "html-validate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type BuiltSite, buildSite } from "./built-site.ts";
import { demoGuide } from "./demo-guide.ts";
import { bareGuide, siteGuide } from "./site-fixture.ts";

const validator = new HtmlValidate(
  new StaticConfigLoader({
    extends: ["html-validate:recommended", "html-validate:document", "html-validate:a11y"],
    rules: {
      // The page writer closes empty elements with a slash; HTML reads both the same.
      "void-style": ["error", { style: "selfclose" }],
      // Styles and script lie beside the page and change with it.
      "require-sri": ["error", { target: "crossorigin" }],
    },
  }),
);

describe.each([
  ["a guide with everything", siteGuide],
  ["a guide with places and dates alone", bareGuide],
  ["the demonstration club", demoGuide],
])("pages of %s", (_, make) => {
  let site: BuiltSite;
  beforeAll(async () => {
    site = await buildSite(await make());
  });
  afterAll(() => site.remove());

  test("are valid HTML by html-validate's recommended, document and accessibility rules", async () => {
    const faults: string[] = [];
    for (const [address, html] of site.pages) {
      const report = await validator.validateString(html, address);
      for (const { messages } of report.results)
        for (const { ruleId, message, line, column } of messages)
          faults.push(`${address}:${line}:${column} ${ruleId} ${message}`);
    }
    expect(faults).toEqual([]);
  });
});
