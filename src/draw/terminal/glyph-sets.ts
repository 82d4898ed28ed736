export type GlyphSet = "braille" | "blocks" | "ascii";

/** How a terminal's cell is divided into dots, and the characters for what lies quietly in the background. */
export interface Glyphs {
  readonly name: GlyphSet;
  /** Dots across and down one cell. */
  readonly dots: { readonly across: number; readonly down: number };
  /** Bit of a dot within its cell. */
  readonly bit: (across: number, down: number) => number;
  /** The character for a cell's dots. */
  readonly character: (bits: number) => string;
  readonly mark: string;
  readonly panel: string;
  readonly unreachable: string;
}

/** Dots 1 to 8 of a braille pattern in the order of its code (Unicode 15.0, Braille Patterns, U+2800). */
const brailleBits = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;

/** Quadrants by their bits: top left 1, top right 2, bottom left 4, bottom right 8 (Unicode, Block Elements). */
const quadrants =
  " \u2598\u259d\u2580\u2596\u258c\u259e\u259b\u2597\u259a\u2590\u259c\u2584\u2599\u259f\u2588";

export const glyphSets: Readonly<Record<GlyphSet, Glyphs>> = {
  braille: {
    name: "braille",
    dots: { across: 2, down: 4 },
    bit: (across, down) => brailleBits[across]![down]!,
    character: (bits) => (bits === 0 ? " " : String.fromCodePoint(0x2800 + bits)),
    mark: "\u2812",
    panel: "\u2802",
    unreachable: "\u2810",
  },
  blocks: {
    name: "blocks",
    dots: { across: 2, down: 2 },
    bit: (across, down) => 1 << (across + 2 * down),
    character: (bits) => quadrants[bits]!,
    mark: "-",
    panel: ":",
    unreachable: "\u00b7",
  },
  ascii: {
    name: "ascii",
    dots: { across: 1, down: 1 },
    bit: () => 1,
    // Drawn by its direction instead; a dot without one is a point.
    character: (bits) => (bits === 0 ? " " : "*"),
    mark: "-",
    panel: ":",
    unreachable: ".",
  },
};
