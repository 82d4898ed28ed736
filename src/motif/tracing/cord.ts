import type { CordMotif, Strand } from "../motif.ts";
import type { Reach, StrandTrace, Trace, Values } from "../trace.ts";
import { type BlockRows, type BlockSource, mustMeet, traceBlocks } from "./blocks.ts";
import { count, needleOf, Refusal, refuse, whole } from "./numbers.ts";

/** More strands than a bed's tools and a knitter's hands can keep apart. */
const mostStrands = 24;

interface StrandSource extends BlockSource {
  readonly strand: Strand;
}

export function traceCord(motif: CordMotif, values: Values, rows: BlockRows): Trace {
  const sources = motif.order.flatMap((name) =>
    sourcesOf(motif.strands.find((strand) => strand.name === name)!, values),
  );
  const strands = sources.map((source, order) =>
    traceBlocks(source, rows, {
      place: needleOf,
      more: (anchor, known) => ({
        // Turns are compared first; within one turn the motif's own order decides.
        rank: (anchor.turn ? whole(anchor.turn, known, "a turn") : 0) * sources.length + order,
        ...(anchor.count && { count: count(anchor.count, known, "the count of a loop", 1) }),
      }),
    }),
  );
  mustMeet(sources, strands, rows);
  mustPassOn(sources);
  return {
    ...rows,
    strands,
    folded: foldedStrands(motif, sources),
    cables: [],
    ladders: [],
    reach: reachOf(strands),
  };
}

/** One strand, or one for each number, called by its name and the number. */
function sourcesOf(strand: Strand, values: Values): readonly StrandSource[] {
  const { name, each, next } = strand;
  if (!each) {
    const plain = { name, strand, blocks: strand, values };
    return [next && "strand" in next ? { ...plain, next: next.strand } : plain];
  }
  const from = count(each.from, values, "the first strand's number", 0);
  const to = count(each.to, values, "the last strand's number", from);
  if (to - from >= mostStrands)
    refuse(each.to, values, `at most ${mostStrands} strands can be laid, and these are ${to - from + 1}`);
  return Array.from({ length: to - from + 1 }, (_, index): StrandSource => {
    const known = new Map(values).set(each.index, from + index);
    const one = { name: `${name} ${from + index}`, strand, blocks: strand, values: known };
    if (!next || !("number" in next)) return one;
    const number = whole(next.number, known, "the next strand's number");
    if (number < from || number > to)
      refuse(
        next.number,
        known,
        `the strands are numbered ${from} to ${to}, and this comes out as ${number}`,
      );
    return { ...one, next: `${name} ${number}` };
  });
}

/** No two strands may go on in the place of one. */
function mustPassOn(sources: readonly StrandSource[]): void {
  const taken = new Map<string, string>();
  for (const { name, next = name, strand, values } of sources) {
    const other = taken.get(next);
    taken.set(next, name);
    if (other === undefined) continue;
    const message = `${other} and ${name} would both go on in the place of ${next}`;
    const said = strand.next ?? sources.find((source) => source.name === other)?.strand.next;
    if (said && "number" in said) refuse(said.number, values, message);
    throw new Refusal(said?.path ?? [], message);
  }
}

/** Numbered strands are folded number by number. */
function foldedStrands(motif: CordMotif, sources: readonly StrandSource[]): Trace["folded"] {
  const named = (strand: string): readonly StrandSource[] =>
    sources.filter((source) => source.strand.name === strand);
  return motif.folded.flatMap(([one, other]) => {
    const [ones, others] = [named(one), named(other)];
    const said = [...others, ...ones].find(({ strand }) => strand.each);
    if (ones.length !== others.length && said)
      refuse(
        said.strand.each!.to,
        undefined,
        `${one} and ${other} are folded together, so there must be as many of both, and they are ${ones.length} and ${others.length}`,
      );
    return ones.map(({ name }, index): readonly [string, string] => [name, others[index]!.name]);
  });
}

function reachOf(strands: readonly StrandTrace[]): Reach {
  const needles = strands.flatMap(({ start, leadIn, repeat }) =>
    [start, ...leadIn, ...repeat].map(({ needle }) => needle),
  );
  return {
    left: Math.max(0, ...needles.map((needle) => -needle)),
    right: Math.max(0, ...needles),
  };
}
