import type { ChoiceProgram, ChoiceRow, Group, Option } from "../../solver/choice.ts";
import type { Match } from "../garment/garment.ts";
import { goOn, hold } from "./allowance.ts";
import { type Field, neighbours, relation } from "./field.ts";
import { type Footing, footingKey, footingOf } from "./footing.ts";
import type { Layout } from "./layouts.ts";
import type { Look } from "./looks.ts";
import type { Measure } from "./measure.ts";

/** Every look and every layout that the rules allow: what the program chooses from. */
export interface Choices {
  readonly matches: readonly Match[];
  /** What the amounts of the layouts are amounts of. */
  readonly measures: readonly Measure[];
  /** What the amounts may add up to, whatever else is asked of them. */
  readonly limits: readonly Limit[];
  /** By motif, in the order of the groups. */
  readonly looks: readonly (readonly Look[])[];
  /** By placement. */
  readonly layouts: readonly (readonly Layout[])[];
}

/** That what is chosen adds up, in a measure (by index), to no more or no less than a bound. */
export interface Limit extends ChoiceRow {
  readonly measure: number;
}

/**
 * The fit as a choice program: a look for each motif, then a layout for each placement.
 *
 * Products (repeats x interval) and square roots (spans) never enter it: they are worked out beforehand, one option
 * for each combination. What ties a layout to its look is written footing by footing, `layouts on this footing =
 * looks on this footing`. Each placement hangs on one motif only, so these rows form a tree, the matrix of such a
 * tree is totally unimodular, and the relaxation's optimum is whole by itself: no branching, no big numbers.
 * What ties placements of one piece together is written value by value for the same reason; only the sum of
 * changes of length and the keeping apart of panels are true budgets that can make the engine branch.
 *
 * @param footingUnder the footing on which a look lets layouts stand
 * @param limits on what was measured when the choices were worked out; true budgets, which can make the engine branch
 */
export function formulate(
  { looks, layouts, matches, measures, limits: ownLimits }: Choices,
  footingUnder: (look: Look) => Footing = ({ trace, footing }) => footing ?? footingOf(trace),
  limits: readonly Limit[] = [],
): ChoiceProgram {
  const rows = createRows();
  const lookTerms = looks.map((ofMotif) => ofMotif.map((): Terms => []));
  const layoutTerms = layouts.map((ofPlacement) => ofPlacement.map((): Terms => []));
  const motifGroup = new Map(looks.map((ofMotif, group) => [ofMotif[0]?.motif.name, group]));

  layouts.forEach((ofPlacement, placement) => {
    const group = motifGroup.get(ofPlacement[0]?.field.placement.motif);
    if (group === undefined) return;
    const link = (key: string): number => rows.at(`link ${placement + 1} ${key}`, "=", 0);
    ofPlacement.forEach((layout, index) => {
      layoutTerms[placement]![index]!.push([link(footingKey(layout.footing)), 1]);
    });
    looks[group]!.forEach((look, index) => {
      lookTerms[group]![index]!.push([link(footingKey(footingUnder(look))), -1]);
    });
  });
  tiePieces(layouts, layoutTerms, rows);
  tieMatches(matches, layouts, layoutTerms, rows);
  for (const { measure, ...limit } of [...ownLimits, ...limits]) {
    const row = rows.list.push(limit) - 1;
    looks.forEach((ofMotif, group) => {
      ofMotif.forEach((look, index) => {
        lookTerms[group]![index]!.push([row, measures[measure]!.ofLook(look)]);
      });
    });
    layouts.forEach((ofPlacement, placement) => {
      ofPlacement.forEach(({ amounts }, index) => {
        layoutTerms[placement]![index]!.push([row, amounts[measure]!]);
      });
    });
  }

  return {
    rows: rows.list,
    groups: [
      ...looks.map(
        (ofMotif, group): Group => ({
          name: `look of ${ofMotif[0]?.motif.name ?? group}`,
          options: ofMotif.map((look, index) => lookOption(look, lookTerms[group]![index]!)),
        }),
      ),
      ...layouts.map(
        (ofPlacement, placement): Group => ({
          name: `layout ${placement + 1} on ${ofPlacement[0]?.field.piece.name ?? ""}`,
          options: ofPlacement.map((layout, index) => layoutOption(layout, layoutTerms[placement]![index]!)),
        }),
      ),
    ],
  };
}

type Terms = [row: number, coefficient: number][];

interface Rows {
  readonly list: ChoiceRow[];
  at(name: string, relation: ChoiceRow["relation"], bound: number): number;
}

function createRows(): Rows {
  const list: ChoiceRow[] = [];
  const known = new Map<string, number>();
  return {
    list,
    at(name, relation, bound) {
      const row = known.get(name) ?? list.push({ name, relation, bound }) - 1;
      known.set(name, row);
      return row;
    },
  };
}

function lookOption(look: Look, terms: Terms): Option {
  const quantities = [...look.values].map(([name, value]) => `${name} ${value}`);
  const counts = look.segments.map(({ pickup }) => pickup);
  const face = [...quantities, ...(counts.length > 0 ? [`count ${counts.join(" ")}`] : [])].join(", ");
  return { name: `${look.motif.name}: ${face}`, cost: look.cost, terms, face };
}

function layoutOption(layout: Layout, terms: Terms): Option {
  const { field, repeats, change, columns, gap, shift } = layout;
  const face = `${repeats} repeats, ${change} rows longer, ${columns} columns, gap ${gap}${growthFace(layout)}`;
  return {
    name: `${field.index + 1}: ${footingKey(layout.footing)}, ${face}, shift ${shift}`,
    cost: layout.cost,
    terms,
    face,
  };
}

const growthFace = ({ sections = [] }: Layout): string =>
  sections
    .map(({ look: { values }, repeats }) => `, ${repeats} of ${[...values.values()].join(" ")}`)
    .join("");

/**
 * Placements that are equally far in their repeat at a mark: for each footing and each phase, as many layouts of one
 * as of the next.
 */
function tieMatches(
  matches: readonly Match[],
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
): void {
  matches.forEach(({ placements }, match) => {
    placements.slice(1).forEach((other, index) => {
      for (const [placement, sign] of [
        [placements[index]!, 1],
        [other, -1],
      ] as const) {
        // The phases of a placement stand in the order of the matches that name it.
        const own = matches
          .slice(0, match)
          .filter((earlier) => earlier.placements.includes(placement)).length;
        layouts[placement]!.forEach(({ footing, phases }, at) => {
          const name = `match ${match + 1}.${index + 1}: ${footingKey(footing)} phase ${phases[own]}`;
          terms[placement]![at]!.push([rows.at(name, "=", 0), sign]);
        });
      }
    });
  });
}

/** Rows for placements that share a piece: one change of length for one field, a limit on all, no two on one spot. */
function tiePieces(layouts: readonly (readonly Layout[])[], terms: Terms[][], rows: Rows): void {
  const fields = layouts.flatMap((ofPlacement) => (ofPlacement[0] ? [ofPlacement[0].field] : []));
  const inVariants = (field: Field): boolean => layouts[field.index]![0]!.variant !== undefined;
  fields.forEach((field, at) => {
    const [next, ...others] = neighbours(field, fields.slice(at + 1));
    if (!next) return;
    if (inVariants(field)) tieVariants(layouts, terms, rows, field.index, next.index);
    else
      for (const other of [next, ...others])
        if (relation(field, other) === "same") tieChange(layouts, terms, rows, field.index, other.index);
  });
  for (const piece of new Set(fields.map((field) => field.piece))) {
    const onPiece = fields.filter((field) => field.piece === piece);
    for (const sharing of groupsSharingRows(onPiece))
      keepApart(cellsSharedBy(sharing, layouts), sharing, layouts, terms, rows);
    for (const row of rowsBetween(onPiece))
      keepApart(cellsBetween(row, onPiece, layouts), onPiece, layouts, terms, rows);
    // Variants keep the limits of the piece's length by themselves.
    if (!inVariants(onPiece[0]!)) limitChanges(onPiece, layouts, terms, rows);
  }
}

/** One field has one change of length. */
const tieChange = (...[layouts, terms, rows, one, other]: Tied): void =>
  tieByValue(layouts, terms, rows, one, other, ({ change }) => `change ${one + 1}=${other + 1}: ${change}`);

const tieVariants = (...[layouts, terms, rows, one, other]: Tied): void =>
  tieByValue(layouts, terms, rows, one, other, ({ variant }) => `length ${one + 1}=${other + 1}: ${variant}`);

type Tied = [
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
  one: number,
  other: number,
];

/** Two placements agree in a value: for each footing they share and each value, as many here as there. */
function tieByValue(
  ...[layouts, terms, rows, one, other, readValue]: [...Tied, readValue: (layout: Layout) => string]
): void {
  const sameMotif = layouts[one]![0]!.field.placement.motif === layouts[other]![0]!.field.placement.motif;
  const row = (layout: Layout): number => {
    const shared = sameMotif ? ` ${footingKey(layout.footing)}` : "";
    return rows.at(`${readValue(layout)}${shared}`, "=", 0);
  };
  for (const [placement, sign] of [
    [one, 1],
    [other, -1],
  ] as const)
    layouts[placement]!.forEach((layout, index) => {
      terms[placement]![index]!.push([row(layout), sign]);
    });
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

/** No two motifs of a piece on one spot: it is enough to let each of some cells be covered once. */
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

/** The changes of all fields of a piece together keep its grow and shrink, where it is asked for at every gauge. */
function limitChanges(
  onPiece: readonly Field[],
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
): void {
  const apart = onPiece.filter(
    (field, index) => !onPiece.slice(0, index).some((earlier) => relation(field, earlier) === "same"),
  );
  if (apart.length < 2) return;
  const { piece, steadyChanges } = onPiece[0]!;
  const most = Math.min(
    Math.max(...apart.map(({ mostChange }) => mostChange)),
    steadyChanges?.most ?? Number.POSITIVE_INFINITY,
  );
  const least = Math.max(
    Math.min(...apart.map(({ leastChange }) => leastChange)),
    steadyChanges?.least ?? Number.NEGATIVE_INFINITY,
  );
  const grows = (): number => rows.at(`grow ${piece.name}`, "<=", most);
  const shrinks = (): number => rows.at(`shrink ${piece.name}`, ">=", least);
  // A piece that has to change is held to it even where no layout of it changes anything.
  if (most < 0) grows();
  if (least > 0) shrinks();
  for (const field of apart)
    layouts[field.index]!.forEach((layout, index) => {
      if (layout.change === 0) return;
      terms[field.index]![index]!.push([grows(), layout.change], [shrinks(), layout.change]);
    });
}
