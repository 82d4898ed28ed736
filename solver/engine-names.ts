/** What the engines are called in outcomes. */
export const SIMPLEX = "javascript-lp-solver";
export const HIGHS = "HiGHS";
