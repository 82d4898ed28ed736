import { expect, test } from "vitest";
import { warningsFor } from "../../../src/safety/warnings.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

async function warningsWith(margins: string): Promise<readonly string[]> {
  const place = `place:\n  - { motif: plait, on: sleeve, from: rib top, to: underarm${margins} }`;
  const result = await fitHere(soundGarment(garmentText({ place })), { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  return warningsFor(result.fit);
}

test("a field that stays all but empty because no margin is limited is told, with what would fill it", async () => {
  expect(await warningsWith("")).toEqual([
    expect.stringMatching(/^plait leaves \d+ of the \d+ rows of its field on sleeve free; .*bottom: 2\.\.20/),
  ]);
  expect(await warningsWith(", margins: { bottom: 2..20, top: 0..12 }")).toEqual([]);
  expect(await warningsWith(", repeats: { prefer: 10 }")).toEqual([]);
});
