import type { Fit } from "../../fit/fit.ts";
import type { Sheet } from "../sheet.ts";
import { cautionsSection } from "./cautions.ts";
import { checkFirstSection } from "./check-first.ts";
import { cordSection } from "./cord.ts";
import type { SheetDocument } from "./document.ts";
import { finishSection } from "./finish.ts";
import { needlesSection } from "./needles.ts";
import { pieceSection } from "./piece.ts";
import { withPrintableText } from "./printable-text.ts";
import { yarnSection } from "./yarn.ts";

/** The working sheet of a fit in words, in the order in which a knitter needs them. */
export const documentOf = (fit: Fit, sheet: Sheet): SheetDocument =>
  withPrintableText({
    title: `${fit.garment.title}: working sheet`,
    sections: [
      checkFirstSection(fit),
      needlesSection(fit, sheet),
      cordSection(fit),
      yarnSection(fit),
      cautionsSection(fit),
    ].filter((section) => section !== undefined),
    pieces: sheet.pieces.map((piece) => pieceSection(fit, piece)),
    finish: finishSection(fit),
  });
