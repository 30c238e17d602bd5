import type { ComponentChildren } from "preact";
import { OPEN_GRAPH_IMAGE } from "../../build/draw/strip/open-graph-image.ts";
import { hasRigs } from "../../build/guide/guide-contents.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { dayMonthYear, weekdayDayMonthYear } from "../../build/model/calendar.ts";
import type { PageContext, PageGuide } from "./page-context.ts";
import { Harmless } from "./parts.tsx";

interface Place {
  readonly name: string;
  readonly address: string;
}

/** What is needed on the way to the water. */
function mainPlaces(guide: PageGuide): Place[] {
  return [
    { name: "Season", address: ADDRESS.board },
    { name: "When", address: ADDRESS.when },
    ...(guide.hasTrips ? [{ name: "Trips", address: ADDRESS.trips }] : []),
    ...(guide.hasPatterns ? [{ name: "Patterns", address: ADDRESS.patterns }] : []),
    ...(hasRigs(guide) ? [{ name: "Rigs", address: ADDRESS.rigs }] : []),
    ...(guide.hasReports ? [{ name: "Reports", address: ADDRESS.reports }] : []),
    ...guide.chapters
      .filter(({ slug }) => slug === "cautions")
      .map(({ title, slug }) => ({ name: title, address: ADDRESS.chapter(slug) })),
    { name: "Search", address: ADDRESS.search },
  ];
}

const furtherPlaces = ({ chapters, pages }: PageGuide): Place[] => [
  ...pages.map(({ title, slug }) => ({ name: title, address: ADDRESS.clubPage(slug) })),
  ...chapters
    .filter(({ slug }) => slug !== "cautions")
    .map(({ title, slug }) => ({ name: title, address: ADDRESS.chapter(slug) })),
];

function Places({
  places,
  sheet,
  label,
  kind,
}: {
  places: readonly Place[];
  sheet: PageContext;
  label: string;
  kind?: string;
}) {
  if (places.length === 0) return null;
  return (
    <nav aria-label={label} class={kind}>
      <ul>
        {places.map(({ name, address }) => (
          <li>
            <a href={sheet.to(address)} {...(address === sheet.address ? { "aria-current": "page" } : {})}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

const MainNavigation = ({ sheet }: { sheet: PageContext }) => (
  <Places places={mainPlaces(sheet.guide)} sheet={sheet} label="Guide" />
);

const FurtherNavigation = ({ sheet, label }: { sheet: PageContext; label: string }) => (
  <Places places={furtherPlaces(sheet.guide)} sheet={sheet} label={label} kind="further" />
);

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

interface PageProps {
  readonly sheet: PageContext;
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
      <meta property="og:image:width" content={String(OPEN_GRAPH_IMAGE.width)} />
      <meta property="og:image:height" content={String(OPEN_GRAPH_IMAGE.height)} />
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

/** A part that a club may write anew, as `templates/_includes/NAME.njk` in its folder. */
function Partial({
  name,
  sheet,
  children,
}: {
  name: string;
  sheet: PageContext;
  children: ComponentChildren;
}) {
  const own = sheet.partials?.[name];
  return own === undefined ? children : <Harmless class={name} html={own} />;
}

/** The day that the guide speaks from; in an example it is every reader's today. */
const AsOf = ({ sheet: { guide } }: { sheet: PageContext }) => {
  const day = <strong>{weekdayDayMonthYear(guide.asOf)}</strong>;
  return guide.club.example ? (
    <p class="as-of example">
      <strong>Example.</strong> Club, lakes and reports are invented; the clock stands on {day}.
    </p>
  ) : (
    <p class="as-of" data-as-of={guide.asOf}>
      As of {day}
    </p>
  );
};

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
            <Partial name="masthead" sheet={sheet}>
              <p class="club">
                <a href={to(ADDRESS.board)}>{guide.club.name}</a>
              </p>
            </Partial>
            <label class="glare">
              <input type="checkbox" id="glare" /> <span>Sun</span> glare
            </label>
            <details class="menu">
              <summary>Guide</summary>
              <MainNavigation sheet={sheet} />
              <FurtherNavigation sheet={sheet} label="Further pages" />
            </details>
          </div>
          <AsOf sheet={sheet} />
          {guide.club.notice === null ? null : <p class="notice">{guide.club.notice}</p>}
        </header>
        <main id="main">{children}</main>
        <footer>
          <Partial name="footer" sheet={sheet}>
            <FurtherNavigation sheet={sheet} label="About this guide" />
          </Partial>
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
