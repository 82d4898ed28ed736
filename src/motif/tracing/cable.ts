import { needleAt, position } from "../../cloth/bed.ts";
import type { CableMotif } from "../motif.ts";
import type { CableTrace, LadderTrace, Point, Reach, Trace, Values } from "../trace.ts";
import { type BlockRows, mustMeet, traceBlocks } from "./blocks.ts";
import { boundaryOf, count, needleOf, refuse } from "./numbers.ts";

export function traceCables(motif: CableMotif, values: Values, rows: BlockRows): Trace {
  const sources = motif.cables.map((cable) => ({ name: cable.name, blocks: cable, values }));
  const cables = motif.cables.map((cable, index): CableTrace => {
    const left = count(cable.cross[0], values, "the stitches crossed on the left", 1);
    const right = count(cable.cross[1], values, "the stitches crossed on the right", 1);
    const blocks = traceBlocks(sources[index]!, rows, {
      place: boundaryOf,
      more: (anchor) => ({ rank: index, over: anchor.over ?? cable.over }),
    });
    return { ...blocks, left, right };
  });
  mustMeet(sources, cables, rows);
  mustKeepApart(motif, cables, values, rows);
  const ladders = laddersOf(motif, cables, values);
  return { ...rows, strands: [], folded: [], cables, ladders, reach: reachOf(cables, ladders) };
}

interface Span {
  readonly from: number;
  readonly to: number;
}

const pointsOf = ({ start, leadIn, repeat }: CableTrace): readonly Point[] => [start, ...leadIn, ...repeat];

const spanOf = ({ left, right }: CableTrace, { needle }: Point): Span => ({
  from: needle - left,
  to: needle + right,
});

/** Two cables of one motif may not cross the same stitches in one row. */
function mustKeepApart(
  motif: CableMotif,
  cables: readonly CableTrace[],
  values: Values,
  { leadRows, repeatRows }: BlockRows,
): void {
  const crossings = cables.map((cable) => [
    ...[cable.start, ...cable.leadIn].map((point) => ({ row: point.row, span: spanOf(cable, point) })),
    ...[0, 1].flatMap((time) =>
      cable.repeat.map((point) => ({
        row: leadRows + time * repeatRows + point.row,
        span: spanOf(cable, point),
      })),
    ),
  ]);
  cables.forEach((cable, index) => {
    const met = crossings
      .slice(0, index)
      .findIndex((others) =>
        others.some((other) =>
          crossings[index]!.some(
            ({ row, span }) => row === other.row && span.from < other.span.to && other.span.from < span.to,
          ),
        ),
      );
    if (met >= 0)
      refuse(
        motif.cables[index]!.start.needle,
        values,
        `${cables[met]!.name} and ${cable.name} cross the same stitches in one row`,
      );
  });
}

/**
 * Needles out of work. A stitch goes to the neighbour that never crosses where there is one, so that no crossing has a
 * stitch more to move; between two such neighbours, outward.
 */
function laddersOf(motif: CableMotif, cables: readonly CableTrace[], values: Values): readonly LadderTrace[] {
  const needles = motif.ladders.map((expression) => needleOf(expression, values));
  const crossed = (needle: number): boolean =>
    cables.some((cable) =>
      pointsOf(cable).some((point) => {
        const { from, to } = spanOf(cable, point);
        return from < position(needle) && position(needle) < to;
      }),
    );
  return needles.map((needle, index): LadderTrace => {
    const expression = motif.ladders[index]!;
    if (needles.indexOf(needle) !== index)
      refuse(expression, values, `needle ${needle} stands out of work already`);
    if (crossed(needle))
      refuse(expression, values, `needle ${needle} is crossed, so it cannot stand out of work`);
    const outward = Math.sign(needle);
    const neighbours = [outward, -outward]
      .map((step) => needleAt(position(needle) + step))
      .filter((neighbour) => !needles.includes(neighbour));
    const onto = neighbours.find((neighbour) => !crossed(neighbour)) ?? neighbours[0];
    if (onto === undefined)
      return refuse(
        expression,
        values,
        `both neighbours of needle ${needle} stand out of work too, so nothing can take its stitch`,
      );
    return { needle, onto };
  });
}

function reachOf(cables: readonly CableTrace[], ladders: readonly LadderTrace[]): Reach {
  const spans = cables.flatMap((cable) => pointsOf(cable).map((point) => spanOf(cable, point)));
  // A ladder needs a knitted stitch at its outer side, or it would be no more than a ravelled edge.
  const beside = ladders.flatMap(({ needle, onto }) => [needle + Math.sign(needle), onto]);
  return {
    left: Math.max(0, ...spans.map(({ from }) => -from), ...beside.map((needle) => -needle)),
    right: Math.max(0, ...spans.map(({ to }) => to), ...beside),
  };
}
