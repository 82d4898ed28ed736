import { nearest } from "../diagnostics/nearest.ts";
import { quoted, shown } from "../diagnostics/shown.ts";
import type { DrawingKind, DrawnShape } from "./drawing.ts";

/** By what a garment asks for one line of a drawing; a name may be left out where there is only one. */
interface Asked {
  /** The id in an SVG drawing, the piece's name in a DXF file. */
  readonly name?: string;
  readonly size?: string;
}

interface NotFound {
  readonly about: "name" | "size";
  /** Goes on after the file's name. */
  readonly problem: string;
  readonly expected: string;
}

/** More names than these are not listed. */
const mostNames = 12;

/**
 * The one shape that is asked for. An id counts letter by letter; names and sizes of a pattern file do not tell case and
 * spaces apart, because writers do not either.
 */
export function shapesAsked(
  shapes: readonly DrawnShape[],
  kind: DrawingKind,
  { name, size }: Asked,
): DrawnShape | NotFound {
  const key = kind === "svg" ? (text: string): string => text : plainName;
  const what = kind === "svg" ? "id" : "piece";
  const usable = shapes.filter(({ refusal }) => refusal === undefined);
  const named = name === undefined ? usable : shapes.filter((shape) => key(shape.name) === key(name));
  if (named.length === 0)
    return {
      about: "name",
      problem: name === undefined ? "has no line that could be an outline" : `has no ${what} ${quoted(name)}`,
      expected: expectedName(name, usable, what),
    };
  const sized =
    size === undefined ? named : named.filter((shape) => plainName(shape.size ?? "") === plainName(size));
  const sizes = [...new Set(named.map((shape) => shape.size ?? "no size"))].slice(0, mostNames).map(shown);
  if (sized.length === 0)
    return {
      about: "size",
      problem: `has ${shown(named[0]!.name)} in no size ${quoted(size ?? "")}`,
      expected: `size: one of ${sizes.join(", ")}`,
    };
  // Of two elements with one id the first is the one that counts (HTML and SVG alike).
  if (sized.length === 1 || (kind === "svg" && name !== undefined)) return sized[0]!;
  return name === undefined || sizes.length === 1
    ? severalLines(sized, what)
    : severalSizes(sized[0]!, sizes);
}

const severalSizes = ({ name }: DrawnShape, sizes: readonly string[]): NotFound => ({
  about: "size",
  problem: `has ${shown(name)} in ${sizes.length} sizes`,
  expected: `size: one of ${sizes.join(", ")}`,
});

const severalLines = (shapes: readonly DrawnShape[], what: string): NotFound => ({
  about: "name",
  problem: `has ${shapes.length} lines that could be meant`,
  expected: `${what}: one of ${namesOf(shapes)}`,
});

function expectedName(name: string | undefined, usable: readonly DrawnShape[], what: string): string {
  if (usable.length === 0)
    return `a drawing with a closed line that has an ${what === "id" ? "id" : "entry of its own"}`;
  const near =
    name === undefined
      ? undefined
      : nearest(
          name,
          usable.map((shape) => shape.name),
        );
  return near === undefined || near === ""
    ? `${what}: one of ${namesOf(usable)}`
    : `${near} (the nearest known name)`;
}

const namesOf = (shapes: readonly DrawnShape[]): string => {
  const names = [...new Set(shapes.map((shape) => shape.name).filter((name) => name !== ""))].map(shown);
  return names.length > mostNames
    ? `${names.slice(0, mostNames).join(", ")} and ${names.length - mostNames} more`
    : names.join(", ");
};

/** A name without regard to case and spaces. */
export const plainName = (name: string): string => name.replace(/[\s_]+/g, "").toLowerCase();
