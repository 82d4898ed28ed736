import type { Program } from "../../../solver/program.ts";

/** Items of which several budgets let few in; with many of both it takes any engine long. */
export const knapsacks = (items: number, budgets: number): Program => ({
  columns: Array.from({ length: items }, (_, item) => ({
    name: `item ${item}`,
    cost: -(1000 + ((item * 37) % 411)),
    whole: true,
    upper: 1,
  })),
  rows: Array.from({ length: budgets }, (_, budget) => ({
    name: `budget ${budget}`,
    terms: Array.from(
      { length: items },
      (_, item) => [item, 500 + ((item * (31 + 12 * budget)) % 531)] as const,
    ),
    relation: "<=",
    bound: 179 * items,
  })),
});
