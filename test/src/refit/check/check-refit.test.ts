import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../../solver/simplex-engine.ts";
import type { Fit, FittedPlacement, FittedSection } from "../../../../src/fit/fit.ts";
import { checkRefit } from "../../../../src/refit/check/check-refit.ts";
import { refit } from "../../../../src/refit/refit.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

const row = 120;

async function measuredFront(): Promise<{ before: Fit; now: Fit }> {
  const fitted = await fitHere(soundGarment(readFileSync("samples/front.yaml", "utf8")), { rivals: 0 });
  if (fitted.status !== "fits") throw new Error(fitted.status);
  const before = fitted.fit;
  const result = await refit(before, { piece: "front", row, measured: { lengthMm: 312 } }, simplexEngine);
  if (result.status !== "refitted") throw new Error(result.status);
  return { before, now: result.fit };
}

const withPlaced = (fit: Fit, change: (placed: FittedPlacement) => Partial<FittedPlacement>): Fit => ({
  ...fit,
  placements: fit.placements.map((placed) => ({ ...placed, ...change(placed) })),
});

const withSections = (
  fit: Fit,
  change: (sections: readonly FittedSection[]) => readonly FittedSection[],
): Fit => withPlaced(fit, ({ sections }) => ({ sections: change(sections) }));

const withPiece = (
  fit: Fit,
  change: (piece: Fit["pieces"][number]) => Partial<Fit["pieces"][number]>,
): Fit => ({
  ...fit,
  pieces: fit.pieces.map((piece) => ({ ...piece, ...change(piece) })),
});

const spoiled: readonly [string, (fit: Fit) => Fit, RegExp][] = [
  ["whose cost is not its terms'", (fit) => ({ ...fit, cost: fit.cost - 1 }), /cost/],
  [
    "that narrows a row that is knitted",
    (fit) =>
      withPiece(fit, ({ left }) => ({
        left: left.map((needles, at) => (at === 60 ? needles - 1 : needles)),
      })),
    /left edge was/,
  ],
  [
    "that counts a knitted hanging otherwise",
    (fit) =>
      withSections(fit, ([first, ...rest]) => [
        {
          ...first!,
          look: {
            ...first!.look,
            segments: first!.look.segments.map((one) => ({ ...one, pickup: one.pickup + 1 })),
          },
        },
        ...rest,
      ]),
    /so far was/,
  ],
  [
    "that drops a repeat that is begun",
    (fit) =>
      withSections(fit, ([first, second]) => [
        { ...first!, repeats: first!.repeats - 1 },
        { ...second!, repeats: second!.repeats + 1 },
      ]),
    /changes at row/,
  ],
  [
    "with a repeat too many",
    (fit) => withPlaced(fit, ({ repeats }) => ({ repeats: repeats + 1 })),
    /repeats are told/,
  ],
  [
    "that ends a row too soon",
    (fit) => withPlaced(fit, ({ lastRow }) => ({ lastRow: lastRow - 1 })),
    /rows of the motif/,
  ],
  [
    "with a look that its strands do not stand for",
    (fit) =>
      withSections(fit, ([first, second]) => [
        first!,
        {
          ...second!,
          look: { ...second!.look, values: new Map(second!.look.values).set("spread", 4) },
        },
      ]),
    /stand elsewhere/,
  ],
  [
    "that counts anew with an ease beyond its limits",
    (fit) =>
      withSections(fit, ([first, second]) => [
        first!,
        {
          ...second!,
          look: {
            ...second!.look,
            segments: second!.look.segments.map((one) => ({ ...one, pickup: one.pickup + 4 })),
          },
        },
      ]),
    /ease/,
  ],
  ["of another length", (fit) => withPiece(fit, ({ rows }) => ({ rows: rows - 1 })), /bind-off is told/],
  [
    "with its neck elsewhere",
    (fit) => withPiece(fit, ({ marks }) => ({ marks: new Map(marks).set("neck", marks.get("neck")! + 1) })),
    /neck is told/,
  ],
  [
    "with several needles off away from the carriage",
    (fit) =>
      withPiece(fit, ({ left }) => ({
        left: left.map((needles, at) => (at > row && at % 2 === 0 ? needles - 3 : needles)),
      })),
    /away from the carriage/,
  ],
  ["of a piece that is missing", (fit) => ({ ...fit, pieces: [] }), /missing/],
];

describe("the independent check of a refit refuses one", () => {
  test.each(spoiled)("%s", async (_, spoil, words) => {
    const { before, now } = await measuredFront();
    expect(now.placements[0]!.sections).toHaveLength(2);
    expect(checkRefit(before, now, row, now.cost)).toEqual([]);
    const breaches = checkRefit(before, spoil(now), row, now.cost);
    expect(breaches.map(({ rule, found }) => `${rule}: ${found}`).join("; ")).toMatch(words);
  });
});
