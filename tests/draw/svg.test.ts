import { expect, test } from "vitest";
import {
  circle,
  createDrawing,
  type DrawingContent,
  group,
  path,
  placedDrawing,
  text,
} from "../../build/draw/drawing.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { parseXml, type XmlNode } from "../xml.ts";

/** Read back by a strict XML parser that shares no code with the writer. */
const readBack = (
  content: DrawingContent,
  frame: Partial<Parameters<typeof createDrawing>[0]> = {},
): XmlNode => parseXml(renderSvg(createDrawing({ width: 90, height: 60.5, title: null, ...frame }, content)));

const attributesOf = (node: XmlNode | undefined) => Object.fromEntries(node?.attributes ?? []);

test("a drawing is an SVG element of its own size, in its own units", () => {
  const svg = readBack([]);
  expect([svg.name, svg.space]).toEqual(["svg", "http://www.w3.org/2000/svg"]);
  expect(attributesOf(svg)).toMatchObject({ width: "90", height: "60.5", viewBox: "0 0 90 60.5" });
});

test("one with a title is an image that says it, one without is hidden from screen readers", () => {
  const titled = readBack(circle({ cx: 1, cy: 2, r: 3 }), { title: 'Lake "A" & <B>' });
  expect(attributesOf(titled)).toMatchObject({ role: "img" });
  expect(titled.children.map(({ name }) => name)).toEqual(["title", "circle"]);
  expect(titled.children[0]?.text).toBe('Lake "A" & <B>');
  const untitled = readBack([]);
  expect(attributesOf(untitled)).toMatchObject({ "aria-hidden": "true" });
  expect(untitled.children).toEqual([]);
});

test("parts keep their order, their attributes and their text", () => {
  const [row, dot] = readBack([
    null,
    group(
      { class: "row", fill: "none" },
      [
        [path({ d: "M0 0H9", "stroke-width": 0.5, transform: { translate: [4, -5.5] } })],
        text({ x: 1, y: 2 }, [
          { text: "4 < 5 & ", isBold: false },
          { text: '"six"', isBold: true },
        ]),
      ],
      "A row",
    ),
    circle({ cx: 1, cy: 2, r: 3 }),
  ]).children;
  expect(attributesOf(row)).toEqual({ class: "row", fill: "none" });
  const [title, line, words] = row?.children ?? [];
  expect([title?.name, title?.text]).toEqual(["title", "A row"]);
  expect(attributesOf(line)).toEqual({ d: "M0 0H9", "stroke-width": "0.5", transform: "translate(4 -5.5)" });
  expect([words?.text, words?.children[0]?.text]).toEqual(["4 < 5 & ", '"six"']);
  expect(attributesOf(words?.children[0])).toEqual({ "font-weight": "bold" });
  expect(attributesOf(dot)).toEqual({ cx: "1", cy: "2", r: "3" });
});

test("an attribute cannot end early", () => {
  const [part] = readBack(group({ class: 'a"><script>' }, null)).children;
  expect(attributesOf(part)).toEqual({ class: 'a"><script>' });
});

test("a placed drawing is moved to its place and keeps its own size", () => {
  const inner = createDrawing({ width: 7, height: 8, title: "Inner" }, circle({ cx: 1, cy: 2, r: 3 }));
  const [moved] = readBack(placedDrawing(10, 20, inner)).children;
  expect(attributesOf(moved)).toEqual({ transform: "translate(10 20)" });
  expect(attributesOf(moved?.children[0])).toMatchObject({ width: "7", height: "8" });
});
