import type { Guide } from "./guide-schema.ts";

/**
 * What a page or card may see of the guide besides what it is about: what is the same everywhere, and little of it, so
 * that an edit of one lake leaves the pages of the others as they are.
 */
export type GuideFrame = Pick<
  Guide,
  "program" | "club" | "season" | "asOf" | "baseUrl" | "window" | "rigs" | "cautions"
>;

/** The frame of a guide, without the rest. */
export const guideFrame = (guide: Guide): GuideFrame => {
  const { program, club, season, asOf, baseUrl, window, rigs, cautions } = guide;
  return { program, club, season, asOf, baseUrl, window, rigs, cautions };
};
