import { expect, test } from "vitest";
import { joiningSegments } from "../../../src/motif/joins.ts";
import { pointsOver, rowsOver } from "../../../src/motif/sections.ts";
import type { Trace } from "../../../src/motif/trace.ts";
import { isProblem, traceMotif } from "../../../src/motif/trace-motif.ts";
import { soundGarment } from "../../support/run-garment.ts";

const { motifs } = soundGarment(`
format: evenrow/1
bed: { needles: 100 }
gauge:
  ground: { stitches: 20, rows: 28, over: 10 cm }
  cord: { needles: 3, stitches: 18, over: 10 cm }
pieces:
  panel: { outline: [{ height: 0 cm, width: 30 cm }, { height: 40 cm, width: 30 cm }] }
motifs:
  plait: { like: crossed cord, interval: { allow: 2..8 }, spread: { allow: 2..9 } }
place: [{ motif: plait, on: panel, from: cast-on, to: bind-off }]
`);

function plait(interval: number, spread: number): Trace {
  const trace = traceMotif(
    motifs[0]!,
    new Map([
      ["interval", interval],
      ["spread", spread],
    ]),
  );
  if (isProblem(trace)) throw new Error(trace.problem);
  return trace;
}

test("a later section goes on where the one below ended, without a lead-in of its own", () => {
  const sections = [
    { trace: plait(4, 3), repeats: 1 },
    { trace: plait(6, 3), repeats: 1 },
  ];
  // 4 rows of lead-in, 8 of the first section, 12 of the second.
  expect(rowsOver(sections)).toBe(24);
  expect(
    pointsOver(sections, "strands", "left").map(({ needle, row, section }) => [needle, row, section]),
  ).toEqual([
    [-1, 0, 0],
    [-3, 4, 0],
    [3, 8, 0],
    [-3, 12, 0],
    [3, 18, 1],
    [-3, 24, 1],
  ]);
});

test("a first section may be the lead-in alone", () => {
  const sections = [
    { trace: plait(4, 3), repeats: 0 },
    { trace: plait(6, 3), repeats: 1 },
  ];
  expect(pointsOver(sections, "strands", "right").map(({ needle, row }) => [needle, row])).toEqual([
    [1, 0],
    [3, 4],
    [-3, 10],
    [3, 16],
  ]);
});

test("the way from one spread to another is a segment of its own", () => {
  // From L3 to R5 and from R3 to L5: 2.5 + 4.5 needles across, in the rows of the new interval.
  expect(joiningSegments(plait(4, 3), plait(6, 5))).toMatchObject([{ name: "join", needles: 7, rows: 6 }]);
  expect(joiningSegments(plait(4, 3), plait(4, 3))).toMatchObject([{ needles: 5, rows: 4 }]);
  expect(joiningSegments(plait(4, 3), plait(6, 3), 0)).toMatchObject([{ needles: 5, rows: 6 }]);
});
