import { basename } from "node:path";
import { printable } from "../../../src/diagnostics/shown.ts";
import { wrap } from "../../../src/report/wrap.ts";
import { keptMarks } from "../../../src/work/kept-marks.ts";
import { pieceWords, placeWords } from "../../../src/work/place-text.ts";
import { currentPiece } from "../../../src/work/record.ts";
import { partsWith } from "../../../src/work/steps.ts";
import { footerOf } from "../../content/footer.ts";
import type { Glyphs } from "../../content/glyphs.ts";
import { keyLines } from "../../content/key-lines.ts";
import { cell, fitHeight, fitLine, type Line, line } from "../../content/line.ts";
import { workKeysAt } from "../keys.ts";
import type { WorkState } from "../state.ts";
import { heldWords } from "../update.ts";
import { workKeySections } from "./key-sections.ts";
import { largeText } from "./large.ts";
import { machineLines } from "./machine.ts";

/** The whole screen as lines, each as wide as the terminal; one row stays free, or the terminal would scroll. */
export function workFrame(state: WorkState, glyphs: Glyphs): readonly Line[] {
  const { columns, rows } = state.terminal;
  const height = Math.max(1, rows - 1);
  const foot = workFooter(state, columns, height >= 12 ? 2 : 1);
  const room = height - foot.length - 2;
  const lines =
    room < 4
      ? [
          line(
            `${pieceWords(currentPiece(state.record))}: ${placeWords(currentPiece(state.record))}`,
            "strong",
          ),
        ]
      : [
          titleLine(state, columns),
          ...fitHeight(body(state, columns, room, glyphs), room),
          messageLine(state),
          ...foot,
        ];
  return fitHeight(lines, height).map((one) => fitLine(one, columns, glyphs.cut));
}

/** The keys that can be used now. */
export const workFooter = (state: WorkState, width: number, height: number): readonly Line[] =>
  footerOf(
    workKeysAt(state.screen.kind).filter(
      ({ short, unusable }) => short !== undefined && unusable?.(state) === undefined,
    ),
    width,
    height,
  );

function titleLine({ record, file, standing }: WorkState, width: number): Line {
  const right = standing === "mine" ? "every row shown is kept " : "LOOKING ON, nothing is counted here ";
  const left = ` ${printable(pieceWords(currentPiece(record)))}  ${printable(basename(file))}`;
  return [
    { text: cell(left, Math.max(0, width - right.length)), style: "title" },
    { text: right, style: "title" },
  ];
}

export const messageLine = ({ message }: WorkState): Line =>
  message ? line(message.words, message.kind === "refused" ? "warning" : "accent") : line("");

function body(state: WorkState, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const { screen } = state;
  if (screen.kind === "main") return machineLines(state, { width, height, glyphs });
  const lines = [...headline(state, width, height, glyphs), ...questionLines(state, width, glyphs)];
  if (!("scroll" in screen)) return lines;
  const from = Math.min(screen.scroll, Math.max(0, lines.length - height));
  return lines.slice(from, from + height);
}

/** Where the piece ends, as large as the lines below leave room for. */
function headline(state: WorkState, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const { screen } = state;
  if (!("headline" in screen)) return [];
  const room = height - questionLines(state, width, glyphs).length - 1;
  const large = largeText(screen.headline, width, room, glyphs);
  return large ? [...large, line("")] : [line(screen.headline.join(", "), "strong")];
}

const keyWidth = 28;

/** What fills the screen while something is typed or asked. */
export function questionLines(state: WorkState, width: number, glyphs: Glyphs): readonly Line[] {
  const { screen, record, change } = state;
  const said = (text: string, style: "plain" | "strong" | "warning" = "plain"): readonly Line[] =>
    wrap(text, width, text.startsWith(" ") ? 5 : 0).map((one) => line(one, style));
  switch (screen.kind) {
    case "main":
      return [];
    case "number":
      return [
        ...said(""),
        ...said(`Go to row ${screen.text}_`, "strong"),
        ...said("Enter, then you are asked once more."),
      ];
    case "ask jump": {
      const half = screen.part > 1 ? " of the second half" : "";
      return [
        ...said(""),
        ...said(`Go from ${placeWords(currentPiece(record))} to row ${screen.row}${half}?`, "strong"),
        ...said(""),
        ...said("  Enter  yes"),
        ...(partsWith(currentPiece(record).sheet, screen.row).length > 1
          ? said("  Tab    the other half")
          : []),
        ...said("  Esc    no, stay"),
      ];
    }
    case "note":
      return [
        ...said(""),
        ...said(`A note at ${placeWords(currentPiece(record))}:`),
        ...said(`${screen.text}_`, "strong"),
        ...said(""),
        ...said("Enter keeps it; an empty note takes it away."),
      ];
    case "measure length":
    case "measure width": {
      const isLength = screen.kind === "measure length";
      const what = isLength
        ? "The length from the cast-on edge to the needles"
        : "The width over all needles in work";
      return [
        ...said(""),
        ...said(`Measured at ${placeWords(currentPiece(record))}.`),
        ...said(`${what}:`),
        ...said(`${screen.text}_`, "strong"),
        ...said(""),
        ...said("With its unit, such as 24.5 cm. Enter takes it; empty where it was not measured."),
      ];
    }
    case "reckoning":
      return [
        ...said(""),
        ...said(screen.refits ? "Fitting the rest anew ..." : "Reckoning ...", "strong"),
        ...said(""),
        ...said("  Esc  give it up"),
      ];
    case "measured":
      return [
        ...screen.lines.flatMap((one) => said(one)),
        ...said(""),
        ...said("  r    fit the rest anew"),
        ...said("  k    keep the sheet, and the measurement at this row"),
        ...said("  Esc  leave all as it was"),
      ];
    case "refitted":
      return [
        ...screen.lines.flatMap((one) => said(one)),
        ...said(""),
        ...said("  Enter  follow the new sheet from this row on"),
        ...said("  k      keep the sheet, and the measurement at this row"),
        ...said("  Esc    leave all as it was"),
      ];
    case "no refit":
      return [
        ...screen.lines.flatMap((one) => said(one)),
        ...said(""),
        ...said("  k    keep the measurement at this row"),
        ...said("  Esc  leave all as it was"),
      ];
    case "not measured":
      return [
        ...said(""),
        ...screen.lines.flatMap((one) => said(one, "warning")),
        ...said(""),
        ...said("  Esc  back"),
      ];
    case "pieces":
      return [
        ...said("Which piece?", "strong"),
        ...record.pieces.map((piece, index) =>
          line(
            `${index === screen.at ? glyphs.pointer : " "} ${printable(pieceWords(piece))}: ${placeWords(piece)}`,
            index === screen.at ? "chosen" : "plain",
          ),
        ),
      ];
    case "marks":
      return keptMarks(currentPiece(record)).flatMap((one) => said(one));
    case "help":
      return [
        ...said("All keys (Up and Down move on through them)", "strong"),
        ...keyLines(workKeySections(), width, keyWidth),
      ];
    case "ask held":
      return [
        ...said(""),
        ...said(heldWords(state), "warning"),
        ...said(""),
        ...said("  l  only look on: the screen follows what is counted there"),
        ...said("  t  take the work over: the other copy stops counting before its next row"),
        ...said("  q  leave"),
      ];
    case "ask change":
      return [
        ...said("The garment file was changed, and its sheet is not the one that you follow.", "warning"),
        ...(change?.differences ?? []).flatMap(({ piece, words }) => [
          ...said(""),
          ...said(piece, "strong"),
          ...words.flatMap((one) => said(`  ${one}`)),
        ]),
        ...said(""),
        ...said("  g  go on with the sheet that you began"),
        ...said("  n  take the new sheet from here on"),
      ];
    case "ask unlike":
      return [
        ...said("What you have knitted is not what the new sheet says.", "warning"),
        ...said(
          "Rows that are done would have been worked otherwise, so stitches and counts may not come out.",
        ),
        ...(change?.differences ?? [])
          .filter(({ isSameSoFar }) => !isSameSoFar)
          .flatMap(({ piece, words }) => said(`  ${piece}: ${words.at(-1)}`)),
        ...said(""),
        ...said("  y    take it all the same"),
        ...said("  g    go on with the sheet that you began"),
        ...said("  Esc  back"),
      ];
  }
}
