import { expect, test } from "vitest";
import { heldBackBy } from "../../../src/explore/holding-back.ts";
import { differences } from "../../../src/report/differences.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const names = ["one", "two", "three", "four"];

/** Four cords beside each other's rows on one panel, and each has an interval that it does not like. */
const panel = soundGarment(`
format: evenrow/1
bed: { needles: 100 }
gauge: { ground: { stitches: 22, rows: 31, over: 10 cm }, cord: { needles: 3, stitches: 19, over: 10 cm } }
pieces:
  panel:
    outline: [{ height: 0 cm, width: 30 cm }, { height: 80 cm, width: 30 cm }]
    marks: { one end: 20 cm, two end: 40 cm, three end: 60 cm }
motifs:
${names.map((name, at) => `  ${name}: { like: crossed cord, interval: { allow: [4], prefer: ${5 + at} }, spread: 3, ease: { from: -40 %, to: 40 % } }`).join("\n")}
place:
${names
  .map(
    (name, at) =>
      `  - { motif: ${name}, on: panel, from: ${at === 0 ? "cast-on" : `${names[at - 1]} end`}, to: ${at === 3 ? "bind-off" : `${name} end`}, margins: { bottom: 0..20, top: 0..20 } }`,
  )
  .join("\n")}
`);

test("what holds a fit back is named with whose it is, and no more than the first few", async () => {
  const result = await fitHere(panel, { rivals: 3 });
  if (result.status !== "fits") throw new Error(result.status);
  const words = heldBackBy(result.fit);
  expect(words).toMatch(/^Held back by interval of four: 4 rows off, then interval of three, /);
  const costly = result.fit.terms.filter(({ cost }) => cost > 1e-4).length;
  expect(costly).toBeGreaterThan(4);
  expect(words).toContain(` and ${costly - 4} more.`);
  for (const rival of result.rivals)
    for (const one of differences(result.fit, rival))
      expect(one).toMatch(/^(?:one|two|three|four)(?: on panel)?: /);
});
