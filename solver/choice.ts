/** Choice programs: one option out of each group, at the least cost, and the next best ways to choose. */
export { best } from "./choice/best.ts";
export type {
  ChoiceProgram,
  ChoiceRow,
  Group,
  NoPicks,
  Option,
  Picks,
} from "./choice/choice-program.ts";
export {
  type Frontier,
  type FrontierOptions,
  frontier,
} from "./choice/frontier.ts";
export { type Joined, join, type Member } from "./choice/join.ts";
export { rivals } from "./choice/rivals.ts";
export { toProgram } from "./choice/to-program.ts";
