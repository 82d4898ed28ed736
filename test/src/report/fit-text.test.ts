import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Fits } from "../../../src/fit/solve.ts";
import { fitText } from "../../../src/report/fit-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const fits = async (sample: string): Promise<Fits> => {
  const result = await fitHere(soundGarment(readFileSync(`samples/${sample}.yaml`, "utf8")));
  if (result.status !== "fits") throw new Error(result.status);
  return result;
};

/** What stands below "Next best", up to the first rival. */
const underNextBest = (result: Fits): string => {
  const lines = fitText(result, 100).split("\n");
  const from = 1 + lines.findIndex((line) => line.startsWith("Next best"));
  const first = lines.findIndex((line, index) => index >= from && /^ +\d+\.\d{3} {2}/.test(line));
  return lines.slice(from, first).join(" ").replace(/ +/g, " ").trim();
};

describe("rivals", () => {
  test("that are as cheap as the best are said once to be so, and why they are not the best", async () => {
    const result = await fits("sleeve");
    expect(result.rivals.filter(({ cost }) => cost === result.fit.cost)).toHaveLength(2);
    expect(underNextBest(result)).toBe(
      "What costs 1.637 is as cheap as the best; the best is the one that changes the length less, then takes fewer repeats.",
    );
  });

  test("that neither change the length more nor take more repeats will do as well", async () => {
    const { fit, ...others } = await fits("sleeve");
    const [rival] = others.rivals;
    expect(underNextBest({ ...others, fit: rival!, rivals: [fit] })).toBe(
      "What costs 1.637 is as cheap as the best; any of them will do.",
    );
  });

  test("that cost more need no word", async () => {
    expect(underNextBest(await fits("front"))).toBe("");
  });
});
