import solver from "javascript-lp-solver";

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

type Model = InstanceType<typeof solver.Model>;
type Cuts = Parameters<Model["tableau"]["addCutConstraints"]>[0];

/** Pivots between two looks at the clock: a few microseconds for the smallest models. */
const PIVOTS_BETWEEN_LOOKS = 16;

/**
 * A tableau of javascript-lp-solver that is watched by the engine's own steps: the engine has no callback, but its loop
 * and its simplex method go through methods of the tableau. A pivot is looked at too, because phase 1 may go on for ever
 * within one node.
 *
 * The loop takes the open node of least relaxed cost first, and opens two wherever it asks which column to branch on.
 * A list of their costs kept beside it therefore tells which one it has taken, and that is the bound.
 *
 * It is a class of its own, since methods put on the one object instead make every pivot nearly twice as slow.
 */
class WatchedTableau extends solver.Tableau {
  isOver: (seen: Seen) => boolean = () => false;
  #nodes = 0;
  #pivots = 0;
  #bound: number | undefined;
  #best = Infinity;
  #values: Seen["values"];
  /** Relaxed costs of the open nodes, falling. */
  readonly #open: number[] = [];

  get seen(): Seen {
    return {
      nodes: this.#nodes,
      ...(this.#bound === undefined ? {} : { bound: this.#bound }),
      ...(this.#values === undefined ? {} : { values: this.#values }),
    };
  }

  override pivot(row: number, column: number): void {
    super.pivot(row, column);
    this.#pivots += 1;
    if (this.#pivots % PIVOTS_BETWEEN_LOOKS === 0) this.#look();
  }

  override addCutConstraints(cuts: Cuts): void {
    const taken = this.#open.pop();
    // The loop drops nodes that cannot be better without working them out, and goes back to the best at its end.
    if (taken !== undefined) this.#bound = Math.min(taken, this.#best);
    super.addCutConstraints(cuts);
  }

  override simplex(): this {
    super.simplex();
    this.#nodes += 1;
    if (this.#nodes === 1 && this.feasible && this.bounded) this.#bound = this.evaluation;
    return this;
  }

  override isIntegral(): boolean {
    const whole = super.isIntegral();
    // The loop asks only where a node is cheaper than the best so far.
    if (whole && this.bounded) {
      this.#best = this.evaluation;
      this.#values = this.getSolution().generateSolutionSet() as Readonly<Record<string, number>>;
      this.#look();
    }
    return whole;
  }

  override getMostFractionalVar(): ReturnType<Model["tableau"]["getMostFractionalVar"]> {
    const open = this.#open;
    let at = open.length;
    while (at > 0 && open[at - 1]! < this.evaluation) at -= 1;
    open.splice(at, 0, this.evaluation, this.evaluation);
    return super.getMostFractionalVar();
  }

  #look(): void {
    if (this.isOver(this.seen)) throw new EndedEarly();
  }
}

/** Solves a model, and can tell what was seen of that until now. */
export interface WatchedModel {
  /** @throws EndedEarly where it was over before the solve was done */
  readonly solve: () => unknown;
  readonly seen: () => Seen;
}

/**
 * A model in javascript-lp-solver's own form, ready to be solved and watched.
 *
 * @param isOver asked between pivots and at each better point; true ends the solve
 */
export function watchedModel(
  model: Parameters<Model["loadJson"]>[0],
  isOver: (seen: Seen) => boolean,
): WatchedModel {
  const loaded = new solver.Model();
  const tableau = new WatchedTableau();
  tableau.isOver = isOver;
  // Before anything is loaded, because the tableau numbers what is.
  loaded.tableau = tableau;
  loaded.loadJson(model);
  return {
    // The third argument asks for the whole solution object: only that counts nodes and tells of cycles.
    solve: () => solver.Solve(loaded, undefined, true),
    seen: () => tableau.seen,
  };
}
