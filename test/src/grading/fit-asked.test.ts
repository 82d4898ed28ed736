import { expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { fitGarment } from "../../../src/fit/solve.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import type { Asked } from "../../../src/grading/fit-asked.ts";
import { fitAsked } from "../../../src/grading/fit-asked.ts";
import { garmentText } from "../../support/garment-text.ts";

const short =
  "{ pieces: { sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 30 cm, width: 31 cm }], marks: { underarm: 27 cm } } } }";

const read = (changes: Parameters<typeof garmentText>[0]): Asked => {
  const { garment, range } = readGarment(garmentText(changes), "a.yaml");
  return { garment: garment!, ...(range && { range }) };
};

async function fitOf(asked: Asked) {
  const result = await fitAsked(asked, simplexEngine, { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  return result.fit;
}

test("a file without sizes is fitted as it is", async () => {
  const asked = read({});
  const plain = await fitGarment(asked.garment, simplexEngine, { rivals: 0 });
  expect(plain).toMatchObject({ status: "fits", fit: { cost: (await fitOf(asked)).cost } });
});

test("a size that shares nothing is fitted as if it were the only one", async () => {
  const asked = read({ sizes: `sizes:\n  M:\n  S: ${short}` });
  const alone = await fitGarment(asked.range!.sizes[1]!.garment, simplexEngine, { rivals: 0 });
  const fit = await fitOf({ ...asked, size: "S" });
  expect(fit.garment.title).toContain("size S");
  expect(alone).toMatchObject({ status: "fits", fit: { cost: fit.cost } });
});

test("sizes that share their look have it from all of them together", async () => {
  const asked = read({ sizes: `sizes:\n  M:\n  S: ${short}`, share: "share: [interval, spread, pickup]" });
  const [m, s] = [await fitOf({ ...asked, size: "M" }), await fitOf({ ...asked, size: "S" })];
  expect([...s.looks[0]!.values]).toEqual([...m.looks[0]!.values]);
  expect(s.looks[0]!.segments.map(({ pickup }) => pickup)).toEqual(
    m.looks[0]!.segments.map(({ pickup }) => pickup),
  );
  expect(s.pieces[0]!.rows).toBeLessThan(m.pieces[0]!.rows);
});

test("where no size is named the first one is meant", async () => {
  const asked = read({ sizes: `sizes:\n  S: ${short}\n  M:` });
  expect((await fitOf(asked)).garment.title).toContain("size S");
});
