import { shapingPassages } from "../../../../../src/sheet/shaping/shaping-passages.ts";
import type { SheetPiece } from "../../../../../src/sheet/sheet.ts";
import { stepsFromWords } from "./words-to-steps.ts";

/** "block side edge row act needles" for each step of a sheet, by its actions. */
export const stepsOfSheet = ({ rows }: SheetPiece): string[] => {
  let block = "whole";
  return rows
    .flatMap(({ row, do: actions }) =>
      actions.flatMap((action) => {
        if (action.act === "hold") block = "first half";
        if (action.act === "work") block = "second half";
        if ("side" in action && "needles" in action)
          return [
            [block, action.edge === "neck" ? "neck edge" : action.side, row, action.act, action.needles],
          ];
        return "yarn" in action ? [[block, "centre", row, action.act, action.to - action.from]] : [];
      }),
    )
    .map((step) => step.join(" "))
    .sort();
};

/** The same from the words alone; the needles of the centre are counted without the 0 between L1 and R1. */
export const stepsOfWords = (piece: SheetPiece): string[] =>
  shapingPassages(piece)
    .flatMap(({ block, words: said }) => {
      const { act, at, steps } = stepsFromWords(said);
      const sides = at === "each side" ? ["left", "right"] : [at];
      return sides.flatMap((side) =>
        steps.map(({ row, needles }) => [block, side, row, act.replace(" ", "-"), needles].join(" ")),
      );
    })
    .sort();
