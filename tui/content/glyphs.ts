/** The few signs that the screen draws with; each has a form in ASCII. */
export interface Glyphs {
  readonly drawing: "braille" | "ascii";
  readonly pointer: string;
  /** At the end of what it points at. */
  readonly pointerBack: string;
  readonly upright: string;
  readonly level: string;
  readonly cut: string;
}

export const unicodeGlyphs: Glyphs = {
  drawing: "braille",
  pointer: "▸",
  pointerBack: "◂",
  upright: "│",
  level: "─",
  cut: "…",
};

export const asciiGlyphs: Glyphs = {
  drawing: "ascii",
  pointer: ">",
  pointerBack: "<",
  upright: "|",
  level: "-",
  cut: "~",
};
