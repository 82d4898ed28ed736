import type { Fit } from "../../../../src/fit/fit.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import type { SheetDocument } from "../../../../src/sheet/document/document.ts";
import { documentOf } from "../../../../src/sheet/document/document-of.ts";
import type { Sheet } from "../../../../src/sheet/sheet.ts";
import { fitOfPlain, fitOfSample, type SampleName } from "../../draw/support/scenes.ts";

export interface Sheeted {
  readonly fit: Fit;
  readonly sheet: Sheet;
  readonly document: SheetDocument;
}

const sheeted = (fit: Fit): Sheeted => {
  const sheet = buildSheet(fit);
  return { fit, sheet, document: documentOf(fit, sheet) };
};

/** Fitted once for all tests of a file. */
const made = new Map<string, Promise<Sheeted>>();

function once(name: string, fitIt: () => Promise<Fit>): Promise<Sheeted> {
  const before = made.get(name) ?? fitIt().then(sheeted);
  made.set(name, before);
  return before;
}

export const sheetOfSample = (name: SampleName): Promise<Sheeted> => once(name, () => fitOfSample(name));

/** Three pieces, one with a neck, whose names hold what markup, style sheets and PDFs would stumble over. */
export const sheetOfOddNames = (): Promise<Sheeted> => once("odd names", () => fitOfPlain(oddNames));

export const oddPieces = ['front </style> & "neck"', "back 'ä' \\ {1}", "(pocket) <b>"] as const;

const square = (width: string, height: string): object[] => [
  { height: "0 cm", width },
  { height, width },
];

const oddNames = {
  format: "evenrow/1",
  title: "Odd <names> & \"signs\" */ in 'three' pieces",
  bed: { needles: 150 },
  gauge: {
    ground: { stitches: 20, rows: 30, over: "10 cm", within: "3 %" },
    cord: { needles: 3, stitches: 18, over: "10 cm" },
  },
  pieces: {
    [oddPieces[0]]: {
      outline: square("40 cm", "40 cm"),
      neck: [
        { height: "34 cm", width: "10 cm" },
        { height: "40 cm", width: "16 cm" },
      ],
    },
    [oddPieces[1]]: { outline: square("40 cm", "50 cm") },
    [oddPieces[2]]: { outline: square("15 cm", "15 cm") },
  },
  motifs: {
    "rope <2>": { like: "transferred cable", cross: [2, 2], interval: 8, "draw-in": "20 %" },
    "cord & co": { like: "crossed cord", interval: 4, spread: 3, ease: { from: "-20 %", to: "40 %" } },
  },
  place: [
    {
      motif: "cord & co",
      on: oddPieces[0],
      to: "neck",
      columns: 2,
      gap: 6,
      margins: { bottom: "4..20", top: "0..20", side: { least: 3 } },
    },
    { motif: "rope <2>", on: oddPieces[1], margins: { bottom: "2..20", top: "2..20", side: { least: 3 } } },
  ],
};
