import { goOn, hold } from "./allowance.ts";
import { type Field, relation } from "./field.ts";
import type { Layout } from "./layouts.ts";
import type { Rows, Terms } from "./program-rows.ts";

/**
 * No two motifs of a piece on one spot: rows of the program for the cells that motifs which share rows may both want, and
 * for those of a row between two fields.
 *
 * @param terms by placement and layout; what is found is added to them
 */
export function keepSpotsApart(
  onPiece: readonly Field[],
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
): void {
  for (const sharing of groupsSharingRows(onPiece))
    keepApart(cellsSharedBy(sharing, layouts), sharing, layouts, terms, rows);
  for (const row of rowsBetween(onPiece))
    keepApart(cellsBetween(row, onPiece, layouts), onPiece, layouts, terms, rows);
}

/** The cells of a piece that a layout covers, as far as they tell whether it meets another; named for people. */
type Cells = (layout: Layout) => readonly string[];

/** Fields of a piece, those together that share rows with one another or with what lies between them. */
function groupsSharingRows(onPiece: readonly Field[]): readonly (readonly Field[])[] {
  let groups: (readonly Field[])[] = [];
  for (const field of onPiece) {
    const sharing = groups.filter((group) => group.some((other) => relation(field, other) !== "apart"));
    groups = [...groups.filter((group) => !sharing.includes(group)), [...sharing.flat(), field]];
  }
  return groups.filter(({ length }) => length > 1);
}

/**
 * Cells for motifs that share rows. Two rectangles meet exactly where they share the cell at one of their first rows and
 * one of their left edges. Fields below move all fields of such a group alike: those that overlap never change.
 */
function cellsSharedBy(sharing: readonly Field[], layouts: readonly (readonly Layout[])[]): Cells {
  const all = sharing.flatMap(({ index }) => layouts[index]!);
  const firstRows = distinct(all.map((layout) => rowsOf(layout)[0]));
  const leftEdges = distinct(all.map(({ panel }) => panel.leftEdge));
  return (layout) => {
    const [first, last] = rowsOf(layout);
    const edges = edgesUnder(layout, leftEdges);
    return firstRows
      .filter((row) => row >= first && row <= last)
      .flatMap((row) => edges.map((edge) => `spot ${layout.field.piece.name} ${row} ${edge}`));
  };
}

/** Rows at which one field of a piece ends and another begins, so that motifs of both may want them. */
const rowsBetween = (onPiece: readonly Field[]): readonly number[] =>
  distinct(onPiece.flatMap(({ sharedRows, toRow }) => (sharedRows?.last ? [toRow] : [])));

/** Cells of the row between two fields, wherever changes of length move it: taken by what leaves no margin there. */
function cellsBetween(
  row: number,
  onPiece: readonly Field[],
  layouts: readonly (readonly Layout[])[],
): Cells {
  const isOnIt = ({ field, bottom, top }: Layout): boolean =>
    (field.toRow === row && top === 0) || (field.fromRow === row && bottom === 0);
  const all = onPiece.flatMap(({ index }) => layouts[index]!).filter(isOnIt);
  const leftEdges = distinct(all.map(({ panel }) => panel.leftEdge));
  return (layout) =>
    isOnIt(layout)
      ? edgesUnder(layout, leftEdges).map((edge) => `between ${layout.field.piece.name} ${row} ${edge}`)
      : [];
}

const edgesUnder = ({ panel }: Layout, leftEdges: readonly number[]): readonly number[] =>
  leftEdges.filter((edge) => edge >= panel.leftEdge && edge < panel.rightEdge);

/** It is enough to let each of some cells be covered once. */
function keepApart(
  covered: Cells,
  fields: readonly Field[],
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
): void {
  const coveredBy = new Map<string, Set<number>>();
  for (const layout of fields.flatMap(({ index }) => layouts[index]!)) {
    goOn();
    for (const cell of covered(layout)) {
      const indices = coveredBy.get(cell);
      if (indices) indices.add(layout.field.index);
      else {
        hold(1);
        coveredBy.set(cell, new Set([layout.field.index]));
      }
    }
  }
  for (const { index } of fields)
    layouts[index]!.forEach((layout, at) => {
      goOn();
      // A cell that only one placement can cover keeps nothing apart.
      for (const cell of covered(layout))
        if (coveredBy.get(cell)!.size > 1) {
          hold(heldByTerm);
          terms[index]![at]!.push([rows.at(cell, "<=", 1), 1]);
        }
    });
}

/** A term of the program and of its text takes about a quarter of what a layout does. */
const heldByTerm = 0.25;

const distinct = (values: readonly number[]): readonly number[] => [...new Set(values)].sort((a, b) => a - b);

/** First and last row counted from the piece's cast-on, before fields below change its place. */
const rowsOf = ({ firstRow, height }: Layout): readonly [first: number, last: number] => [
  firstRow,
  firstRow + height,
];
