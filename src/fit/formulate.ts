import type { ChoiceProgram, ChoiceRow, Group, Option } from "../../solver/choice.ts";
import type { Field } from "./field.ts";
import { relation } from "./field.ts";
import { footingKey, footingOf, type Layout } from "./layouts.ts";
import type { Look } from "./looks.ts";

/** Every look and every layout that the rules allow: what the program chooses from. */
export interface Choices {
  /** By motif, in the order of the groups. */
  readonly looks: readonly (readonly Look[])[];
  /** By placement. */
  readonly layouts: readonly (readonly Layout[])[];
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
 */
export function formulate({ looks, layouts }: Choices): ChoiceProgram {
  const rows = createRows();
  const lookTerms = looks.map((ofMotif) => ofMotif.map((): Terms => []));
  const layoutTerms = layouts.map((ofPlacement) => ofPlacement.map((): Terms => []));
  const motifGroup = new Map(looks.map((ofMotif, group) => [ofMotif[0]?.motif.name ?? "", group]));

  layouts.forEach((ofPlacement, placement) => {
    const group = motifGroup.get(ofPlacement[0]?.field.placement.motif ?? "");
    if (group === undefined) return;
    const link = (key: string): number => rows.at(`link ${placement + 1} ${key}`, "=", 0);
    ofPlacement.forEach((layout, index) => {
      layoutTerms[placement]![index]!.push([link(footingKey(layout.footing)), 1]);
    });
    looks[group]!.forEach((look, index) => {
      lookTerms[group]![index]!.push([link(footingKey(footingOf(look.trace))), -1]);
    });
  });
  tiePieces(layouts, layoutTerms, rows);

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
  const face = `${repeats} repeats, ${change} rows longer, ${columns} columns, gap ${gap}`;
  return {
    name: `${field.index + 1}: ${footingKey(layout.footing)}, ${face}, shift ${shift}`,
    cost: layout.cost,
    terms,
    face,
  };
}

/** Rows for placements that share a piece: one change of length for one field, a limit on all, no two on one spot. */
function tiePieces(layouts: readonly (readonly Layout[])[], terms: Terms[][], rows: Rows): void {
  const fields = layouts.map((ofPlacement) => ofPlacement[0]?.field);
  fields.forEach((field, one) => {
    if (!field) return;
    for (let other = one + 1; other < fields.length; other++) {
      const otherField = fields[other];
      if (!otherField || otherField.piece !== field.piece) continue;
      if (relation(field, otherField) === "same") tieChange(layouts, terms, rows, one, other);
      if (relation(field, otherField) !== "apart") keepApart(layouts, terms, rows, one, other);
    }
  });
  limitChanges(fields, layouts, terms, rows);
}

/** One field has one change of length: for each footing they share and each value, as many here as there. */
function tieChange(
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
  one: number,
  other: number,
): void {
  const sameMotif = layouts[one]![0]!.field.placement.motif === layouts[other]![0]!.field.placement.motif;
  const row = (layout: Layout): number => {
    const shared = sameMotif ? ` ${footingKey(layout.footing)}` : "";
    return rows.at(`change ${one + 1}=${other + 1}: ${layout.change}${shared}`, "=", 0);
  };
  for (const [placement, sign] of [
    [one, 1],
    [other, -1],
  ] as const)
    layouts[placement]!.forEach((layout, index) => {
      terms[placement]![index]!.push([row(layout), sign]);
    });
}

/** Of two placements on overlapping rows: a layout here, or one of those there that would lie on the same spot. */
function keepApart(
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
  one: number,
  other: number,
): void {
  const spots = new Map<string, { layout: Layout; members: number[] }>();
  layouts[one]!.forEach((layout, index) => {
    const key = spotKey(layout);
    const spot = spots.get(key) ?? { layout, members: [] };
    spot.members.push(index);
    spots.set(key, spot);
  });
  for (const [key, { layout, members }] of spots) {
    const meeting = layouts[other]!.flatMap((there, index) => (meet(layout, there) ? [index] : []));
    if (meeting.length === 0) continue;
    const row = rows.at(`apart ${one + 1} and ${other + 1}: ${key}`, "<=", 1);
    for (const index of members) terms[one]![index]!.push([row, 1]);
    for (const index of meeting) terms[other]![index]!.push([row, 1]);
  }
}

/** First and last row counted from the piece's cast-on, before fields below change its place. */
const rowsOf = (layout: Layout): readonly [first: number, last: number] => {
  const first = layout.field.fromRow + layout.bottom;
  return [first, first + layout.footing.leadRows + layout.repeats * layout.footing.repeatRows];
};

const spotKey = (layout: Layout): string =>
  `rows ${rowsOf(layout).join("-")} boundaries ${layout.panel.leftEdge}..${layout.panel.rightEdge}`;

function meet(one: Layout, other: Layout): boolean {
  const [firstRow, lastRow] = rowsOf(one);
  const [otherFirst, otherLast] = rowsOf(other);
  const sharesRows = firstRow <= otherLast && otherFirst <= lastRow;
  const sharesNeedles =
    one.panel.leftEdge < other.panel.rightEdge && other.panel.leftEdge < one.panel.rightEdge;
  return sharesRows && sharesNeedles;
}

/** The changes of all fields of a piece together keep its grow and shrink. */
function limitChanges(
  fields: readonly (Field | undefined)[],
  layouts: readonly (readonly Layout[])[],
  terms: Terms[][],
  rows: Rows,
): void {
  const pieces = new Map<string, Field[]>();
  for (const field of fields)
    if (field) pieces.set(field.piece.name, [...(pieces.get(field.piece.name) ?? []), field]);
  for (const [name, ofPiece] of pieces) {
    const apart = ofPiece.filter(
      (field, index) => !ofPiece.slice(0, index).some((earlier) => relation(field, earlier) === "same"),
    );
    if (apart.length < 2) continue;
    const most = Math.max(...apart.map(({ mostChange }) => mostChange));
    const least = Math.min(...apart.map(({ leastChange }) => leastChange));
    for (const field of apart)
      layouts[field.index]!.forEach((layout, index) => {
        if (layout.change === 0) return;
        terms[field.index]![index]!.push(
          [rows.at(`grow ${name}`, "<=", most), layout.change],
          [rows.at(`shrink ${name}`, ">=", least), layout.change],
        );
      });
  }
}
