import { XMLParser, XMLValidator } from "fast-xml-parser";

/** One element of an XML file; text and comments are left out, but for the text of a style sheet. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Its own text, where it has any. */
  readonly text: string;
  readonly line: number;
}

/** Groups inside groups beyond this are a trap; the parser stops there. */
const mostNested = 100;

/**
 * Reads XML. Entities are not put in, so that a file cannot swell by them, and nothing outside of the file is fetched.
 *
 * @returns the outermost element, or what is wrong and where
 */
export function parseXml(text: string): XmlElement | { readonly problem: string } {
  const checked = XMLValidator.validate(text);
  if (checked !== true) {
    const { line, msg } = checked.err;
    return { problem: `line ${line} is not well-formed XML: ${msg.replace(/\.$/, "")}` };
  }
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: "",
    removeNSPrefix: false,
    parseTagValue: false,
    parseAttributeValue: false,
    processEntities: false,
    captureMetaData: true,
    maxNestedTags: mostNested,
  });
  try {
    const lineAt = lineCounter(text);
    const [root] = elementsIn(parser.parse(text), lineAt);
    return root ?? { problem: "there is no element in it" };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      problem: /nested/i.test(reason)
        ? `its groups lie more than ${mostNested} deep inside one another`
        : `its XML cannot be read: ${reason.split(". Context")[0]}`,
    };
  }
}

/** The parser gives each element as `{ name: [children], ":@": { attribute: value } }`. */
function elementsIn(nodes: unknown, lineAt: (index: number) => number): XmlElement[] {
  if (!Array.isArray(nodes)) return [];
  return nodes.flatMap((node: Record<string, unknown>) => {
    const name = Object.keys(node).find((key) => key !== ":@");
    if (name === undefined || name.startsWith("#") || name.startsWith("?")) return [];
    const children = node[name];
    const text = Array.isArray(children)
      ? children.map((child) => String(child["#text"] ?? "")).join("")
      : "";
    return [
      {
        name,
        attributes: new Map(Object.entries((node[":@"] ?? {}) as Record<string, string>)),
        children: elementsIn(children, lineAt),
        text,
        line: lineAt(startOf(node)),
      },
    ];
  });
}

function startOf(node: object): number {
  const data: unknown = Reflect.get(node, XMLParser.getMetaDataSymbol().valueOf());
  return typeof data === "object" && data !== null && "startIndex" in data ? Number(data.startIndex) : 0;
}

/** Line of a position, by halving the list of line breaks. */
function lineCounter(text: string): (index: number) => number {
  const breaks: number[] = [];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) breaks.push(at);
  return (index) => {
    let [low, high] = [0, breaks.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (breaks[middle]! < index) low = middle + 1;
      else high = middle;
    }
    return low + 1;
  };
}
