/** Choice programs: one option out of each group, at the least cost, and the next best ways to choose. */
export type {
  ChoiceProgram,
  ChoiceRow,
  Group,
  NoPicks,
  Option,
  Picks,
  Rivals,
} from "./choice/choice-program.ts";
