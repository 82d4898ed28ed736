import loadGlpk from "glpk.js/node";
import { lpNames } from "../../../solver/lp-names.ts";
import { programToLpText } from "../../../solver/lp-text.ts";
import type { Engine } from "../../../solver/program.ts";
import { type LpModel, readLp } from "./lp-reader.ts";

const glpk = await loadGlpk();

/** What GLPK finds for the program that an LP text states. */
export interface GlpkAnswer {
  readonly status: "optimal" | "infeasible" | "unbounded";
  readonly cost: number;
  readonly values: Readonly<Record<string, number>>;
}

/** Reads an LP text and lets GLPK (as glpk.js) solve what it says: the reference for text that others are to read. */
export function solveTextWithGlpk(text: string): GlpkAnswer {
  const model = readLp(text);
  const { status, z, vars } = solveModel(model, true);
  if (status === glpk.GLP_OPT) return { status: "optimal", cost: z, values: vars };
  // With whole columns GLPK says only that there is no answer; of which kind, the program without wholeness tells.
  const relaxed = solveModel(model, false).status;
  const kind = relaxed === glpk.GLP_UNBND ? "unbounded" : "infeasible";
  return { status: kind, cost: Number.NaN, values: {} };
}

function solveModel(model: LpModel, whole: boolean) {
  return glpk.solve(
    {
      name: "text",
      objective: {
        direction: model.minimise ? glpk.GLP_MIN : glpk.GLP_MAX,
        name: "objective",
        vars: model.objective.map(({ name, coefficient }) => ({ name, coef: coefficient })),
      },
      subjectTo: model.rows.map(({ name, terms, relation, bound }) => ({
        name,
        vars: terms.map((term) => ({ name: term.name, coef: term.coefficient })),
        bnds: {
          type: relation === "<=" ? glpk.GLP_UP : relation === ">=" ? glpk.GLP_LO : glpk.GLP_FX,
          lb: bound,
          ub: bound,
        },
      })),
      bounds: [
        ...boundsOf(model),
        ...(whole ? [] : [...model.binaries].map((name) => ({ name, type: glpk.GLP_DB, lb: 0, ub: 1 }))),
      ],
      ...(whole ? { binaries: [...model.binaries], generals: [...model.generals] } : {}),
    },
    { msglev: glpk.GLP_MSG_OFF, presol: whole, mipgap: 0 },
  ).result;
}

function boundsOf({ bounds }: LpModel) {
  return [...bounds].map(([name, { low, high }]) => ({
    name,
    type: low === high ? glpk.GLP_FX : high === Infinity ? glpk.GLP_LO : glpk.GLP_DB,
    lb: low,
    ub: high === Infinity ? 0 : high,
  }));
}

/** GLPK behind the engines' interface. */
export const glpkEngine: Engine = async (program) => {
  const { status, values } = solveTextWithGlpk(programToLpText(program));
  if (status !== "optimal") return { status, nodes: 1, engine: "GLPK" };
  const point = lpNames(program).columns.map((name) => values[name] ?? 0);
  const cost = program.columns.reduce((sum, column, index) => sum + column.cost * point[index]!, 0);
  return { status, point, cost, bound: cost, nodes: 1, engine: "GLPK" };
};
