import type { ComponentChildren } from "preact";
import { renderToString } from "preact-render-to-string";

interface SvgFrame {
  readonly width: number;
  readonly height: number;
  /** What the drawing says, in words; `null` for one that stands beside its own words. */
  readonly title: string | null;
  /** Of all text in it that says no other. */
  readonly textSize?: number;
  /** Fills whatever place it is given, out of proportion. */
  readonly stretch?: boolean;
}

/** A drawing as the text of an SVG: the same on a page and on a card. */
export const renderSvg = (
  { width, height, title, textSize, stretch = false }: SvgFrame,
  children: ComponentChildren,
): string =>
  renderToString(
    // biome-ignore lint/a11y/noSvgWithoutTitle: a drawing without a title is hidden from those who would need one
    <svg
      xmlns="http://www.w3.org/2000/svg"
      {...(title === null ? { "aria-hidden": "true" } : { role: "img" })}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      {...(stretch ? { preserveAspectRatio: "none" } : {})}
      {...(textSize === undefined ? {} : { "font-size": textSize })}
    >
      {title === null ? null : <title>{title}</title>}
      {children}
    </svg>,
  );
