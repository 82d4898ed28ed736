import { type NeedleRange, needleCount, rangeName } from "../../cloth/bed.ts";
import type { Side } from "../../garment/garment.ts";
import { shapingPassages } from "../shaping/shaping-passages.ts";
import type { SheetPiece, SheetRow } from "../sheet.ts";
import { type Block, type Paragraph, paragraph } from "./document.ts";
import { type PieceWords, workLines } from "./work-lines.ts";

/** A piece's rows, in one block or, above a neck, in one for each half as well. */
export function blocksOf(piece: SheetPiece, words: PieceWords): readonly Block[] {
  const { rows } = piece;
  const passages = shapingPassages(piece);
  const shaping = (part: Block["part"]): readonly string[] =>
    passages.filter(({ block }) => block === part).map(({ words: said }) => said);
  const rowOf = (wanted: "hold" | "work"): number =>
    rows.findIndex(({ do: actions }) => actions.some(({ act }) => act === wanted));
  const held = rowOf("hold");
  if (held < 0)
    return [{ part: "whole", before: [], shaping: shaping("whole"), lines: workLines(rows, 0, words) }];
  const back = rowOf("work");
  const [neckRow, backRow] = [rows[held]!, rows[back]!];
  const first = needlesOf(neckRow);
  const second = needlesOf(backRow);
  return [
    {
      part: "whole",
      title: "Up to the neck",
      before: [],
      shaping: shaping("whole"),
      lines: workLines(rows.slice(0, held + 1), 0, words),
    },
    {
      part: "first half",
      title: `First half: the ${sideOf(first)} one, ${rangeName(first)}`,
      before: halfWords(neckRow, first, `The ${sideOf(second)} half waits on hold, ${rangeName(second)}.`),
      shaping: shaping("first half"),
      lines: workLines(rows.slice(held + 1, back), neckRow.row, words),
    },
    {
      part: "second half",
      title: `Second half: the ${sideOf(second)} one, ${rangeName(second)}`,
      before: halfWords(backRow, second, `Set the row counter back to ${backRow.row}.`),
      shaping: shaping("second half"),
      lines: workLines(rows.slice(back), backRow.row, words),
    },
  ];
}

/** The needles in work after a row that does not end its block. */
const needlesOf = ({ needles }: SheetRow): NeedleRange => needles as NeedleRange;

/** A half lies on one side of the centre as a whole. */
const sideOf = ([, last]: NeedleRange): Side => (last < 0 ? "left" : "right");

const halfWords = ({ row, carriage }: SheetRow, needles: NeedleRange, also: string): readonly Paragraph[] => [
  paragraph(
    `${needleCount(needles)} needles, ${rangeName(needles)}; it starts at row ${row} with the carriage at the ${carriage}. ${also}`,
  ),
];
