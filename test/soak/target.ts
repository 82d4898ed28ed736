import fc from "fast-check";

/** What became of an input: taken as it is, or refused in words. Anything else is thrown. */
export type Outcome = "accepted" | "refused";

/** One part of the program that is given inputs made to break it. */
export interface Target {
  readonly name: string;
  /** Inputs in a usual run. */
  readonly usual: number;
  /** How long one input may take on a busy machine, in ms; what takes longer hangs. */
  readonly longestMs: number;
  /** The same trials for the same seed. */
  readonly trials: (seed: number, count: number) => Promise<readonly Trial[]>;
}

/** One input, ready to be tried. */
export interface Trial {
  /** The input as a person can read it, cut off where it is long. */
  readonly shown: () => string;
  /** Throws where the program did what it must not do. */
  readonly run: () => Promise<Outcome>;
}

interface Plan<Input> {
  readonly name: string;
  readonly usual: number;
  readonly longestMs?: number;
  readonly inputs: () => fc.Arbitrary<Input>;
  /** Made once for a target, before its first input. */
  readonly attempt: () => Promise<(input: Input) => Outcome | Promise<Outcome>>;
}

export function targetOf<Input>({ name, usual, longestMs = 20_000, inputs, attempt }: Plan<Input>): Target {
  let arbitrary: fc.Arbitrary<Input> | undefined;
  let tried: ReturnType<typeof attempt> | undefined;
  return {
    name,
    usual,
    longestMs,
    async trials(seed, count) {
      arbitrary ??= inputs();
      tried ??= attempt();
      const run = await tried;
      return fc.sample(arbitrary, { seed, numRuns: count }).map(
        (input): Trial => ({
          shown: () => fc.stringify(input).slice(0, 4000),
          run: async () => run(input),
        }),
      );
    },
  };
}

/** @throws Error with the words where something that must hold does not */
export function must(holds: boolean, words: string): asserts holds {
  if (!holds) throw new Error(words);
}
