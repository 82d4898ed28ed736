import type { ChoiceProgram, ChoiceRow, Group, Option } from "../../solver/choice.ts";
import type { Match } from "../garment/garment.ts";
import { type Field, neighbours, relation } from "./field.ts";
import { type Footing, footingKey, footingOf } from "./footing.ts";
import type { Layout } from "./layouts.ts";
import type { Look } from "./looks.ts";
import type { Measure } from "./measure.ts";
import { createRows, type Rows, type Terms } from "./program-rows.ts";
import { keepSpotsApart } from "./spots.ts";

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
    keepSpotsApart(onPiece, layouts, terms, rows);
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
