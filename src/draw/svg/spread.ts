/** A label that wants to stand at a height and may move a little. */
export interface Wanting {
  readonly at: number;
}

/**
 * Moves labels apart along one line so that each keeps its distance to the next and none leaves its limits, each as
 * near to where it wants to be as its neighbours let it: labels that touch move as one block to the mean of where
 * they want to be.
 *
 * @param wanting in rising order of `at`
 * @param apart least distance between two neighbours
 * @returns places in the same order
 */
export function spreadApart(
  wanting: readonly Wanting[],
  apart: number,
  limits: { readonly least: number; readonly most: number },
): readonly number[] {
  interface Block {
    first: number;
    readonly wants: number[];
  }
  const height = (block: Block): number => (block.wants.length - 1) * apart;
  const settle = (block: Block): void => {
    const wanted = block.wants.reduce((sum, at, index) => sum + at - index * apart, 0) / block.wants.length;
    block.first = Math.max(limits.least, Math.min(wanted, limits.most - height(block)));
  };
  const blocks: Block[] = [];
  for (const { at } of wanting) {
    let block: Block = { first: at, wants: [at] };
    settle(block);
    let below = blocks.at(-1);
    while (below && below.first + height(below) + apart > block.first) {
      blocks.pop();
      block = { first: 0, wants: [...below.wants, ...block.wants] };
      settle(block);
      below = blocks.at(-1);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ first, wants }) => wants.map((_, index) => first + index * apart));
}
