import type solver from "javascript-lp-solver";

/** A model of javascript-lp-solver, with the parts of its tableau that are watched. */
export type SimplexModel = InstanceType<typeof solver.Model>;

/** Thrown through the engine to end it. */
export class EndedEarly extends Error {}

/** What was seen of a solve so far. */
export interface Seen {
  readonly nodes: number;
  /** Least cost that any open node can still come to, once the root is solved. */
  readonly bound?: number;
  /** Values of the best whole point, by the model's own names; zeros are left out. */
  readonly values?: Readonly<Record<string, number>>;
}

/** Pivots between two looks at the clock: a few microseconds for the smallest models. */
const PIVOTS_BETWEEN_LOOKS = 16;

/**
 * Watches a model being solved, by the engine's own steps: it has no callback, but its loop and its simplex method go
 * through methods of the tableau, which are wrapped here. A pivot is looked at too, because phase 1 may go on for ever
 * within one node.
 *
 * The loop takes the open node of least relaxed cost first, and opens two wherever it asks which column to branch on.
 * A list of their costs kept beside it therefore tells which one it has taken, and that is the bound.
 *
 * @param isOver asked between pivots and at each better point; true ends the solve by {@link EndedEarly}
 * @returns what was seen until now
 */
export function watchModel(model: SimplexModel, isOver: (seen: Seen) => boolean): () => Seen {
  const { tableau } = model;
  const { pivot, simplex, isIntegral, getMostFractionalVar, addCutConstraints } = tableau;
  let nodes = 0;
  let pivots = 0;
  let bound: number | undefined;
  let best = Infinity;
  let values: Seen["values"];
  /** Relaxed costs of the open nodes, falling. */
  const open: number[] = [];
  let isRoot = true;

  const seen = (): Seen => ({
    nodes,
    ...(bound === undefined ? {} : { bound }),
    ...(values === undefined ? {} : { values }),
  });
  const look = (): void => {
    if (isOver(seen())) throw new EndedEarly();
  };

  tableau.pivot = (row, column) => {
    pivot.call(tableau, row, column);
    pivots += 1;
    if (pivots % PIVOTS_BETWEEN_LOOKS === 0) look();
  };
  tableau.addCutConstraints = (cuts) => {
    const taken = open.pop();
    // The loop drops nodes that cannot be better without working them out, and goes back to the best at its end.
    if (taken !== undefined) bound = Math.min(taken, best);
    addCutConstraints.call(tableau, cuts);
  };
  tableau.simplex = () => {
    simplex.call(tableau);
    nodes += 1;
    if (isRoot && tableau.feasible && tableau.bounded) bound = tableau.evaluation;
    isRoot = false;
    return tableau;
  };
  tableau.isIntegral = () => {
    const whole = isIntegral.call(tableau);
    // The loop asks only where a node is cheaper than the best so far.
    if (whole && tableau.bounded) {
      best = tableau.evaluation;
      values = tableau.getSolution().generateSolutionSet() as Readonly<Record<string, number>>;
      look();
    }
    return whole;
  };
  tableau.getMostFractionalVar = () => {
    const { evaluation } = tableau;
    let at = open.length;
    while (at > 0 && open[at - 1]! < evaluation) at -= 1;
    open.splice(at, 0, evaluation, evaluation);
    return getMostFractionalVar.call(tableau);
  };
  return seen;
}
