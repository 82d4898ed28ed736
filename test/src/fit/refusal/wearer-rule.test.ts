import { describe, expect, test } from "vitest";
import { wearerRules } from "../../../../src/fit/refusal/wearer-rule.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type { GarmentFile } from "../../../support/garment-file.ts";
import { cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

const piece = strip(40, 60, { marks: { low: "40 mm" } });
const margins = { bottom: "0..99", top: "0..99" };

/** A plait up to the bind-off of one piece, or what else is said of it. */
const worn = (
  wearer: GarmentFile["wearer"] | undefined,
  motif: GarmentFile["motifs"][string],
  { name = "sleeve", to = "bind-off", more = {} }: { name?: string; to?: string; more?: object } = {},
): Garment =>
  smallGarment({
    ...(wearer && { wearer }),
    pieces: { [name]: piece },
    motifs: { plait: motif },
    place: [laid("plait", name, margins, { to })],
    ...more,
  });

const words = (garment: Garment): string[] => wearerRules(garment).map((rule) => rule.words);

// A crossing of 4 rows over 5 needles is 16 mm up and 25 mm across: 29.7 mm of cloth and 6 cord stitches of 5 mm.
const small = plait(4, 3);
/** 6 rows over 7 needles, 24 mm and 35 mm: 42.44 mm of cloth. */
const large = plait(6, 4, { ease: { from: "-10 %", to: "15 %", prefer: "2 %" } });
const loop = "a loop of plait may be 75 mm round at most, cord and cloth together";
// 8 cord stitches, the fewest that -10 % allows, are 40 mm.
const tooLarge = `${loop}, and its smallest would be 83 mm`;

describe("who wears it", () => {
  test.each<[string, Garment]>([
    ["where the file does not say", worn(undefined, large)],
    ["where the wearer is grown", worn({ age: 20 }, large, { name: "hood" })],
    ["where only cables are laid", worn({ age: 5 }, cable(6), { name: "hood" })],
    ["where an older child wears no cord at the neck", worn({ age: 10 }, large)],
  ])("rules nothing out %s", (_, garment) => {
    expect(wearerRules(garment)).toEqual([]);
  });

  test("is one rule at its place in the file, and lifted alone", () => {
    const [rule, ...others] = wearerRules(worn({ age: 5 }, small));
    expect(others).toEqual([]);
    expect(rule).toMatchObject({
      rule: "wearer",
      path: ["wearer"],
      words: `for a wearer of 5 years ${loop}`,
    });
    const bare = worn(undefined, small);
    expect(rule!.lift(worn({ age: 5 }, small))).toStrictEqual(bare);
  });

  test("is the rule of its own size in a file of several", () => {
    const garment = worn({ age: 5 }, small);
    const path = ["sizes", "M", "wearer"];
    expect(wearerRules({ ...garment, wearer: { ...garment.wearer!, path } })).toMatchObject([
      { rule: "sizes.M.wearer", path },
    ]);
  });

  test("limits loops, and says how large the smallest is where it is too large", () => {
    expect(words(worn({ age: 5 }, large))).toEqual([`for a wearer of 5 years ${tooLarge}`]);
    expect(words(worn({ age: 10 }, large, { name: "collar" }))).toEqual([
      `for a wearer of 10 years ${tooLarge}`,
    ]);
  });

  test("judges a motif by the look whose largest loop is smallest", () => {
    expect(words(worn({ age: 5 }, { ...large, spread: { allow: [4, 5] } }))).toEqual([
      `for a wearer of 5 years ${tooLarge}`,
    ]);
    expect(words(worn({ age: 5 }, { ...large, spread: { allow: [2, 4] } }))).toEqual([
      `for a wearer of 5 years ${loop}`,
    ]);
  });

  test("says no size where the motif has no look at all", () => {
    expect(words(worn({ age: 5 }, { ...large, rules: ["spread >= interval"] }))).toEqual([
      `for a wearer of 5 years ${loop}`,
    ]);
  });

  test("forbids any cord on a hood, and says no more of loops that keep their limit", () => {
    expect(words(worn({ age: 5 }, small, { name: "hood" }))).toEqual([
      "for a wearer of 5 years no cord may lie on hood, and plait does",
    ]);
    expect(words(worn({ age: 5 }, large, { name: "hood" }))).toEqual([
      `for a wearer of 5 years no cord may lie on hood, and plait does; ${tooLarge}`,
    ]);
  });

  test("forbids a cord at the back of the neck only", () => {
    const forbidden =
      "for a wearer of 5 years plait may not go up to bind-off on back, because no cord may lie at the back of the neck";
    expect(words(worn({ age: 5 }, small, { name: "back" }))).toEqual([forbidden]);
    expect(words(worn({ age: 5 }, small, { name: "back", to: "low" }))).toEqual([
      `for a wearer of 5 years ${loop}`,
    ]);
  });

  test("names the piece and the motif that are in the way among others", () => {
    const pieces = { front: piece, back: piece, hood: piece };
    const garment = smallGarment({
      wearer: { age: 5 },
      pieces,
      motifs: { ropes: cable(6), plait: small },
      place: [
        laid("plait", "front", margins),
        laid("ropes", "hood", margins),
        laid("plait", "back", margins),
        laid("plait", "hood", margins, { to: "low" }),
      ],
    });
    expect(words(garment)).toEqual([
      "for a wearer of 5 years plait may not go up to bind-off on back, because no cord may lie at the back of the neck" +
        "; no cord may lie on hood, and plait does",
    ]);
  });
});
