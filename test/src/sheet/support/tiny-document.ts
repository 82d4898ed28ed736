import type { Block, PieceSection, SheetDocument } from "../../../../src/sheet/document/document.ts";

/** A document no longer than it has to be, with something of every kind in it. */
export const tinyDocument = (changes: Partial<SheetDocument> = {}): SheetDocument => ({
  title: "Scarf: working sheet",
  sections: [{ title: "Check first", content: [{ kind: "paragraph", text: "Knit a swatch." }] }],
  pieces: [tinyPiece("scarf")],
  finish: { title: "Finish", content: [{ kind: "paragraph", text: "Sew in the ends." }] },
  ...changes,
});

export const tinyPiece = (piece: string, changes: Partial<PieceSection> = {}): PieceSection => ({
  piece,
  needles: { kind: "facts", facts: [{ name: "Rows", value: "3" }] },
  castOn: [{ kind: "paragraph", text: "Cast on by hand." }],
  blocks: [tinyBlock()],
  ...changes,
});

/** Three rows, after which something is done. */
export const tinyBlock = (changes: Partial<Block> = {}): Block => ({
  part: "whole",
  before: [],
  shaping: [],
  lines: [
    { kind: "knit", rows: 3, toRow: 3, carriage: "left" },
    { kind: "do", row: 3, carriage: "left", phrases: ["bind off all stitches"], running: [] },
  ],
  ...changes,
});
