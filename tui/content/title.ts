import { basename } from "node:path";
import { printable } from "../../src/diagnostics/shown.ts";
import { isChanged, type State } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { cell, cutText, type Line } from "./line.ts";

/** The line at the top: the garment, its file, whether it is saved, and how the fit stands. */
export function titleLine({ garment }: State, width: number, { cut }: Glyphs): Line {
  if (!garment) return [{ text: cell(" Evenrow", width), style: "title" }];
  const right = `  ${standing(garment)} `;
  const file = `${printable(basename(garment.file))}, ${savedWord(garment)}`;
  const title = printable(garment.reading.garment?.title ?? "");
  const room = Math.max(0, width - right.length - file.length - 4);
  const left = ` ${title === "" ? "" : `${cutText(title, room, cut)}  `}${file}`;
  return [
    { text: cell(left, width - right.length), style: "title" },
    { text: right, style: "title" },
  ];
}

/** The same as a sentence. */
export const titleText = (garment: NonNullable<State["garment"]>): string =>
  `${printable(garment.reading.garment?.title ?? "")}, ${printable(basename(garment.file))}, ${savedWord(garment)}: ${standing(garment)}.`;

const savedWord = (garment: NonNullable<State["garment"]>): string =>
  garment.saving === "no" ? (isChanged(garment) ? "not saved" : "saved") : "saving";

function standing({ solving, reading }: NonNullable<State["garment"]>): string {
  if (!reading.garment) return "the file has mistakes";
  if (solving.underWay || solving.outcome.kind === "none yet") return "seeking the fit";
  switch (solving.outcome.kind) {
    case "fits":
      return `cost ${solving.shown?.fit.cost.toFixed(3)}, ${solving.shown?.proven ? "proven best" : "not proven"}`;
    case "does not fit":
      return "nothing fits";
    default:
      return "stopped";
  }
}
