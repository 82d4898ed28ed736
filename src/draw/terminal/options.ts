import type { View } from "../view.ts";
import type { GlyphSet } from "./glyph-sets.ts";

/** Where the middle of the view lies, from the middle of the piece, in widths and heights of the view. */
export interface Scroll {
  readonly across: number;
  readonly up: number;
}

export interface TerminalOptions {
  /** Room for the drawing with all that is written beside it. */
  readonly columns: number;
  readonly rows: number;
  readonly glyphs: GlyphSet;
  /** As the knitter sees it, where it is left out. */
  readonly view?: View;
  /** How many times as large as where the whole piece is in view; 1 where it is left out. */
  readonly zoom?: number;
  /** Where the middle of the view lies; the middle of the piece where it is left out. */
  readonly scroll?: Scroll;
  /** What to leave out, and what to add. */
  readonly layers?: Partial<Layers>;
}

/** What is drawn: all of it on a chart; on a screen all but what a chart adds, unless it is asked for. */
export interface Layers {
  readonly unreachable: boolean;
  readonly panels: boolean;
  readonly marks: boolean;
  readonly motif: boolean;
  /** Hangings and their counts, where the drawing is large enough for them. */
  readonly hangings: boolean;
  /** Row numbers at the left. */
  readonly rowNumbers: boolean;
  /** Needle names along the bottom. */
  readonly needleNames: boolean;
  /** Added by a chart: the same row numbers at the right. */
  readonly rowNumbersAtRight: boolean;
  /** Added by a chart: stitches that come and go, beside the edge, and the order of the halves above a neck. */
  readonly shaping: boolean;
  /** Added by a chart: rows and needles free around each motif. */
  readonly margins: boolean;
}
