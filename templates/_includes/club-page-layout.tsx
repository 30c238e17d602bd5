import { renderToString } from "preact-render-to-string";
import { Page } from "./layout.tsx";
import { type PageGuide, pageContextAt } from "./page-context.ts";
import { Harmless } from "./parts.tsx";

/** What the layout `page` sees of Eleventy's data. */
interface LayoutData {
  readonly page: { readonly url: string };
  readonly title?: unknown;
  readonly description?: unknown;
  readonly content?: unknown;
}

const textOr = (value: unknown, otherwise: string): string =>
  typeof value === "string" && value !== "" ? value : otherwise;

/** The layout `page` for a club's own templates: the guide's head, masthead and foot around `content`, below its `title`. */
export function clubPageText(
  data: LayoutData,
  guide: PageGuide,
  partials: Readonly<Record<string, string>>,
): string {
  const address = data.page.url.slice(1).replace(/\/$/, "/index.html");
  const title = textOr(data.title, guide.club.name);
  const page = (
    <Page
      sheet={{ ...pageContextAt(guide, decodeURI(address)), partials }}
      title={title}
      description={textOr(data.description, `${title}: ${guide.club.name}.`)}
    >
      <h1>{title}</h1>
      <Harmless class="prose" html={textOr(data.content, "")} />
    </Page>
  );
  return `<!DOCTYPE html>\n${renderToString(page)}\n`;
}
