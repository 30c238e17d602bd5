import type { Guide, GuidePage, GuideTrip } from "./guide-schema.ts";

// What a guide holds decides which pages and cards it has and which links lead there.

/** Trips that everybody may see. */
export const listedTrips = ({ trips }: Pick<Guide, "trips">): GuideTrip[] =>
  trips.filter(({ unlisted }) => !unlisted);

/** True where there is anything to say about rigs. */
export const hasRigs = ({ rigs }: Pick<Guide, "rigs">): boolean =>
  rigs.tippet.length + rigs.leaders.length + rigs.lines.length > 0;

/** True where somebody reported anything. */
export const hasReports = ({ reportSeasons }: Pick<Guide, "reportSeasons">): boolean =>
  reportSeasons.length > 0;

/** True where the guide has a standing chapter of that name, such as "methods". */
export const hasChapter = (
  { chapters }: { readonly chapters: readonly Pick<GuidePage, "slug">[] },
  slug: string,
): boolean => chapters.some((chapter) => chapter.slug === slug);
