import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cautionsFor } from "../../../src/safety/cautions.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

async function cautions(sample: string, wearer = ""): Promise<string> {
  const text = `${readFileSync(`samples/${sample}.yaml`, "utf8")}\n${wearer}`;
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(`expected a fit, got: ${result.status}`);
  return cautionsFor(result.fit).join("\n");
}

describe("cautions", () => {
  test("name each standard with what it covers, as values to check and not as advice", async () => {
    for (const wearer of ["", "wearer: { age: 5 }", "wearer: { age: 10 }", "wearer: { height: 150 cm }"]) {
      const said = await cautions("sleeve", wearer);
      expect(said).toMatch(/Check in the current EN 14682 \(Europe: cords on children's clothing/);
      expect(said).toMatch(/current ASTM F1816 and 16 CFR 1120\.3 \(United States: drawstrings/);
      expect(said).toContain("the rules where the child lives go before them");
      expect(said).toContain("nothing here is legal advice");
      expect(said).toContain("Fasten both ends of every cord inside");
      // 5 cord stitches of 100/19 mm and 5 needles across by 4 rows up of 100/22 and 100/31 mm: 26.32 + 26.14 mm.
      expect(said).toContain("up to 53 mm round");
    }
  });

  test("say whom the garment is for, or that the file does not say", async () => {
    expect(await cautions("sleeve")).toContain("does not say who will wear this");
    expect(await cautions("sleeve", "wearer: { age: 18 months }")).toContain("a wearer of 18 months");
    expect(await cautions("sleeve", "wearer: { age: 10, height: 140 cm }")).toContain(
      "a wearer of 10 years and 140 cm",
    );
    expect(await cautions("sleeve", "wearer: { height: 150 cm }")).toContain(
      "If the wearer is grown, say the age.",
    );
  });

  test("say where a piece was taken to lie, unless the file says it of itself", async () => {
    expect(await cautions("sleeve")).toContain("read from their names: sleeve as sleeve.");
    const pullover = await cautions("child-pullover");
    expect(pullover).toContain("read from their names: front as front.");
    expect(pullover).not.toContain("back panel as");
  });

  test("for a grown wearer are that the ends are fastened, and none where no cord is laid", async () => {
    const grown = await cautions("sleeve", "wearer: { age: 40 }");
    expect(grown).toContain("Fasten both ends");
    expect(grown).not.toMatch(/child|EN 14682/);
    expect(await cautions("cable-sleeve")).toBe("");
  });
});
