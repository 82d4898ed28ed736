import { describe, expect, test } from "vitest";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { expectOnly } from "../../../support/one-mistake.ts";

const sizes = "sizes:\n  S:\n  M:";

describe("share", () => {
  test("names quantities of the motifs that are placed, and the counts of the cord", () => {
    const { range } = readGarment(
      garmentText({ sizes, share: "share: [interval, pickup, interval]" }),
      "a.yaml",
    );
    expect(range!.share).toEqual({ path: ["share"], quantities: ["interval"], pickup: true });
  });

  test("knows a motif's own quantities, and those of built-in motifs that are placed as they are", () => {
    const text = garmentText({
      sizes,
      share: "share: [interval, spread]",
      motifs: "",
      place: "place: [{ motif: crossed cord, on: sleeve }]",
    });
    expect(readGarment(text, "a.yaml").range!.share!.quantities).toEqual(["interval", "spread"]);
  });

  test.each([
    [
      "a slip of the pen",
      { sizes, share: "share: [§intervall]" },
      "unknown-quantity",
      '"intervall"',
      "interval",
    ],
    [
      "no list",
      { sizes, share: "share: §interval" },
      "wrong-type",
      '"interval"',
      "[interval, spread, pickup]",
    ],
    ["no sizes", { share: "§share: [interval]" }, "missing-key", undefined, "sizes:"],
    [
      "a motif that grows",
      {
        sizes,
        motifs: "motifs:\n  plait: { like: crossed cord, spread: { allow: 2..6, change: 1 } }",
        share: "share: §[spread]",
      },
      "cannot-share",
      undefined,
      "a motif that stays as it is",
    ],
  ] as const)("is refused for %s", (_what, changes, code, found, expected) => {
    expectOnly(changes, code, found, expected);
  });

  test("the counts of a cord belong to no cable", () => {
    expectOnly(
      {
        sizes,
        motifs: "",
        place: "place: [{ motif: transferred cable, on: sleeve }]",
        share: "share: [§pickup]",
      },
      "unknown-quantity",
      '"pickup"',
      "one of",
    );
  });
});
