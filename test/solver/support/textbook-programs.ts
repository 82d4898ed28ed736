import type { Program, Relation, Row, Term } from "../../../solver/program.ts";

/** A program with an optimum that somebody published. */
export interface Textbook {
  readonly name: string;
  /** Where program and optimum stand; what was not looked up again says "from memory". */
  readonly source: string;
  readonly program: Program;
  /** Least cost, or undefined where the program has no point. A greatest value stands with its sign changed. */
  readonly optimum: number | undefined;
}

const row = (terms: readonly Term[], relation: Relation, bound: number): Row => ({
  name: `r${relation}${bound}`,
  terms,
  relation,
  bound,
});

/** Rows of coefficients, one for each column. */
const dense = (coefficients: readonly number[], relation: Relation, bound: number): Row =>
  row(
    coefficients.map((coefficient, column): Term => [column, coefficient]),
    relation,
    bound,
  );

const columns = (costs: readonly number[], more: { whole: boolean; upper?: number }) =>
  costs.map((cost, index) => ({ name: `x${index + 1}`, cost, ...more }));

const binary = { whole: true, upper: 1 };
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);

/** Every task done once; every worker does at most one, or exactly one where there are as many of both. */
function assignment(costs: readonly (readonly number[])[]): Program {
  const tasks = costs[0]!.length;
  const at = (worker: number, task: number): number => worker * tasks + task;
  return {
    columns: columns(costs.flat(), binary),
    rows: [
      ...costs.map((_, worker) =>
        row(
          upTo(tasks).map((task): Term => [at(worker, task), 1]),
          "<=",
          1,
        ),
      ),
      ...upTo(tasks).map((task) =>
        row(
          costs.map((_worker, worker): Term => [at(worker, task), 1]),
          "=",
          1,
        ),
      ),
    ],
  };
}

/** The fewest of some things such that each set holds one of them. */
const hitting = (things: number, sets: readonly (readonly number[])[]): Program => ({
  columns: columns(new Array<number>(things).fill(1), binary),
  rows: sets.map((set) =>
    row(
      set.map((thing): Term => [thing, 1]),
      ">=",
      1,
    ),
  ),
});

/** The lines of the affine space over three elements: triples of points that add up to nothing. */
function linesOfThrees(dimension: number): readonly (readonly number[])[] {
  const points = 3 ** dimension;
  const digits = (point: number): readonly number[] =>
    upTo(dimension).map((at) => Math.floor(point / 3 ** at) % 3);
  const third = (a: number, b: number): number => {
    const [first, second] = [digits(a), digits(b)];
    return upTo(dimension).reduce((sum, at) => sum + ((6 - first[at]! - second[at]!) % 3) * 3 ** at, 0);
  };
  return upTo(points).flatMap((a) =>
    upTo(points)
      .map((b) => [a, b, third(a, b)])
      .filter(([one, two, three]) => one! < two! && two! < three!),
  );
}

/** For each square of a board the squares from which a queen reaches it, its own included. */
function queensReaching(size: number): readonly (readonly number[])[] {
  const squares = upTo(size * size).map((square) => [Math.floor(square / size), square % size] as const);
  return squares.map(([rank, file]) =>
    upTo(size * size).filter((square) => {
      const [r, f] = squares[square]!;
      return r === rank || f === file || r - f === rank - file || r + f === rank + file;
    }),
  );
}

const knapsackValues = [
  360, 83, 59, 130, 431, 67, 230, 52, 93, 125, 670, 892, 600, 38, 48, 147, 78, 256, 63, 17, 120, 164, 432, 35,
  92, 110, 22, 42, 50, 323, 514, 28, 87, 73, 78, 15, 26, 78, 210, 36, 85, 189, 274, 43, 33, 10, 19, 389, 276,
  312,
];
const knapsackWeights = [
  7, 0, 30, 22, 80, 94, 11, 81, 70, 64, 59, 18, 0, 36, 3, 8, 15, 42, 9, 0, 42, 47, 52, 32, 26, 48, 55, 6, 29,
  84, 2, 4, 18, 56, 7, 29, 93, 44, 71, 3, 86, 66, 31, 65, 0, 79, 20, 65, 52, 13,
];

export const textbookPrograms: readonly Textbook[] = [
  {
    name: "three markets served from two plants",
    source:
      "G. B. Dantzig, Linear Programming and Extensions, 1963, chapter 3.3, with the data of the GAMS library's trnsport; optimum from memory",
    optimum: 153.675,
    program: {
      columns: columns(
        [2.5, 1.7, 1.8, 2.5, 1.8, 1.4].map((thousandMiles) => thousandMiles * 0.09),
        { whole: false },
      ),
      rows: [
        dense([1, 1, 1, 0, 0, 0], "<=", 350),
        dense([0, 0, 0, 1, 1, 1], "<=", 600),
        dense([1, 0, 0, 1, 0, 0], ">=", 325),
        dense([0, 1, 0, 0, 1, 0], ">=", 300),
        dense([0, 0, 1, 0, 0, 1], ">=", 275),
      ],
    },
  },
  {
    name: "eight agents and eight tasks",
    source: "GLPK's examples, assign.mod, data of N. Christofides, which states the optimum",
    optimum: 76,
    program: assignment([
      [13, 21, 20, 12, 8, 26, 22, 11],
      [12, 36, 25, 41, 40, 11, 4, 8],
      [35, 32, 13, 36, 26, 21, 13, 37],
      [34, 54, 7, 8, 12, 22, 11, 40],
      [21, 6, 45, 18, 24, 34, 12, 48],
      [42, 19, 39, 15, 14, 16, 28, 46],
      [16, 34, 38, 3, 34, 40, 22, 24],
      [26, 20, 5, 17, 45, 31, 37, 43],
    ]),
  },
  {
    name: "five workers and four tasks",
    source: "developers.google.com/optimization/assignment, which states the optimum",
    optimum: 265,
    program: assignment([
      [90, 80, 75, 70],
      [35, 85, 55, 65],
      [125, 95, 90, 95],
      [45, 110, 95, 115],
      [50, 100, 90, 100],
    ]),
  },
  {
    name: "fifty items in a knapsack",
    source: "developers.google.com/optimization/pack/knapsack; optimum from memory",
    optimum: -7534,
    program: {
      columns: columns(
        knapsackValues.map((value) => -value),
        binary,
      ),
      rows: [dense(knapsackWeights, "<=", 850)],
    },
  },
  {
    name: "presses and lathes",
    source:
      "B. W. Taylor, Introduction to Management Science, module C (branch and bound); optimum from memory",
    optimum: -1000,
    program: {
      columns: columns([-100, -150], { whole: true }),
      rows: [dense([8000, 4000], "<=", 40_000), dense([15, 30], "<=", 200)],
    },
  },
  {
    name: "doors and windows from three plants",
    source:
      "F. S. Hillier and G. J. Lieberman, Introduction to Operations Research, the prototype example; from memory",
    optimum: -36,
    program: {
      columns: columns([-3, -5], { whole: false }),
      rows: [dense([1, 0], "<=", 4), dense([0, 2], "<=", 12), dense([3, 2], "<=", 18)],
    },
  },
  {
    name: "factories and warehouses in two cities",
    source:
      "F. S. Hillier and G. J. Lieberman, Introduction to Operations Research, binary programming; from memory",
    optimum: -14,
    program: {
      columns: columns([-9, -5, -6, -4], binary),
      rows: [
        dense([6, 3, 5, 2], "<=", 10),
        dense([0, 0, 1, 1], "<=", 1),
        dense([-1, 0, 1, 0], "<=", 0),
        dense([0, -1, 0, 1], "<=", 0),
      ],
    },
  },
  {
    name: "a program on which the simplex method can go round in circles",
    source: "E. M. L. Beale, Naval Research Logistics Quarterly 2, 1955; from memory",
    optimum: -0.05,
    program: {
      columns: columns([-0.75, 150, -0.02, 6], { whole: false }),
      rows: [
        dense([0.25, -60, -0.04, 9], "<=", 0),
        dense([0.5, -90, -0.02, 3], "<=", 0),
        dense([0, 0, 1, 0], "<=", 1),
      ],
    },
  },
  {
    name: "a cube on which the simplex method visits every corner",
    source:
      "V. Klee and G. J. Minty, 1972, as in V. Chvatal, Linear Programming, 1983, chapter 4; from memory",
    optimum: -10_000,
    program: {
      columns: columns([-100, -10, -1], { whole: false }),
      rows: [dense([1, 0, 0], "<=", 1), dense([20, 1, 0], "<=", 100), dense([200, 20, 1], "<=", 10_000)],
    },
  },
  {
    name: "points that meet every line of a plane of nine",
    source:
      "9 less the largest cap set of 4 (OEIS A090245), from memory; as a program D. R. Fulkerson, G. L. Nemhauser and L. E. Trotter, 1974",
    optimum: 5,
    program: hitting(9, linesOfThrees(2)),
  },
  {
    name: "queens that reach every square of a board of 5 by 5",
    source: "OEIS A075458, from memory",
    optimum: 3,
    program: hitting(25, queensReaching(5)),
  },
  {
    name: "five pigeons in four holes",
    source: "the pigeonhole principle",
    optimum: undefined,
    program: {
      columns: columns(new Array<number>(20).fill(0), binary),
      rows: [
        ...upTo(5).map((pigeon) =>
          row(
            upTo(4).map((hole): Term => [4 * pigeon + hole, 1]),
            "=",
            1,
          ),
        ),
        ...upTo(4).map((hole) =>
          row(
            upTo(5).map((pigeon): Term => [4 * pigeon + hole, 1]),
            "<=",
            1,
          ),
        ),
      ],
    },
  },
];

/**
 * So many of these points are alike that the usual engine works out thousands of nodes, which takes it seconds: more
 * than the guard's patience.
 */
export const linesOfTwentySeven: Textbook = {
  name: "points that meet every line of a space of 27",
  source: "27 less the largest cap set of 9 (OEIS A090245), from memory",
  optimum: 18,
  program: hitting(27, linesOfThrees(3)),
};
