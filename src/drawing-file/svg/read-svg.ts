import {
  type Drawing,
  type DrawingProblem,
  type DrawnShape,
  refusedShape,
  withinBudget,
} from "../drawing.ts";
import { flatPath } from "./path.ts";
import { isShape, pathDataOf, UNUSABLE } from "./shapes.ts";
import { isTransformList } from "./transform-list.ts";
import { type SvgScale, svgScale } from "./units.ts";
import { parseXml, type XmlElement } from "./xml.ts";

/**
 * Reads the lines of an SVG drawing that have an id, and one that has none where it is the only one: `path`, `polygon`,
 * `polyline` and `rect`, under the transforms of their own and of their groups (SVG 2; CSS Transforms 1, section 8).
 *
 * @returns every element with an id, in mm and y upward; those that cannot be an outline with the reason
 */
export function readSvg(text: string): Drawing | DrawingProblem {
  const root = parseXml(text);
  if ("problem" in root) return { problem: `it is not an SVG drawing: ${root.problem}` };
  if (localName(root) !== "svg")
    return { problem: `it is not an SVG drawing: its outermost element is ${root.name.slice(0, 40)}` };
  const scale = svgScale(root.attributes);
  if ("problem" in scale) return scale;
  const styled = hasTransformingSheet(root);
  const found = walk(root, { transforms: [], scale, styled });
  const lines = found.filter(({ element }) => isShape(element));
  const named = found.filter(({ element }) => element.attributes.has("id"));
  const shapes = [...named, ...(lines.length === 1 ? lines : [])];
  return { shapes: withinBudget([...new Set(shapes)], shapeOf, nameOf), remarks: scale.remarks };
}

/** What holds for an element from those around it. */
interface Surroundings {
  /** Lists of transforms, the innermost first. */
  readonly transforms: readonly string[];
  readonly scale: SvgScale;
  /** Whether a style sheet of the drawing moves elements about. */
  readonly styled: boolean;
  /** Why nothing inside can be used. */
  readonly refusal?: string;
}

interface Found {
  readonly element: XmlElement;
  readonly around: Surroundings;
}

function walk(element: XmlElement, outer: Surroundings): Found[] {
  const name = localName(element);
  const transform = name === "svg" ? undefined : element.attributes.get("transform");
  const refusal = outer.refusal ?? refusalOf({ ...element, name }, transform);
  const around: Surroundings = {
    ...outer,
    transforms: transform === undefined ? outer.transforms : [transform, ...outer.transforms],
    ...(refusal !== undefined && { refusal }),
  };
  const inside: Surroundings =
    name === "symbol"
      ? { ...around, refusal: "it lies in a symbol, which is drawn only where a use element places it" }
      : around;
  const children = element.children.flatMap((child) =>
    walk(child, localName(child) === "svg" ? { ...inside, refusal: nested(child) } : inside),
  );
  return [{ element: { ...element, name }, around }, ...children];
}

const localName = ({ name }: XmlElement): string => name.slice(name.indexOf(":") + 1);

const nested = ({ line }: XmlElement): string =>
  `it lies in a drawing inside the drawing (nested svg, line ${line}), whose place and scale are not worked out`;

/** Why an element moves itself and what is in it in a way that cannot be followed. */
function refusalOf({ attributes, line }: XmlElement, transform: string | undefined): string | undefined {
  const style = attributes.get("style") ?? "";
  if (/(?:^|[;\s])(?:transform|translate|rotate|scale|offset-path)\s*:/i.test(style))
    return `it is moved by a CSS transform (style on line ${line}); write it as a transform attribute`;
  if (/(?:^|[;\s])d\s*:\s*path/i.test(style)) return `its line is given by CSS (style on line ${line})`;
  if (transform !== undefined && !isTransformList(transform))
    return `the transform "${transform.slice(0, 40)}" on line ${line} cannot be read`;
  return undefined;
}

const hasTransformingSheet = (element: XmlElement): boolean =>
  (localName(element) === "style" &&
    /\b(?:transform|translate|rotate|scale|offset-path|d)\s*:/i.test(element.text)) ||
  element.children.some(hasTransformingSheet);

const nameOf = ({ element }: Pick<Found, "element">): string => element.attributes.get("id") ?? "";

function shapeOf({ element, around }: Found): DrawnShape {
  const name = nameOf({ element });
  const refused = (refusal: string): DrawnShape => refusedShape(name, refusal);
  const data = pathDataOf(element);
  if (!isShape(element)) return refused(UNUSABLE[element.name] ?? `it is no line (${element.name})`);
  if (around.refusal !== undefined) return refused(around.refusal);
  if (around.styled)
    return refused("a style sheet in the drawing moves or redraws elements, which is not followed");
  if (data === undefined)
    return refused(`the sizes of this ${element.name} are not plain numbers with sharp corners`);
  const { contours, broken, refusal } = flatPath(data, around.transforms, around.scale);
  return {
    name,
    contours,
    notches: [],
    remarks: broken === undefined ? [] : [`line ${element.line}: ${broken}; the line is used up to there`],
    ...(refusal !== undefined && { refusal }),
  };
}
