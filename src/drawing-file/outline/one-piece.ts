import type { Stitch } from "../../cloth/gauge.ts";
import type { OutlineProblem } from "./outline-problem.ts";
import type { Part, Slab } from "./slabs.ts";
import { cm } from "./words.ts";

/**
 * Whether strips can be knitted one upon the other from a level cast-on edge: one part, from some height on two with a
 * neck between them, each with stitches that go on from the strip below, and level at the top.
 *
 * @returns what stands against it, lowest first
 */
export function notOnePiece(slabs: readonly Slab[], stitch: Stitch): OutlineProblem | undefined {
  const [first] = slabs;
  if (!first) return { problem: "it has no height" };
  const [left, right] = first.parts;
  if (left && right)
    return {
      problem: `its lowest edge is in ${first.parts.length} parts, ${cm(right.left.low - left.right.low)} apart`,
      expected: "one level edge to cast on",
    };
  for (const [index, slab] of slabs.entries()) {
    const below = slabs[index - 1];
    const problem = below && goesOn(below, slab, stitch);
    if (problem) return problem;
  }
  return undefined;
}

function goesOn(below: Slab, slab: Slab, stitch: Stitch): OutlineProblem | undefined {
  const at = `${cm(slab.fromMm)} above the foot`;
  if (slab.parts.length < below.parts.length) return closes(below, slab, at);
  for (const part of slab.parts) {
    const shared = Math.max(...below.parts.map((under) => sharedBy(under, part)));
    if (shared >= Math.min(stitch.widthMm, widthOf(part))) continue;
    return slab.parts.length > below.parts.length
      ? {
          problem: `a part of it hangs over: ${at} another part begins beside the piece, with nothing below it`,
          expected: "a line whose every part rests on what is knitted below",
        }
      : { problem: `no stitch goes on from below to above ${at}` };
  }
  if (slab.parts.length > 2)
    return {
      problem: `from ${at} on it is in ${slab.parts.length} parts side by side`,
      expected: "one part, or two with a neck between them",
    };
  return undefined;
}

const sharedBy = (under: Part, part: Part): number =>
  Math.min(under.right.high, part.right.low) - Math.max(under.left.high, part.left.low);

const widthOf = ({ left, right }: Part): number => Math.max(right.low - left.low, right.high - left.high);

function closes(below: Slab, slab: Slab, at: string): OutlineProblem {
  const [left, right] = below.parts as [Part, Part];
  const [only] = slab.parts as [Part];
  const spans = only.left.low < left.right.high && only.right.low > right.left.high;
  if (spans)
    return {
      problem: `the opening between two parts closes again ${at}`,
      expected: "a neck that is open up to the bind-off edge, or no opening",
    };
  const isLeft = only.left.low >= left.right.high;
  return {
    problem: `the ${isLeft ? "left" : "right"} half beside the neck ends ${at}, and the other goes on`,
    expected: "two halves that end at one height",
  };
}
