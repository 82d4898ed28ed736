import { describe, expect, test } from "vitest";
import type { Garment } from "../../../src/garment/garment.ts";
import { isForbidden, mostLoopMm } from "../../../src/safety/cord-rules.ts";
import { garmentText } from "../../support/garment-text.ts";
import { soundGarment } from "../../support/run-garment.ts";

interface Laid {
  readonly age?: number;
  readonly name?: string;
  readonly to?: string;
  readonly neck?: boolean;
  readonly like?: string;
}

/** One motif on a piece of 36 cm with the marks low (20 cm), near (26 cm, in a piece with a neck 4 cm below it) and high. */
function laid({ age, name = "back", to = "low", neck = false, like = "crossed cord" }: Laid): Garment {
  const opening = neck ? "neck: [{ height: 30 cm, width: 8 cm }, { height: 36 cm, width: 8 cm }]," : "";
  return soundGarment(
    garmentText({
      yarn: age === undefined ? "" : `wearer: { age: ${age} }`,
      pieces: `pieces:\n  ${name}: { outline: [{ height: 0 cm, width: 40 cm }, { height: 36 cm, width: 40 cm }], ${opening} marks: { low: 20 cm, edge: 31 cm, near: 26 cm, high: 32 cm } }`,
      motifs: `motifs:\n  plait: { like: ${like} }`,
      place: `place:\n  - { motif: plait, on: ${name}, from: cast-on, to: ${to} }`,
    }),
  );
}
const forbidden = (garment: Garment): boolean => isForbidden(garment, garment.placements[0]!);

describe("where no cord may lie", () => {
  test.each<[Laid, boolean]>([
    [{ age: 5, name: "hood" }, true],
    [{ age: 5, name: "collar" }, true],
    [{ age: 8, name: "hood" }, false],
    [{ name: "hood" }, false],
    [{ age: 5, name: "back", to: "low" }, false],
    // 5 cm below the bind-off is far enough, 4 cm is not.
    [{ age: 5, name: "back", to: "edge" }, false],
    [{ age: 5, name: "back", to: "high" }, true],
    [{ age: 5, name: "back", to: "bind-off" }, true],
    [{ age: 5, name: "back", to: "near", neck: true }, true],
    [{ age: 5, name: "back", to: "neck", neck: true }, true],
    [{ age: 5, name: "front", to: "neck", neck: true }, false],
    [{ age: 5, name: "sleeve", to: "bind-off" }, false],
    [{ age: 5, name: "body", to: "bind-off" }, false],
    [{ age: 5, name: "hood", like: "transferred cable" }, false],
  ])("%j: %s", (where, expected) => {
    expect(forbidden(laid(where))).toBe(expected);
  });
});

describe("how far round a loop may be", () => {
  test.each<[Laid, number | undefined]>([
    [{ age: 5, name: "sleeve" }, 75],
    [{ age: 10, name: "sleeve", to: "bind-off" }, undefined],
    [{ age: 10, name: "hood" }, 75],
    [{ age: 10, name: "front", to: "low" }, undefined],
    [{ age: 10, name: "front", to: "bind-off" }, 75],
    [{ age: 10, name: "body", to: "near", neck: true }, 75],
    [{ age: 15, name: "hood" }, undefined],
    [{ name: "hood" }, undefined],
  ])("%j: %s", (where, expected) => {
    expect(mostLoopMm(laid(where), "plait")).toBe(expected);
  });
});
