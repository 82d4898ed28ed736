import { XMLParser, XMLValidator } from "fast-xml-parser";

export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Elements and the text between them. */
  readonly parts: readonly (Node | string)[];
  readonly children: readonly Node[];
  /** With that of all in it; characters as they were escaped. */
  readonly text: string;
}

type Parsed = Readonly<Record<string, unknown>>;

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: "",
  parseTagValue: false,
  trimValues: false,
});

/**
 * Every element of a document in its order.
 *
 * @throws where it is not well-formed
 */
export function elementsOf(html: string): readonly Node[] {
  const flat = (node: Node): readonly Node[] => [node, ...node.children.flatMap(flat)];
  return rootsOf(html)
    .filter((one) => "html" in one)
    .flatMap((one) => flat(nodeOf(one)));
}

/** The one element that a piece of markup is. */
export const elementOf = (markup: string): Node => nodeOf(rootsOf(markup)[0]!);

function rootsOf(markup: string): readonly Parsed[] {
  const verdict = XMLValidator.validate(markup);
  if (verdict !== true) throw new Error(verdict.err.msg);
  return parser.parse(markup) as readonly Parsed[];
}

function nodeOf(parsed: Parsed): Node {
  const name = Object.keys(parsed).find((key) => key !== ":@")!;
  const content = parsed[name] as readonly Parsed[];
  const parts = content.map((part) => ("#text" in part ? String(part["#text"]) : nodeOf(part)));
  const text = parts.map((part) => (typeof part === "string" ? part : part.text)).join("");
  return {
    name,
    attributes: (parsed[":@"] ?? {}) as Record<string, string>,
    parts,
    children: parts.filter((part) => typeof part !== "string"),
    text,
  };
}

export const named = (nodes: readonly Node[], ...names: readonly string[]): readonly Node[] =>
  nodes.filter(({ name }) => names.includes(name));

/** An element as it is compared: its name, its attributes where it has any, then its elements and texts. */
export type Tree = readonly [name: string, ...rest: (Readonly<Record<string, string>> | string | Tree)[]];

export const treeOf = ({ name, attributes, parts }: Node): Tree => [
  name,
  ...(Object.keys(attributes).length > 0 ? [attributes] : []),
  ...parts.map((part) => (typeof part === "string" ? unescaped(part) : treeOf(part))),
];

export const unescaped = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
