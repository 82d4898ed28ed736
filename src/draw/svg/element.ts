/** Attribute values; one that is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A piece of finished markup: text from files can only get into it escaped. */
export interface Markup {
  readonly markup: string;
}

/** An element with its attributes and what stands in it; text is escaped. */
export function element(
  name: string,
  attributes: Attributes,
  ...content: readonly (Markup | string)[]
): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) => ` ${key}="${escaped(typeof value === "number" ? String(rounded(value)) : value!)}"`,
    )
    .join("");
  if (content.length === 0) return { markup: `<${name}${written}/>` };
  const inner = content.map((part) => (typeof part === "string" ? escaped(part) : part.markup)).join("");
  return { markup: `<${name}${written}>${inner}</${name}>` };
}

export const group = (attributes: Attributes, content: readonly Markup[]): Markup =>
  content.length === 0 ? nothing : element("g", attributes, ...separated(content));

export const nothing: Markup = { markup: "" };

const separated = (content: readonly Markup[]): readonly Markup[] =>
  content.filter(({ markup }) => markup !== "").map(({ markup }) => ({ markup: `\n${markup}` }));

/** Hundredths of a pixel are finer than any screen or printer. */
export const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

export const pointList = (points: readonly Pixel[]): string =>
  points.map(({ x, y }) => `${rounded(x)},${rounded(y)}`).join(" ");

/** A place on the picture: x to the right, y down. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

// What is not a character of XML 1.0 (section 2.2, Char) may not stand in a document even as a reference.
const notXml = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const escaped = (text: string): string =>
  text.replace(notXml, "\uFFFD").replace(/[&<>"']/g, (character) => entities[character]!);
