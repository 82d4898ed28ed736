import type { Block } from "./document/document.ts";

/** Piece and block in few words, for the head that comes again on every sheet: "front, first half". */
export const blockName = (piece: string, { title, part }: Block): string =>
  title === undefined ? piece : `${piece}, ${part === "whole" ? "up to the neck" : part}`;
