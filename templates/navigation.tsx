import { hasRigs } from "./contents.ts";
import { ADDRESS, type Sheet, type SheetGuide } from "./sheet.ts";

interface Place {
  readonly name: string;
  readonly address: string;
}

/** What is needed on the way to the water. */
function mainPlaces(guide: SheetGuide): Place[] {
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

const furtherPlaces = ({ chapters, pages }: SheetGuide): Place[] => [
  ...pages.map(({ title, slug }) => ({ name: title, address: ADDRESS.clubPage(slug) })),
  ...chapters
    .filter(({ slug }) => slug !== "cautions")
    .map(({ title, slug }) => ({ name: title, address: ADDRESS.chapter(slug) })),
];

function Places({ places, sheet, label }: { places: readonly Place[]; sheet: Sheet; label: string }) {
  if (places.length === 0) return null;
  return (
    <nav aria-label={label}>
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

export const MainNavigation = ({ sheet }: { sheet: Sheet }) => (
  <Places places={mainPlaces(sheet.guide)} sheet={sheet} label="Guide" />
);

export const FurtherNavigation = ({ sheet }: { sheet: Sheet }) => (
  <Places places={furtherPlaces(sheet.guide)} sheet={sheet} label="About this guide" />
);
