import type { JSX } from "preact";
import type { Guide } from "../../build/guide/guide-schema.ts";
import type { Inputs } from "../../build/model/memoize.ts";
import type { PageContext } from "./page-context.ts";

/** A list of the Guide that there may be a page for each item of. */
type ListName = { [Key in keyof Guide]: Guide[Key] extends readonly unknown[] ? Key : never }[keyof Guide];

/**
 * What a file `templates/NAME.11ty.tsx` exports: Eleventy's `data` and `render`, with two entries of our own in `data`.
 * `render` is given what `inputs` returns and the page's place in the guide; it sees nothing else of the guide.
 */
export interface PageTemplate<Data> {
  readonly data: {
    readonly pagination?: { readonly data: `guide.${ListName}`; readonly size: 1; readonly alias: string };
    /** The page's address; false where the guide has no such page. */
    readonly permalink: (data: Data) => string | false;
    /** False for a page that nothing may lead to; true unless said. */
    readonly listed?: (data: Data) => boolean;
    /** Plain data: the page is drawn anew only when some of it has changed. */
    readonly inputs: (data: Data) => Inputs;
  };
  readonly render: (page: Inputs & { readonly sheet: PageContext }) => JSX.Element;
}

/** What `render` is given, by the template's own `data`. */
export type Rendered<Data extends { readonly inputs: (data: never) => Inputs }> = ReturnType<
  Data["inputs"]
> & {
  readonly sheet: PageContext;
};
