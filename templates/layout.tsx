import type { ComponentChildren } from "preact";
import { dayMonthYear, weekdayDayMonth } from "../build/model/calendar.ts";
import { hasReports } from "./contents.ts";
import { FurtherNavigation, MainNavigation } from "./navigation.tsx";
import { ADDRESS, type Sheet } from "./sheet.ts";

/** Only what lies beside the page is loaded or run. */
const CONTENT_POLICY =
  "default-src 'self'; style-src 'self'; script-src 'self'; object-src 'none'; base-uri 'self'; form-action 'none'";

/** Pages on which a feed reader is told of the feed. */
const FEED_PAGES = /^(index\.html$|reports\/)/;

export interface PageProps {
  readonly sheet: Sheet;
  readonly title: string;
  /** One or two sentences, for search and link previews. */
  readonly description: string;
  /** Kept out of search engines. */
  readonly unlisted?: boolean;
  /** Address of a script of the page's own. */
  readonly script?: string;
  readonly children: ComponentChildren;
}

/** What a link to the page looks like elsewhere; such a preview needs the page's full address. */
function LinkPreview({
  sheet,
  title,
  description,
  baseUrl,
}: Omit<PageProps, "children"> & { baseUrl: string }) {
  const url = new URL(encodeURI(sheet.address), baseUrl).href;
  return (
    <>
      <link rel="canonical" href={url} />
      <meta property="og:type" content="website" />
      <meta property="og:site_name" content={sheet.guide.club.name} />
      <meta property="og:title" content={title} />
      <meta property="og:description" content={description} />
      <meta property="og:url" content={url} />
    </>
  );
}

function Head({ sheet, title, description, unlisted = false, script }: Omit<PageProps, "children">) {
  const { guide, address, to } = sheet;
  const fullTitle = title === guide.club.name ? title : `${title} – ${guide.club.name}`;
  const { baseUrl } = guide;
  return (
    <head>
      <meta charset="utf-8" />
      <meta http-equiv="Content-Security-Policy" content={CONTENT_POLICY} />
      <title>{fullTitle}</title>
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <meta name="description" content={description} />
      <meta name="color-scheme" content="light dark" />
      {unlisted ? <meta name="robots" content="noindex" /> : null}
      {address === ADDRESS.notFound && baseUrl !== null ? <base href={new URL(baseUrl).pathname} /> : null}
      {baseUrl === null ? null : (
        <>
          <link
            rel="preload"
            href={to(ADDRESS.textFont)}
            as="font"
            type="font/woff2"
            crossorigin="anonymous"
          />
          {unlisted ? null : <LinkPreview {...{ sheet, title, description, baseUrl }} />}
        </>
      )}
      {hasReports(guide) && FEED_PAGES.test(address) ? (
        <link rel="alternate" type="application/atom+xml" title="Reports" href={to(ADDRESS.reportsFeed)} />
      ) : null}
      <link rel="stylesheet" href={to(ADDRESS.styles)} />
      <link rel="icon" href={to(ADDRESS.icon)} type="image/svg+xml" />
      <script src={to(ADDRESS.glare)} defer />
      {script === undefined ? null : <script src={to(script)} defer />}
    </head>
  );
}

/** Every page: what it belongs to and as of when, the way around, the page itself, and where it comes from. */
export function Page({ children, ...page }: PageProps) {
  const { sheet } = page;
  const { guide, to } = sheet;
  return (
    <html lang="en">
      <Head {...page} />
      <body>
        <a class="skip" href="#main">
          Skip to the page
        </a>
        <header>
          <div class="masthead">
            <p class="club">
              <a href={to(ADDRESS.board)}>{guide.club.name}</a>
            </p>
            <p class="as-of">
              As of <strong>{weekdayDayMonth(guide.asOf)}</strong>, season {guide.season}
            </p>
            <label class="glare">
              <input type="checkbox" id="glare" /> Sun glare
            </label>
            <MainNavigation sheet={sheet} />
          </div>
          {guide.club.notice === null ? null : <p class="notice">{guide.club.notice}</p>}
        </header>
        <main id="main">{children}</main>
        <footer>
          <FurtherNavigation sheet={sheet} />
          <p>
            Worked out as of {dayMonthYear(guide.asOf)} by {guide.program.name} {guide.program.version}. A
            forecast is a chance, not a promise, and says nothing about safe ice.{" "}
            <a href={to(ADDRESS.data)}>The same as data</a>.
          </p>
        </footer>
      </body>
    </html>
  );
}
