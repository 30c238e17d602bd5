import type { Drawing, DrawingNode, Translation } from "./drawing.ts";

const ENTITIES: Readonly<Record<string, string>> = { '"': "&quot;", "&": "&amp;", "<": "&lt;" };

const escapeMarkup = (text: string): string => text.replace(/["&<]/g, (c) => ENTITIES[c] ?? c);

type AttributeValue = string | number | Translation;

const valueText = (value: AttributeValue): string =>
  typeof value === "object" ? `translate(${value.translate.join(" ")})` : escapeMarkup(String(value));

const attribute = ([name, value]: readonly [string, AttributeValue]): string =>
  value === "" ? ` ${name}` : ` ${name}="${valueText(value)}"`;

/** An element in HTML syntax: attributes in the order given, empty ones by name alone. */
const element = (tag: string, attributes: Readonly<Record<string, AttributeValue>>, content = ""): string =>
  `<${tag}${Object.entries(attributes).map(attribute).join("")}>${content}</${tag}>`;

const titleMarkup = (title: string | null): string =>
  title === null ? "" : element("title", {}, escapeMarkup(title));

function nodeMarkup(node: DrawingNode): string {
  switch (node.tag) {
    case "g":
      return element("g", { ...node.attributes }, titleMarkup(node.title) + markupOf(node.children));
    case "path":
    case "circle":
      return element(node.tag, { ...node.attributes });
    case "text":
      return element(
        "text",
        { ...node.attributes },
        node.runs
          .map(({ text, isBold }) =>
            isBold ? element("tspan", { "font-weight": "bold" }, escapeMarkup(text)) : escapeMarkup(text),
          )
          .join(""),
      );
    case "drawing":
      return element("g", { transform: { translate: [node.x, node.y] } }, renderSvg(node.drawing));
  }
}

const markupOf = (nodes: readonly DrawingNode[]): string => nodes.map(nodeMarkup).join("");

/** A drawing as an SVG element to stand in a page: it has no ids, so any number can stand on one page. */
export const renderSvg = ({ width, height, title, textSize, stretch, children }: Drawing): string =>
  element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      ...(title === null ? { "aria-hidden": "true" } : { role: "img" }),
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      ...(stretch === true ? { preserveAspectRatio: "none" } : {}),
      ...(textSize === undefined ? {} : { "font-size": textSize }),
    },
    titleMarkup(title) + markupOf(children),
  );
