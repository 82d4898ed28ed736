import fc from "fast-check";
import type { ChoiceProgram, Option } from "../../../solver/choice.ts";
import type { Program, Relation } from "../../../solver/program.ts";

const relation = fc.constantFrom<Relation>("<=", "=", ">=");

/** Small programs of whole columns with upper bounds, so that every point can be tried. */
export const wholeProgram: fc.Arbitrary<Program> = fc.integer({ min: 1, max: 5 }).chain((count) =>
  fc.record({
    columns: fc.array(
      fc.record({
        name: fc.constantFrom("a", "b", "result", "feasible", "e3", "end"),
        cost: fc.integer({ min: -6, max: 6 }),
        whole: fc.constant(true),
        upper: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: count, maxLength: count },
    ),
    rows: fc.array(
      fc.record({
        name: fc.constantFrom("cost", "r", "free"),
        terms: fc.array(fc.tuple(fc.nat(count - 1), fc.integer({ min: -3, max: 4 })), { maxLength: 5 }),
        relation,
        bound: fc.integer({ min: -4, max: 8 }),
      }),
      { maxLength: 4 },
    ),
  }),
);

/** Choices whose rows tie groups together in any way; costs are few, so that many are equal. */
export const anyChoice: fc.Arbitrary<ChoiceProgram> = fc.integer({ min: 0, max: 4 }).chain((rows) => {
  const option = fc.record({
    name: fc.constantFrom("p", "q"),
    cost: fc.integer({ min: -2, max: 9 }).map((quarters) => quarters / 4),
    terms: fc.array(fc.tuple(fc.nat(Math.max(0, rows - 1)), fc.integer({ min: -2, max: 2 })), {
      maxLength: rows === 0 ? 0 : 3,
    }),
    face: fc.constantFrom("u", "v", "w"),
  });
  return fc.record({
    groups: fc.array(
      fc.record({ name: fc.constant("g"), options: fc.array(option, { maxLength: 5, minLength: 1 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    rows: fc.array(
      fc.record({ name: fc.constant("tie"), relation, bound: fc.integer({ min: -1, max: 3 }) }),
      { minLength: rows, maxLength: rows },
    ),
  });
});

/**
 * Choices of the shape that the solver is for: the first group picks a key, every other group an option under that
 * key; with a budget over all groups where asked for.
 */
export const treeChoice = (budget: boolean): fc.Arbitrary<ChoiceProgram> =>
  fc
    .record({
      keys: fc.integer({ min: 1, max: 4 }),
      places: fc.integer({ min: 1, max: 3 }),
      allowed: fc.nat(9),
    })
    .chain(({ keys, places, allowed }) => {
      const link = (place: number, key: number) => place * keys + key;
      const cost = fc.integer({ min: 0, max: 40 }).map((quarters) => quarters / 4);
      const face = fc.constantFrom("u", "v", "w", "x");
      const key = fc.nat(keys - 1);
      const look: fc.Arbitrary<Option> = fc.record({ key, cost, face }).map(({ key, ...rest }) => ({
        ...rest,
        name: `look ${key}`,
        terms: Array.from({ length: places }, (_, place) => [link(place, key), -1] as const),
      }));
      const layout = (place: number): fc.Arbitrary<Option> =>
        fc.record({ key, cost, face, use: fc.nat(4) }).map(({ key, use, ...rest }) => ({
          ...rest,
          name: `layout ${key}`,
          terms: [[link(place, key), 1] as const, ...(budget ? [[places * keys, use] as const] : [])],
        }));
      const some = (option: fc.Arbitrary<Option>) => fc.array(option, { minLength: 1, maxLength: 6 });
      return fc
        .tuple(some(look), ...Array.from({ length: places }, (_, place) => some(layout(place))))
        .map((lists) => ({
          groups: lists.map((options, index) => ({ name: index === 0 ? "look" : `place ${index}`, options })),
          rows: [
            ...Array.from({ length: places * keys }, (_, index) => ({
              name: `link ${index}`,
              relation: "=" as const,
              bound: 0,
            })),
            ...(budget ? [{ name: "budget", relation: "<=" as const, bound: allowed }] : []),
          ],
        }));
    });
