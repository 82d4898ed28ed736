import { expect, test } from "vitest";
import { type Asking, answer, askingBegun, questionAt } from "../../../src/swatch/questions.ts";

const after = (...lines: readonly string[]): Asking =>
  lines.reduce<Asking>((asking, line) => {
    const answered = answer(asking, line);
    if ("refused" in answered) throw new Error(answered.refused.problem);
    return answered.asking;
  }, askingBegun);

test("each question is asked until it is answered by nothing", () => {
  const swatch = "40 stitches 18.2 cm, 60 rows 19.4 cm";
  const asking = after(swatch, swatch, "", swatch, "", "on 3 needles: 50 stitches 26 cm", "");
  expect(asking.swatches.map(({ of, washed }) => [of, washed])).toEqual([
    ["ground", false],
    ["ground", false],
    ["ground", true],
    ["cord", false],
  ]);
  expect(asking.swatches.at(-1)).toMatchObject({ needles: 3 });
  expect(questionAt(asking)).toBeUndefined();
});

test("an answer may say itself what was measured", () => {
  expect(after("", "", "washed cord: 50 stitches 26 cm").swatches).toMatchObject([
    { of: "cord", washed: true },
  ]);
});

test("back takes the last answer back", () => {
  const swatch = "40 stitches 18.2 cm, 60 rows 19.4 cm";
  expect(after(swatch, swatch, "back").swatches).toHaveLength(1);
  expect(after(swatch, "", "back")).toEqual(after(swatch));
  expect(after("back")).toEqual(askingBegun);
});

test("what cannot be read is refused with what would be right", () => {
  expect(answer(askingBegun, "40 stitches")).toMatchObject({
    refused: { right: "40 stitches 18.2 cm, 60 rows 19.4 cm" },
  });
});
