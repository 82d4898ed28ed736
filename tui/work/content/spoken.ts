import { placeLines } from "../../../src/work/place-text.ts";
import { currentPiece } from "../../../src/work/record.ts";
import { asciiGlyphs } from "../../content/glyphs.ts";
import { plainText } from "../../content/line.ts";
import type { WorkState } from "../state.ts";
import { heldWords } from "../update.ts";
import { messageLine, questionLines, workFooter } from "./frame.ts";

const wide = 10_000;

/** The screen's facts as lines of text, for a screen reader and for terminals that cannot move their cursor. */
export function workSpokenLines(state: WorkState): readonly string[] {
  const message = plainText(messageLine(state));
  const keys = `Keys: ${workFooter(state, wide, 1).map(plainText).join(" ").trim().replaceAll(/ {2,}/g, ", ")}`;
  const facts =
    state.screen.kind === "main"
      ? placeLines(currentPiece(state.record))
      : questionLines(state, wide, asciiGlyphs).map(plainText);
  return [
    ...(message === "" ? [] : [message]),
    ...(state.standing === "looking" ? [`Looking on. ${heldWords(state)}`] : []),
    ...facts.filter((text) => text.trim() !== ""),
    keys,
  ];
}
