/**
 * A workflow that builds the guide and puts it on the host's own web space after every change.
 * @param folder the club folder, inside a copy of this program
 */
export const publishYaml = (
  folder: string,
): string => `# Builds the guide and publishes it whenever something changes. To use it, keep the program and this club folder in
# one repository, copy this file to .github/workflows/ at its top, and choose “GitHub Actions” as the source of Pages
# in the repository's settings. The host tells the guide's address; for one of your own, write it behind --base-url.

name: Publish the guide
on:
  push:
    branches: [main]
  workflow_dispatch:
permissions:
  contents: read
  pages: write
  id-token: write
concurrency:
  group: pages
jobs:
  publish:
    runs-on: ubuntu-latest
    environment:
      name: github-pages
      url: \${{ steps.published.outputs.page_url }}
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with: { node-version: 20, cache: npm }
      - run: npm ci
      - id: pages
        uses: actions/configure-pages@v5
      - run: npm run guide -- --data ${folder} --base-url "\${{ steps.pages.outputs.base_url }}/"
      - uses: actions/upload-pages-artifact@v3
        with: { path: site }
      - id: published
        uses: actions/deploy-pages@v4
`;
