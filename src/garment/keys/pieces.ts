import type { Section } from "./section.ts";

const drawnOutlineKeys = {
  centre: {
    means: "where the centre line lies, from the left end of the cast-on edge",
    form: "a length",
    otherwise: "the middle of the cast-on edge",
  },
  turn: { means: "how far the drawing is turned, clockwise", form: "90, 180 or 270", otherwise: "0" },
};

/** The pieces and their outlines. */
export const pieceKeys = {
  piece: {
    where: "a piece",
    keys: {
      outline: {
        means: "heights and widths from the cast-on edge upward, or where they are drawn",
        form: "a list of heights, or { svg: front.svg, id: front }",
      },
      shape: {
        means: "the shape it has, with measurements or a size, in place of an outline",
        form: "{ like: body front, size: woman M, ease: standard }",
        otherwise: "outline",
      },
      make: {
        means: "how many of this piece are knitted, all alike",
        form: "a whole number",
        otherwise: "1",
      },
      marks: { means: "named heights", form: "a length under each name", otherwise: "cast-on and bind-off" },
      neck: {
        means: "the opening cut out around the centre, upward",
        form: "a list of heights",
        otherwise: "none",
      },
      grow: { means: "how much longer the piece may become", form: "a length", otherwise: "0 cm" },
      shrink: { means: "how much shorter the piece may become", form: "a length", otherwise: "0 cm" },
      carriage: {
        means: "where the carriage rests before the first row",
        form: "left or right",
        otherwise: "as the bed says",
      },
      shaping: {
        means: "the rows on which single stitches are added or taken away",
        form: "any row or even rows",
        otherwise: "any row",
      },
      part: {
        means: "where on the body it lies",
        form: "hood, collar, front, back, sleeve or other",
        otherwise: "as its name says, else other",
      },
    },
  },
  "svg outline": {
    where: "an outline from an SVG drawing",
    keys: {
      svg: { means: "the drawing", form: "a file beside the garment's" },
      id: { means: "the line's id in the drawing", form: "a name", otherwise: "the only line there is" },
      ...drawnOutlineKeys,
    },
  },
  "dxf outline": {
    where: "an outline from a DXF pattern",
    keys: {
      dxf: { means: "the pattern", form: "a file beside the garment's" },
      piece: {
        means: "the piece's name in the pattern",
        form: "a name",
        otherwise: "the only piece there is",
      },
      size: { means: "the size, where the pattern has several", form: "a name", otherwise: "the only one" },
      ...drawnOutlineKeys,
    },
  },
  shape: {
    where: "a shape",
    keys: {
      like: { means: "which shape it is", form: "a name, such as body front" },
      size: {
        means: "the size whose body measurements are taken",
        form: "woman M, man L, child 6, baby 12 months",
        otherwise: "none, and then the measurements are written",
      },
    },
  },
  station: {
    where: "a height of an outline",
    keys: {
      height: { means: "height above the cast-on edge", form: "a length" },
      width: {
        means: "full width, the same on both sides of the centre",
        form: "a length",
        otherwise: "left and right",
      },
      left: { means: "width left of the centre", form: "a length", otherwise: "half of width" },
      right: { means: "width right of the centre", form: "a length", otherwise: "half of width" },
    },
  },
  "neck station": {
    where: "a height of a neck",
    keys: {
      height: { means: "height above the cast-on edge", form: "a length" },
      width: { means: "width of the opening", form: "a length" },
    },
  },
} as const satisfies Readonly<Record<string, Section>>;
