import type { XmlElement } from "./xml.ts";

/** What can be read as a line, by the name of its element, as path data. */
const PATH_DATA: Readonly<Record<string, (attributes: ReadonlyMap<string, string>) => string | undefined>> = {
  path: (attributes) => attributes.get("d") ?? "",
  polygon: (attributes) => linesThrough(attributes.get("points") ?? "", "Z"),
  polyline: (attributes) => linesThrough(attributes.get("points") ?? "", ""),
  rect: rectangle,
};

export const isShape = ({ name }: XmlElement): boolean => Object.hasOwn(PATH_DATA, name);

/** Elements that lay something on the page and cannot be an outline, with the reason. */
export const UNUSABLE: Readonly<Record<string, string>> = {
  use: "it repeats another element (use); give the id of that element",
  circle: "a circle has no cast-on edge",
  ellipse: "an ellipse has no cast-on edge",
  line: "a single line encloses nothing",
  text: "it is text",
  image: "it is a picture of dots, not a line",
  g: "it is a group; give the id of the line inside it",
  svg: "it is the whole drawing; give the id of a line inside it",
};

/**
 * A shape as path data (SVG 2, section 10).
 *
 * @returns undefined where one of its numbers cannot be read
 */
export const pathDataOf = ({ name, attributes }: XmlElement): string | undefined =>
  PATH_DATA[name]?.(attributes);

const linesThrough = (points: string, end: string): string =>
  points.trim() === "" ? "" : `M ${points} ${end}`;

function rectangle(attributes: ReadonlyMap<string, string>): string | undefined {
  const number = (name: string): number => Number(attributes.get(name) ?? "0");
  const [x, y, width, height] = [number("x"), number("y"), number("width"), number("height")];
  const rounded = (attributes.get("rx") ?? attributes.get("ry")) !== undefined;
  if (![x, y, width, height].every(Number.isFinite) || rounded) return undefined;
  return `M ${x} ${y} h ${width} v ${height} h ${-width} Z`;
}
