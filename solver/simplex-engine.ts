import * as z from "zod/mini";
import { zeroMeets } from "./constant-rows.ts";
import { SIMPLEX } from "./engine-names.ts";
import { impliedUpperBounds } from "./implied-bounds.ts";
import { mergedTerms } from "./merged-terms.ts";
import { pointOf } from "./point.ts";
import type { Column, Engine, EngineOptions, Outcome, Program, Row } from "./program.ts";
import { programFault } from "./program-fault.ts";
import { EndedEarly, watchedModel } from "./simplex-watch.ts";

/**
 * The greatest coefficient trusted in a program with whole columns. The engine calls a value whole when it is
 * within 1e-8 of a whole number, so a coefficient of 1e8 can hide a whole unit of a row; a tenth of it keeps
 * what is hidden below a tenth.
 */
const GREATEST_COEFFICIENT = 1e7;

/** The parts of the engine's answer that are relied on; everything else it says is ignored. */
const Answer = z.object({
  feasible: z.boolean(),
  bounded: z.boolean(),
  iter: z.optional(z.number()),
  solutionSet: z.record(z.string(), z.number()),
  _tableau: z.object({
    __isIntegral: z.optional(z.boolean()),
    model: z.object({ messages: z.array(z.string()) }),
  }),
});

/**
 * Solves a program with javascript-lp-solver, in this thread, which has to be ended where a caller must go on: the
 * clock and the signal are looked at between pivots.
 */
export const simplexEngine: Engine = async (program, options) => solveBySimplex(program, options);

/** {@link simplexEngine} without the promise. */
export function solveBySimplex(program: Program, options: EngineOptions = {}): Outcome {
  const fault = programFault(program) ?? beyondTrust(program);
  if (fault !== undefined) return failed(fault);

  const rows = program.rows.map((row) => ({ ...row, terms: mergedTerms(row.terms) }));
  if (rows.some(({ terms, relation, bound }) => terms.length === 0 && !zeroMeets(relation, bound)))
    return { status: "infeasible", nodes: 0, engine: SIMPLEX };
  if (program.columns.length === 0)
    return { status: "optimal", point: [], cost: 0, bound: 0, nodes: 0, engine: SIMPLEX };

  const model = modelOf(
    program.columns,
    rows.filter(({ terms }) => terms.length > 0),
  );
  const { timeLimitMs = Infinity, onProgress, signal } = options;
  const deadline = Date.now() + timeLimitMs;
  let told: Values | undefined;
  const watched = watchedModel(model, ({ nodes, bound, values }) => {
    if (onProgress !== undefined) {
      const found = values === undefined ? undefined : pointIn(program, values);
      const best = found === undefined ? {} : { best: found.cost };
      const point = found === undefined || values === told ? {} : { point: found.point };
      told = values;
      onProgress({ nodes, ...(bound === undefined ? {} : { bound }), ...best, ...point });
    }
    return signal?.aborted === true || Date.now() >= deadline;
  });
  if (signal?.aborted === true) return { status: "stopped", nodes: 0, engine: SIMPLEX };
  try {
    return outcomeOf(program, watched.solve());
  } catch (error) {
    if (!(error instanceof EndedEarly))
      return failed(`The engine stopped with an error: ${error instanceof Error ? error.message : error}`);
    const { nodes, bound, values } = watched.seen();
    return {
      status: "stopped",
      nodes,
      engine: SIMPLEX,
      ...(values === undefined ? {} : pointIn(program, values)),
      ...(bound === undefined ? {} : { bound }),
    };
  }
}

/**
 * The model in the engine's own form. Its names are v0, v1 ... and c0, c1 ... because names such as `result` or
 * `constructor` break its answer, and a row named like the objective is dropped. Upper bounds become rows, except
 * where other rows imply them: every row costs time in each pivot.
 *
 * Presolve is left off: it sets the cost of columns it fixes to zero, which spoils the bound.
 */
function modelOf(columns: readonly Column[], rows: readonly Row[]) {
  const variables: Record<string, Record<string, number>> = {};
  const ints: Record<string, 1> = {};
  const constraints: Record<string, { max: number } | { min: number } | { equal: number }> = {};
  columns.forEach(({ cost, whole }, column) => {
    variables[`v${column}`] = { cost };
    if (whole) ints[`v${column}`] = 1;
  });
  const constrain = (terms: Row["terms"], relation: Row["relation"], bound: number) => {
    const name = `c${Object.keys(constraints).length}`;
    constraints[name] =
      relation === "<=" ? { max: bound } : relation === ">=" ? { min: bound } : { equal: bound };
    for (const [column, coefficient] of terms) variables[`v${column}`]![name] = coefficient;
  };
  for (const { terms, relation, bound } of rows) constrain(terms, relation, bound);
  const implied = impliedUpperBounds(columns.length, rows);
  columns.forEach(({ upper }, column) => {
    if (upper !== undefined && implied[column]! > upper) constrain([[column, 1]], "<=", upper);
  });
  const settings = { presolve: false };
  return { optimize: "cost", opType: "min" as const, constraints, variables, ints, options: settings };
}

function outcomeOf(program: Program, answer: unknown): Outcome {
  const read = Answer.safeParse(answer);
  if (!read.success) return failed("The engine gave an answer that is not of the expected form.");
  const { feasible, bounded, iter, solutionSet, _tableau: tableau } = read.data;
  // A cycle makes the engine call that node infeasible, which proves nothing.
  if (tableau.model.messages.length > 0)
    return failed("The engine went round in circles on this program and gave up.");

  const anyWhole = program.columns.some(({ whole }) => whole);
  const nodes = Math.max(1, iter ?? 1);
  const found = feasible && bounded && (!anyWhole || tableau.__isIntegral === true);
  if (found) {
    const { point, cost } = pointIn(program, solutionSet);
    return { status: "optimal", point, cost, bound: cost, nodes, engine: SIMPLEX };
  }
  if (feasible && !bounded) return { status: "unbounded", nodes, engine: SIMPLEX };
  if (!feasible && tableau.__isIntegral !== true) return { status: "infeasible", nodes, engine: SIMPLEX };
  return failed("The engine ended without whole values and without a reason.");
}

type Values = Readonly<Record<string, number>>;

/** Columns that the engine does not mention are zero. */
const pointIn = (program: Program, values: Values) => pointOf(program, (column) => values[`v${column}`] ?? 0);

function beyondTrust(program: Program): string | undefined {
  if (!program.columns.some(({ whole }) => whole)) return undefined;
  for (const { name, terms } of program.rows)
    for (const [, coefficient] of terms)
      if (Math.abs(coefficient) > GREATEST_COEFFICIENT)
        return `Row "${name}" has the coefficient ${coefficient}, too large for this engine to tell whole values by.`;
  return undefined;
}

const failed = (reason: string): Outcome => ({ status: "failed", reason, engine: SIMPLEX });
