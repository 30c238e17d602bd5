import type { ComponentChildren } from "preact";
import { LINK_PICTURE } from "../build/draw/link-picture.tsx";
import { dayMonthYear, weekdayDayMonthYear } from "../build/model/calendar.ts";
import { FurtherNavigation, MainNavigation } from "./navigation.tsx";
import { ADDRESS, type Sheet } from "./sheet.ts";

/** The guide's own files, from a server or from a disk: a file's own origin matches nothing, so 'self' alone shuts it out. */
const OWN = "'self' file:";
/** Nothing is loaded, run or asked for but the guide's own files. */
const CONTENT_POLICY = [
  "default-src 'none'",
  ...["script-src", "style-src", "img-src", "font-src"].map((kind) => `${kind} ${OWN}`),
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  `form-action ${OWN}`,
].join("; ");

/** Small scripts that every page runs; each only adds to what is there without it. */
const SCRIPTS = [ADDRESS.words, ADDRESS.today, ADDRESS.glare, ADDRESS.share, ADDRESS.offline];

/** Pages on which a feed reader is told of the feed. */
const FEED_PAGES = /^(index\.html$|reports\/)/;

export interface PageProps {
  readonly sheet: Sheet;
  readonly title: string;
  /** One or two sentences, for search and link previews. */
  readonly description: string;
  /** Kept out of search engines. */
  readonly unlisted?: boolean;
  /** Scripts of this page alone, run before those of every page. */
  readonly scripts?: readonly string[];
  /** Styles of this page alone. */
  readonly styles?: string;
  /** A lake's own page, whose link has the lake's picture; other links have the board's. */
  readonly isLake?: boolean;
  readonly children: ComponentChildren;
}

/** What a link to the page looks like elsewhere; such a preview needs the page's full address. */
function LinkPreview({
  sheet,
  title,
  description,
  isLake = false,
  baseUrl,
}: Omit<PageProps, "children"> & { baseUrl: string }) {
  const full = (address: string): string => new URL(encodeURI(address), baseUrl).href;
  const url = full(sheet.address);
  const picture = full(ADDRESS.linkPicture(isLake ? sheet.address : ADDRESS.board));
  return (
    <>
      <link rel="canonical" href={url} />
      <meta property="og:type" content="website" />
      <meta property="og:site_name" content={sheet.guide.club.name} />
      <meta property="og:title" content={title} />
      <meta property="og:description" content={description} />
      <meta property="og:url" content={url} />
      <meta property="og:image" content={picture} />
      <meta property="og:image:type" content="image/png" />
      <meta property="og:image:width" content={String(LINK_PICTURE.width)} />
      <meta property="og:image:height" content={String(LINK_PICTURE.height)} />
      <meta
        property="og:image:alt"
        content={isLake ? `The spring of ${title} as a strip` : "The springs of the first lakes as strips"}
      />
    </>
  );
}

function Head({
  sheet,
  title,
  description,
  unlisted = false,
  scripts = [],
  styles,
  isLake = false,
}: Omit<PageProps, "children">) {
  const { guide, address, to } = sheet;
  const fullTitle = title === guide.club.name ? title : `${title} – ${guide.club.name}`;
  const { baseUrl } = guide;
  const isOwnBase = address === ADDRESS.notFound && baseUrl !== null;
  return (
    <head>
      <meta charset="utf-8" />
      <meta
        http-equiv="Content-Security-Policy"
        content={isOwnBase ? `${CONTENT_POLICY}; base-uri 'self'` : `${CONTENT_POLICY}; base-uri 'none'`}
      />
      <title>{fullTitle}</title>
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <meta name="description" content={description} />
      <meta name="color-scheme" content="light dark" />
      {unlisted ? <meta name="robots" content="noindex" /> : null}
      {isOwnBase ? <base href={new URL(baseUrl).pathname} /> : null}
      {baseUrl === null ? null : (
        <>
          <link
            rel="preload"
            href={to(ADDRESS.textFont)}
            as="font"
            type="font/woff2"
            crossorigin="anonymous"
          />
          {unlisted ? null : <LinkPreview {...{ sheet, title, description, isLake, baseUrl }} />}
        </>
      )}
      {guide.hasReports && FEED_PAGES.test(address) ? (
        <link rel="alternate" type="application/atom+xml" title="Reports" href={to(ADDRESS.reportsFeed)} />
      ) : null}
      <link rel="stylesheet" href={to(ADDRESS.styles)} />
      {styles === undefined ? null : <link rel="stylesheet" href={to(styles)} />}
      <link rel="icon" href={to(ADDRESS.icon)} type="image/svg+xml" />
      <link rel="manifest" href={to(ADDRESS.manifest)} />
      {[...scripts, ...SCRIPTS].map((script) => (
        <script src={to(script)} defer />
      ))}
    </head>
  );
}

/** Every page: what it belongs to and as of when, the way around, the page itself, and where it comes from. */
export function Page({ children, ...head }: PageProps) {
  const { sheet } = head;
  const { guide, to } = sheet;
  return (
    <html lang="en">
      <Head {...head} />
      <body>
        <a class="skip" href="#main">
          Skip to the page
        </a>
        <header>
          <div class="masthead">
            <p class="club">
              <a href={to(ADDRESS.board)}>{guide.club.name}</a>
            </p>
            <p class="as-of" data-as-of={guide.asOf}>
              As of <strong>{weekdayDayMonthYear(guide.asOf)}</strong>
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
