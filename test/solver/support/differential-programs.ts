import type { ChoiceProgram, ChoiceRow, Option } from "../../../solver/choice.ts";
import type { Column, Program, Relation, Row, Term } from "../../../solver/program.ts";
import type { Dice } from "../../support/random/dice.ts";

/** A cost as a sum of weights times amounts gives it: not whole, and often equal to another. */
const someCost = (dice: Dice): number =>
  dice.chance(20)
    ? dice.whole(0, 3)
    : Math.round(dice.whole(0, 40) * 37.5 + dice.whole(0, 9) * 1.2 * 1000) / 1000;

export interface ChoiceKind {
  /** Layouts of two placements that must have the same value of something, written value by value. */
  readonly tied: boolean;
  /** A row over all placements that lets only so much be used, or asks for so much. */
  readonly budgets: number;
  /** At most so many placements; 12 of a tree and 6 of others unless stated. */
  readonly places?: number;
  /** Amounts are so many times as large, and whole: costs in thousandths, yarn in milligrams. */
  readonly scale?: number;
}

/**
 * A choice program as garments make them: looks of some motifs, layouts of some placements, each of which hangs on one
 * motif, and for each placement and kind of look a row `layouts of the kind = looks of the kind`.
 */
export function choiceLike(
  dice: Dice,
  { tied, budgets, places = tied || budgets > 0 ? 6 : 12, scale = 1 }: ChoiceKind,
): ChoiceProgram {
  const kinds = dice.whole(1, 8);
  const values = dice.whole(2, 6);
  const motifs = dice.whole(1, 3);
  const motifOf = Array.from({ length: dice.whole(1, places) }, () => dice.whole(0, motifs - 1));
  const rows: ChoiceRow[] = [];
  const rowNamed = (name: string, relation: Relation, bound: number): number =>
    rows.push({ name, relation, bound }) - 1;
  const links = motifOf.map((_, place) =>
    Array.from({ length: kinds }, (_kind, kind) => rowNamed(`link ${place} ${kind}`, "=", 0)),
  );
  const pairs = tied
    ? motifOf.slice(1).flatMap((_, index) => (dice.chance(60) ? [[index, index + 1] as const] : []))
    : [];
  const ties = pairs.map(([first, second]) =>
    Array.from({ length: values }, (_, value) => rowNamed(`tie ${first} ${second} ${value}`, "=", 0)),
  );
  const uses = Array.from({ length: budgets }, () => dice.pick(["whole", "metres"] as const));
  const budgetRows = uses.map((unit, index) => {
    const each = unit === "whole" ? 6 : 9.5;
    const relation = dice.chance(80) ? "<=" : ">=";
    return rowNamed(
      `budget ${index}`,
      relation,
      (Math.round(each * motifOf.length * (dice.whole(50, 140) / 100) * 10) / 10) * scale,
    );
  });

  const look = (motif: number, kind: number): Option => ({
    name: `look ${kind}`,
    cost: someCost(dice),
    face: `${kind} ${dice.whole(0, 2)}`,
    terms: motifOf.flatMap((of, place) => (of === motif ? [[links[place]![kind]!, -1] as const] : [])),
  });
  const layout = (place: number): Option => {
    const kind = dice.whole(0, kinds - 1);
    const value = dice.whole(0, values - 1);
    return {
      name: `layout ${kind} ${value}`,
      cost: someCost(dice),
      face: `${kind} ${value}`,
      terms: [
        [links[place]![kind]!, 1],
        ...pairs.flatMap(([first, second], pair): Option["terms"] =>
          place === first ? [[ties[pair]![value]!, 1]] : place === second ? [[ties[pair]![value]!, -1]] : [],
        ),
        ...budgetRows.map(
          (row, index) =>
            [
              row,
              uses[index] === "whole" ? dice.whole(0, 12 * scale) : dice.whole(0, 1900 * scale) / 100,
            ] as const,
        ),
      ],
    };
  };
  return {
    groups: [
      ...Array.from({ length: motifs }, (_, motif) => ({
        name: `motif ${motif}`,
        options: Array.from({ length: kinds + dice.whole(0, 3) }, (_option, index) =>
          look(motif, index < kinds ? index : dice.whole(0, kinds - 1)),
        ),
      })),
      ...motifOf.map((_, place) => ({
        name: `place ${place}`,
        options: Array.from({ length: dice.whole(2, 3 * kinds + 6) }, () => layout(place)),
      })),
    ],
    rows,
  };
}

export interface GeneralKind {
  readonly columns: readonly [least: number, most: number];
  readonly rows: readonly [least: number, most: number];
  /** Of the whole columns; 1 makes them all 0/1. */
  readonly greatestUpper: number;
  /** So many in a hundred columns are whole. */
  readonly wholePercent: number;
  /** Coefficients are cut to this grain. */
  readonly grain: number;
  /** So many in a hundred columns have no upper bound. */
  readonly openPercent: number;
}

/** A program of no particular structure, most of whose rows hold at a point that was drawn first. */
export function generalProgram(dice: Dice, kind: GeneralKind): Program {
  const columns = Array.from({ length: dice.whole(...kind.columns) }, (_, index): Column => {
    const open = dice.chance(kind.openPercent);
    return {
      name: `x${index}`,
      cost: (dice.whole(-30, 60) * kind.grain) / kind.grain,
      whole: dice.chance(kind.wholePercent),
      ...(open ? {} : { upper: dice.whole(1, kind.greatestUpper) }),
    };
  });
  const point = columns.map(({ upper }) => dice.whole(0, upper ?? 5));
  const rows = Array.from({ length: dice.whole(...kind.rows) }, (_, index): Row => {
    const terms = columns.flatMap((_column, column): Term[] =>
      dice.chance(55) ? [[column, dice.whole(-4 / kind.grain, 12 / kind.grain) * kind.grain]] : [],
    );
    const at = terms.reduce((sum, [column, coefficient]) => sum + coefficient * point[column]!, 0);
    const relation = dice.chance(12) ? "=" : dice.pick(["<=", ">="] as const);
    const slack = relation === "=" ? 0 : dice.whole(0, 6) * (relation === "<=" ? 1 : -1);
    // One row in twenty is off on purpose, so that some programs have no point.
    const off = dice.chance(5) ? dice.whole(-9, 9) : 0;
    return { name: `r${index}`, terms, relation, bound: at + slack + off };
  });
  return { columns, rows };
}

/** Sets that have to cover all of some elements, each at a cost. */
export function coverProgram(dice: Dice): Program {
  const sets = dice.whole(6, 24);
  return {
    columns: Array.from({ length: sets }, (_, set) => ({
      name: `set ${set}`,
      cost: dice.whole(1, 9),
      whole: true,
      upper: 1,
    })),
    rows: Array.from({ length: dice.whole(4, 18) }, (_, element): Row => {
      const covering = Array.from({ length: sets }, (_set, set) => set).filter(() => dice.chance(25));
      return {
        name: `element ${element}`,
        terms: (covering.length > 0 ? covering : [0]).map((set): Term => [set, 1]),
        relation: ">=",
        bound: 1,
      };
    }),
  };
}
