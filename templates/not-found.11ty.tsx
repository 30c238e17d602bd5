import { ADDRESS } from "../build/model/addresses.ts";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";

export const data = {
  permalink: () => ADDRESS.notFound,
  inputs: () => ({}),
} as const;

/** For an address that is not there. */
export const render = ({ sheet }: Rendered<typeof data>) => (
  <Page sheet={sheet} title="Not here" description="There is no such page in this guide.">
    <h1>Not here</h1>
    <p class="lead">
      There is no such page in this guide. All lakes are on the{" "}
      <a href={sheet.to(ADDRESS.board)}>season board</a>.
    </p>
  </Page>
);
