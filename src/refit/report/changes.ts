import { needleCount } from "../../cloth/bed.ts";
import { needlesAt } from "../../cloth/counted-piece.ts";
import { type Fit, type FittedLook, type FittedPlacement, pieceOf } from "../../fit/fit.ts";
import { counted } from "../../report/words.ts";

/** What a piece that is fitted anew does otherwise than it was planned, in a knitter's words; empty where nothing. */
export function changesOf(before: Fit, now: Fit): readonly string[] {
  const piece = now.pieces[0]!;
  const was = pieceOf(before, piece.name);
  return [
    ...otherwise(piece.rows, was.rows, (rows) => counted(rows, "row")),
    ...otherwise(
      needleCount(needlesAt(piece, piece.rows)),
      needleCount(needlesAt(was, was.rows)),
      (needles) => `${counted(needles, "needle")} at the end`,
    ),
    ...now.placements.flatMap((placed) =>
      placementChanges(before.placements.find(({ index }) => index === placed.index)!, placed).map(
        (words) => `${placed.motif}: ${words}`,
      ),
    ),
  ];
}

const otherwise = (now: number, was: number, words: (amount: number) => string): readonly string[] =>
  now === was ? [] : [`${words(now)} instead of ${was}`];

function placementChanges(was: FittedPlacement, now: FittedPlacement): readonly string[] {
  const begins =
    now.firstRow === was.firstRow ? [] : [`begins at row ${now.firstRow} instead of ${was.firstRow}`];
  const ends = now.lastRow === was.lastRow ? [] : [`ends at row ${now.lastRow} instead of ${was.lastRow}`];
  return [
    ...begins,
    ...otherwise(now.repeats, was.repeats, (repeats) => counted(repeats, "repeat")),
    ...otherwise(now.columns, was.columns, (columns) => counted(columns, "column")),
    ...lookChanges(was, now),
    ...ends,
  ];
}

/** How the last section differs from the look that was planned for the end. */
function lookChanges(was: FittedPlacement, now: FittedPlacement): readonly string[] {
  const planned = was.sections.at(-1)!.look;
  const { look } = now.sections.at(-1)!;
  const row = now.lastRow - now.sections.at(-1)!.repeats * look.trace.repeatRows;
  const from = now.sections.length > 1 ? `from row ${row} on ` : "";
  const quantities = [...look.values]
    .filter(([name, value]) => planned.values.get(name) !== value)
    .map(([name, value]) => `${from}${name} ${value} instead of ${planned.values.get(name)}`);
  return [...quantities, ...countChanges(planned, look).map((words) => `${from}${words}`)];
}

const countChanges = (planned: FittedLook, look: FittedLook): readonly string[] =>
  look.segments.flatMap(({ name, needles, rows, pickup }) => {
    const same = planned.segments.find((one) => one.needles === needles && one.rows === rows);
    if (same?.pickup === pickup) return [];
    const instead = same
      ? ` instead of ${same.pickup}`
      : `, ${counted(needles, "needle")} across and ${counted(rows, "row")} up`;
    return [`${name} count ${pickup}${instead}`];
  });
