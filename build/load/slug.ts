/** Lower-case letters, digits and single hyphens: what is safe as a file name and in a web address. */
export const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Well below what file systems allow, so that “.yaml” or a folder fits behind it. */
const LONGEST_SLUG = 80;

/** A name as a slug: "Long Tarn" is "long-tarn"; "" when the name has no letter or digit that can stay. */
export const slugOf = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-/, "")
    .slice(0, LONGEST_SLUG)
    .replace(/-$/, "");
