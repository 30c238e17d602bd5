import { SaxesParser } from "saxes";

/** An element without its prefix, its text without that of its children. */
export interface XmlNode {
  readonly name: string;
  readonly space: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlNode[];
  text: string;
}

/** Reads XML by a strict parser; throws where it is not well-formed. */
export function parseXml(xml: string): XmlNode {
  const top: XmlNode = { name: "", space: "", attributes: new Map(), children: [], text: "" };
  const open = [top];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ local, uri, attributes }) => {
    const values = Object.entries(attributes).map(([name, { value }]) => [name, value] as const);
    const node: XmlNode = {
      name: local,
      space: uri,
      attributes: new Map(values),
      children: [],
      text: "",
    };
    open.at(-1)?.children.push(node);
    open.push(node);
  });
  parser.on("text", (text) => {
    const node = open.at(-1);
    if (node !== undefined) node.text += text;
  });
  parser.on("closetag", () => {
    open.pop();
  });
  parser.write(xml).close();
  const [root] = top.children;
  if (root === undefined) throw new Error("no element");
  return root;
}
