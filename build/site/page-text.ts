import { renderToString } from "preact-render-to-string";
import type { SitePage } from "./pages.tsx";

/** A page as it is written. */
export const pageText = ({ draw }: SitePage): string => `<!DOCTYPE html>\n${renderToString(draw())}\n`;
