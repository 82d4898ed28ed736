import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../../solver/simplex-engine.ts";
import { type Refitted, refit } from "../../../../src/refit/refit.ts";
import { cordWords, outcomeWords, refitText } from "../../../../src/refit/report/refit-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

const found = await fitHere(soundGarment(readFileSync("samples/sleeve.yaml", "utf8")), { rivals: 0 });
if (found.status !== "fits") throw new Error(found.status);
const { fit } = found;

async function refittedAt(row: number): Promise<Refitted> {
  const measured = { lengthMm: row * 3.4 };
  const result = await refit(fit, { piece: "sleeve", row, measured }, simplexEngine);
  if (result.status !== "refitted") throw new Error(result.status);
  return result;
}

describe("the text of a refit", () => {
  test("begins with what belongs to the present row, which may not be done yet", async () => {
    const text = refitText(fit, await refittedAt(51), 100);
    expect(text).toContain(
      "row 51, if it is not done yet: left: count 5, hang both legs on L3; right: count 5, hang both legs",
    );
    expect(text.indexOf("row 51, if")).toBeLessThan(text.indexOf("knit 4 rows, to row 55"));
    expect(refitText(fit, await refittedAt(52), 100)).not.toContain("if it is not done yet");
  });

  test("says where the piece and its marks come, by hand", async () => {
    // 106 rows of 3.4 mm are 360.4 mm; the underarm is at row 97, 329.8 mm.
    expect(outcomeWords(await refittedAt(50))).toEqual([
      "sleeve will be 36 cm long (within 1 cm), planned 36 cm",
      "underarm at 33 cm (within 0.9 cm), planned 33 cm",
    ]);
  });

  test("sums up only the shaping that is still to come", async () => {
    expect(refitText(fit, await refittedAt(50), 100)).toContain(
      "- increase 1 at each side on row 54, then every 8th row 5 times, to row 94",
    );
    expect(refitText(fit, await refittedAt(54), 100)).toContain(
      "- increase 1 at each side on rows 58, 65, 72, 80, 87 and 94",
    );
  });

  test("names the present row only in the heading of the part that it is in", async () => {
    const front = await fitHere(soundGarment(readFileSync("samples/front.yaml", "utf8")), { rivals: 0 });
    if (front.status !== "fits") throw new Error(front.status);
    const request = { piece: "front", row: 120, measured: { lengthMm: 310 } };
    const result = await refit(front.fit, request, simplexEngine);
    if (result.status !== "refitted") throw new Error(result.status);
    const text = refitText(front.fit, result, 100);
    expect(text).toContain("Up to the neck, above row 120\n");
    expect(text).toMatch(/^First half: the right one, R11 to R\d+$/m);
  });

  test("says what is needed of a cord as a whole", () => {
    const cord = {
      motif: "plait",
      placement: 0,
      strands: ["left"],
      times: 1,
      made: 240,
      used: 188,
      left: 52,
    };
    expect(cordWords({ ...cord, isHung: false })).toBe(
      "plait (left): 240 cord stitches made, 188 needed in all, 52 left over",
    );
    expect(cordWords({ ...cord, made: 180, left: -8, isHung: false })).toContain(
      "180 made, 188 needed in all",
    );
  });
});
