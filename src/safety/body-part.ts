import { BODY_PARTS, type BodyPart, type Piece } from "../garment/garment.ts";

/** Where on the body a piece lies, and what says so. */
export interface PlacedPart {
  readonly part: BodyPart;
  readonly saidBy: "file" | "name" | "nothing";
}

/** The part that the file states, else the one whose word is in the piece's name, else "other". */
export function partOf({ part, name }: Pick<Piece, "part" | "name">): PlacedPart {
  if (part) return { part, saidBy: "file" };
  const words = name.toLowerCase().split(/[^\p{L}]+/u);
  const named = BODY_PARTS.find((one) => one !== "other" && words.some((word) => isWordFor(word, one)));
  return named ? { part: named, saidBy: "name" } : { part: "other", saidBy: "nothing" };
}

const isWordFor = (word: string, part: BodyPart): boolean => word === part || word === `${part}s`;
