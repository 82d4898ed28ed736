import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { breakDown } from "../../src/fit/refusal.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import { wearerGroup } from "../../src/safety/wearer-group.ts";
import { buildSheet } from "../../src/sheet/build-sheet.ts";
import { fitHere, soundGarment } from "../support/run-garment.ts";

const sleeve = readFileSync("samples/sleeve.yaml", "utf8");

/** The sample's piece under another name, for a wearer. */
const garmentFor = (wearer: string, piece = "sleeve", change: (text: string) => string = (text) => text) =>
  soundGarment(
    `wearer: ${wearer}\n${change(sleeve).replace("  sleeve:", `  ${piece}:`).replace("on: sleeve", `on: ${piece}`)}`,
  );

const fitted = (...parts: Parameters<typeof garmentFor>): Promise<FitResult> =>
  fitHere(garmentFor(...parts), { rivals: 0 });

describe("cords on children's clothing", () => {
  // EN 14682: no decorative cord on a young child's hood (a national safety authority's page on cords and drawstrings;
  // a consumer authority's page on children's clothes).
  test("a cord on the hood of a child of 5 is refused, and the rule named", async () => {
    expect((await fitted("{ age: 5 }", "hood")).status).toBe("does not fit");
    const { rules } = await breakDown(garmentFor("{ age: 5 }", "hood"), simplexEngine);
    expect(rules.map(({ rule, words }) => [rule, words])).toEqual([
      ["wearer", "for a wearer of 5 years no cord may lie on hood, and plait does"],
    ]);
    expect((await fitted("{ age: 8 }", "hood")).status).toBe("fits");
    expect((await fitted("{ age: 5 }", "sleeve")).status).toBe("fits");
  });

  test("so is one that goes up to the back of the neck, and one that ends below it is not", async () => {
    const up = (text: string): string => text.replace("to: underarm", "to: bind-off");
    expect((await fitted("{ age: 5 }", "back", up)).status).toBe("does not fit");
    const { rules } = await breakDown(garmentFor("{ age: 5 }", "back", up), simplexEngine);
    expect(rules.map(({ rule }) => rule)).toEqual(["wearer"]);
    expect(rules[0]?.words).toContain("no cord may lie at the back of the neck");
    const lower = (text: string): string => text.replace("underarm: 33 cm", "underarm: 31 cm");
    expect((await fitted("{ age: 5 }", "back", lower)).status).toBe("fits");
  });

  // EN 14682: a young child is one of up to 7 years, 134 cm (the same authority).
  test("134 cm is a young child, 135 cm an older one", async () => {
    const of = (heightMm: number) => wearerGroup({ path: ["wearer"], heightMm });
    expect([of(1340), of(1350)]).toEqual(["young", "older"]);
    expect((await fitted("{ height: 134 cm }", "hood")).status).toBe("does not fit");
    expect((await fitted("{ height: 135 cm }", "hood")).status).toBe("fits");
  });

  // A loop of 7.5 cm at most (a testing house on the changes of 2014). By hand, 8 rows up and 9 needles across at 22 x 31
  // over 10 cm are hypot(40.9, 25.8) = 48.4 mm of cloth: no cord over it makes a loop of 75 mm.
  test("a loop of more than 75 mm round is not fitted, and the refusal says how large the smallest is", async () => {
    const wide = (text: string): string =>
      text.replace("allow: [2, 4, 6, 8]", "allow: [8]").replace("allow: 2..9", "allow: [5]");
    expect((await fitted("{ age: 40 }", "sleeve", wide)).status).toBe("fits");
    expect((await fitted("{ age: 10 }", "sleeve", wide)).status).toBe("fits");
    expect((await fitted("{ age: 5 }", "sleeve", wide)).status).toBe("does not fit");
    const { rules } = await breakDown(garmentFor("{ age: 5 }", "sleeve", wide), simplexEngine);
    // 9 cord stitches of 5.263 mm, with -2.0 % of ease, and the cloth behind them: 47.4 + 48.4 mm.
    expect(rules[0]?.words).toContain("a loop of plait may be 75 mm round at most, cord and cloth together");
    expect(rules[0]?.words).toContain("its smallest would be 96 mm");
    expect(rules.map(({ rule }) => rule)).toContain("motifs.plait.spread");
  });

  test("a child's sample is fitted with smaller loops than a grown wearer's would have", async () => {
    const text = readFileSync("samples/child-pullover.yaml", "utf8");
    const [child, grown] = await Promise.all(
      [text, text.replace(/^wearer:.*$/m, "wearer: { age: 40 }")].map((one) =>
        fitHere(soundGarment(one), { rivals: 0 }),
      ),
    );
    if (child?.status !== "fits" || grown?.status !== "fits") throw new Error("both have to fit");
    expect([...child.fit.looks[0]!.values.values()]).toEqual([5, 5]);
    expect([...grown.fit.looks[0]!.values.values()]).toEqual([6, 6]);
  });

  // Free ends are limited to 75 mm at the neck and 140 mm elsewhere (a consumer authority, 22 June 2010): none is left.
  test("every strand on a sheet is fastened where it ends, so that there is no free end", async () => {
    const result = await fitted("{ age: 9 }", "hood");
    if (result.status !== "fits") throw new Error("it has to fit");
    const actions = buildSheet(result.fit).pieces.flatMap(({ rows }) => rows.flatMap((row) => row.do));
    const hung = new Set(actions.flatMap((action) => (action.act === "hang" ? [action.strand] : [])));
    const closed = actions.flatMap((action) => (action.act === "finish" ? [action.strand] : []));
    expect(closed.sort()).toEqual([...hung].sort());
  });
});
