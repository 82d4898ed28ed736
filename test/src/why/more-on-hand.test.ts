import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { applyEdits } from "../../../src/explore/apply-edits.ts";
import { whyNot } from "../../../src/why/why.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const sleeve = readFileSync("samples/sleeve.yaml", "utf8");

/** Why nothing fits a file, and the change of what is on hand that is proposed. */
async function changeOf(source: string) {
  const pace = { leftMs: () => 60_000, goOn: () => {} };
  const why = await whyNot({ source, name: "x.yaml", garment: soundGarment(source) }, simplexEngine, pace);
  const change = why.changes.find(({ edits }) => edits.some(({ path }) => path[0] === "on hand"));
  return { rules: why.conflict.map(({ words }) => words), change: change! };
}

const fits = async (source: string): Promise<boolean> =>
  (await fitHere(soundGarment(source), { rivals: 0 })).status === "fits";

test.each([
  ["cord: 0.4 m", "only 0.4 m of cord is on hand", "have 0.52 m of cord instead of 0.4 m", 3, "cord: 0.51 m"],
  [
    "ground yarn: { balls: 4, each: 11 g }",
    "only 44 g of ground yarn (4 balls) is on hand",
    "have 5 balls of ground yarn instead of 4",
    2.5,
    "ground yarn: 47 g",
  ],
])(
  "with %s on hand the least that has to be bought is told",
  async (supply, rule, words, cost, tooLittle) => {
    const written = (onHand: string): string => `${sleeve}on hand: { ${onHand} }\n`;
    const { rules, change } = await changeOf(written(supply));
    expect(rules).toContain(rule);
    // A percent more counts as much as a percent that is left over.
    expect(change).toMatchObject({ words, cost });
    const edited = applyEdits(written(supply), change.edits);
    expect("text" in edited && (await fits(edited.text))).toBe(true);
    expect(await fits(written(tooLittle))).toBe(false);
  },
);
