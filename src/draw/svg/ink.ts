/** Shades and line widths, chosen to stay apart in black and white. */
export const ink = {
  black: "#000",
  white: "#fff",
  /** Single cells. */
  faint: "#d4d4d4",
  /** Every tenth needle and row. */
  tenth: "#8a8a8a",
  /** Helping lines and what they say. */
  quiet: "#555",
  /** Fill of every second strand, and of a cable's group that lies behind. */
  shade: "#9c9c9c",
} as const;
