import type { CountedPiece } from "../../cloth/counted-piece.ts";
import { allows } from "../../garment/allowed.ts";
import type { Garment, Placement } from "../../garment/garment.ts";
import type { Fit, FittedLook, FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { checkGrowth } from "./check-growth.ts";
import { checkLook, checkStretches } from "./check-look.ts";
import { reachOver } from "./reach-over.ts";
import { type Extent, type Walk, walk } from "./walk.ts";

/** Rows that add up, margins inside their limits, and every hanging on needles that are in work. */
export function checkPlacement(garment: Garment, fit: Fit, fitted: FittedPlacement): readonly Breach[] {
  const placement = garment.placements[fitted.index]!;
  const where = `${fitted.motif} on ${fitted.piece}`;
  const piece = fit.pieces.find(({ name }) => name === fitted.piece);
  const look = fit.looks.find(({ motif }) => motif.name === fitted.motif);
  if (!piece || !look) return [breach(where, "its piece or its look is missing")];
  return [
    ...checkSections(garment, look, fitted, where),
    ...checkGrowth(fitted, where),
    ...checkPlace(placement, fitted, piece),
    ...checkSides(placement, fitted, piece, where),
    ...checkChoices(placement, fitted, where),
  ];
}

/** Rows that add up as they are told, and every hanging on needles that are in work and inside the told margins. */
export function checkPlace(
  placement: Placement,
  fitted: FittedPlacement,
  piece: CountedPiece,
): readonly Breach[] {
  const where = `${fitted.motif} on ${fitted.piece}`;
  const [first] = fitted.sections;
  if (!first) return [breach(where, "has no section")];
  const runs = fitted.sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  const motif = walk(first.look.motif, runs);
  const reachAt = reachOver(first.look.motif, runs);
  // A lead-in by itself may not reach as far as the repeats that columns stand apart by.
  const leadIn = walk(first.look.motif, [{ values: first.look.values, repeats: 0 }]);
  return [
    ...checkRows(placement, fitted, piece, motif.rows, where),
    ...checkNeedles(placement, fitted, piece, motif, reachAt, where),
    ...checkGaps(placement, fitted, reachAt(leadIn.rows + 1), where),
  ];
}

/** Sections that are the motif's own, add up to the repeats told, and can be gone on with where they meet. */
function checkSections(
  garment: Garment,
  told: FittedLook,
  { sections, repeats }: FittedPlacement,
  where: string,
): readonly Breach[] {
  const [first, ...later] = sections;
  if (!first) return [];
  const breaches: Breach[] = [];
  if (first.look !== told) breaches.push(breach(where, "begins with another look than is told"));
  const inAll = sections.reduce((sum, section) => sum + section.repeats, 0);
  if (inAll !== repeats)
    breaches.push(breach(where, `${repeats} repeats are told, its sections have ${inAll}`));
  if (later.some((section) => section.repeats < 1))
    breaches.push(breach(where, "has a section of no repeat"));
  if (later.some(({ look }) => look.motif !== told.motif))
    breaches.push(breach(where, "has a section of another motif"));
  breaches.push(...later.flatMap(({ look }) => checkLook(garment, look)));
  if (told.motif.kind === "cord")
    breaches.push(...checkStretches(garment, told.motif, sections, (to, from) => to.run !== from.run));
  return breaches;
}

function checkRows(
  placement: Placement,
  fitted: FittedPlacement,
  piece: CountedPiece,
  motifRows: number,
  where: string,
): readonly Breach[] {
  const { firstRow, lastRow, margins } = fitted;
  const from = piece.marks.get(placement.from)!;
  const to = piece.marks.get(placement.to)!;
  const expected: readonly (readonly [string, number, number])[] = [
    ["first row", firstRow, from + margins.bottom],
    ["rows of the motif", lastRow - firstRow, motifRows],
    ["top margin", margins.top, to - lastRow],
  ];
  return expected
    .filter(([, told, found]) => told !== found)
    .map(([what, told, found]) => breach(where, `${what} is told as ${told}, and it is ${found}`));
}

/** Repeats, columns, gap and margins that the garment allows. */
export function checkChoices(
  placement: Placement,
  fitted: FittedPlacement,
  where: string,
): readonly Breach[] {
  const { margins } = fitted;
  const breaches: Breach[] = [];
  const allowed = (what: string, keeps: boolean, value: number): void => {
    if (!keeps) breaches.push(breach(where, `${what} ${value} is not allowed`));
  };
  allowed("repeats", allows(placement.repeats.allowed, fitted.repeats), fitted.repeats);
  allowed("columns", allows(placement.columns.allowed, fitted.columns), fitted.columns);
  if (fitted.columns > 1) allowed("gap", allows(placement.gap.allowed, fitted.gap), fitted.gap);
  allowed("bottom margin", allows(placement.margins.bottom, margins.bottom), margins.bottom);
  allowed("top margin", allows(placement.margins.top, margins.top), margins.top);
  const { sides } = placement.margins;
  const keeps = (side: "left" | "right"): boolean =>
    sides.kind === "centred" ? margins[side] >= sides.least : allows(sides[side], margins[side]);
  allowed("left margin", keeps("left"), margins.left);
  allowed("right margin", keeps("right"), margins.right);
  return breaches;
}

function checkNeedles(
  placement: Placement,
  fitted: FittedPlacement,
  piece: CountedPiece,
  { strands, standing, edge }: Walk,
  reachAt: (row: number) => Extent,
  where: string,
): readonly Breach[] {
  const breaches: Breach[] = [];
  const { sides } = placement.margins;
  const least = sides.kind === "centred" ? sides.least : 0;
  const points = strands.flatMap((strand) => strand.points);
  fitted.panel.centres.forEach((centre, column) => {
    const before = column === 0 ? edge.left : 0;
    const after = column === fitted.panel.centres.length - 1 ? edge.right : 0;
    const turned = isTurned(placement, fitted, column);
    for (let row = fitted.firstRow; row <= fitted.lastRow; row++) {
      const reach = turnedIf(turned, reachAt(row - fitted.firstRow));
      const left = piece.left[row]! + centre + reach.from - before;
      const right = piece.right[row]! - centre - reach.to - after;
      // The told margins hold where the motif comes nearest to an edge, so they are limits everywhere.
      if (left < least || right < least || left < fitted.margins.left || right < fitted.margins.right)
        breaches.push(
          breach(where, `row ${row}: only ${left} and ${right} needles beside column ${column + 1}`),
        );
      for (const { from, to } of standing.map((extent) => turnedIf(turned, extent)))
        if (!inWork(piece, row, centre + from - before, centre + to + after))
          breaches.push(breach(where, `row ${row}: column ${column + 1} does not lie on the cloth`));
    }
    for (const point of points) {
      const row = fitted.firstRow + point.row;
      const extent = turnedIf(turned, point);
      const from = centre + extent.from;
      const to = centre + extent.to;
      if (!inWork(piece, row, from, to))
        breaches.push(
          breach(where, `row ${row}: needles ${from}..${to} of column ${column + 1} are not in work`),
        );
    }
  });
  return breaches;
}

/** A panel that is told to lie where the motif does, and side margins told no smaller than it leaves them anywhere. */
function checkSides(
  placement: Placement,
  fitted: FittedPlacement,
  piece: CountedPiece,
  where: string,
): readonly Breach[] {
  const { sections, panel, firstRow, lastRow, margins } = fitted;
  const [first] = sections;
  if (!first) return [];
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  const { edge } = walk(first.look.motif, runs);
  const reachAt = reachOver(first.look.motif, runs);
  const room = { left: Number.POSITIVE_INFINITY, right: Number.POSITIVE_INFINITY };
  let [leftmost, rightmost] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let row = firstRow; row <= lastRow; row++) {
    const reach = reachAt(row - firstRow);
    const ends = panel.centres.map((centre, column) => {
      const { from, to } = turnedIf(isTurned(placement, fitted, column), reach);
      return { from: centre + from - edge.left, to: centre + to + edge.right };
    });
    const [left, right] = [ends[0]!.from, ends.at(-1)!.to];
    room.left = Math.min(room.left, piece.left[row]! + left);
    room.right = Math.min(room.right, piece.right[row]! - right);
    leftmost = Math.min(leftmost, left);
    rightmost = Math.max(rightmost, right);
  }
  const breaches = (["left", "right"] as const)
    .filter((side) => margins[side] < room[side])
    .map((side) => breach(where, `${side} margin is told as ${margins[side]}, and it is ${room[side]}`));
  // What else lies on the piece keeps clear of the panel as it is told.
  if (panel.leftEdge > leftmost || panel.rightEdge < rightmost)
    breaches.push(
      breach(
        where,
        `is told to lie between ${panel.leftEdge} and ${panel.rightEdge}, and it lies between ${leftmost} and ${rightmost}`,
      ),
    );
  return breaches;
}

/** Whether a column is to be the mirror image: it stands right of the middle one, or of the middle between two. */
const isTurned = (placement: Placement, { columns }: FittedPlacement, column: number): boolean =>
  placement.mirror && 2 * column > columns - 1;

const turnedIf = (turned: boolean, { from, to }: Extent): Extent =>
  turned ? { from: -to, to: -from } : { from, to };

function checkGaps(
  placement: Placement,
  fitted: FittedPlacement,
  reach: Extent,
  where: string,
): readonly Breach[] {
  const { centres, mirrored } = fitted.panel;
  const turned = centres.filter((_, column) => isTurned(placement, fitted, column)).length;
  if (mirrored !== turned)
    return [breach(where, `${mirrored} columns are told to be mirrored, and it is ${turned}`)];
  return centres.flatMap((centre, column) => {
    const next = centres[column + 1];
    if (next === undefined) return [];
    const { to } = turnedIf(isTurned(placement, fitted, column), reach);
    const { from } = turnedIf(isTurned(placement, fitted, column + 1), reach);
    if (next + from - (centre + to) === fitted.gap) return [];
    return [breach(where, `columns ${column + 1} and ${column + 2} are not ${fitted.gap} needles apart`)];
  });
}

function inWork(piece: CountedPiece, row: number, from: number, to: number): boolean {
  if (from < -piece.left[row]! || to > piece.right[row]!) return false;
  const { neck } = piece;
  if (!neck || row <= neck.row) return true;
  const above = row - neck.row;
  return to <= -neck.left[above]! || from >= neck.right[above]!;
}
