import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cautionsFor, shortCautionsFor } from "../../../src/safety/cautions.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

async function cautions(sample: string, wearer = "", say = cautionsFor): Promise<string> {
  const text = `${readFileSync(`samples/${sample}.yaml`, "utf8")}\n${wearer}`;
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(`expected a fit, got: ${result.status}`);
  return say(result.fit).join("\n");
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

describe("cautions in short", () => {
  const short = (sample: string, wearer = "") => cautions(sample, wearer, shortCautionsFor);

  test("name the danger, the standards, what goes before them and where all of it stands, in a few lines", async () => {
    for (const wearer of ["", "wearer: { age: 5 }", "wearer: { age: 10 }", "wearer: { height: 150 cm }"]) {
      const said = await short("sleeve", wearer);
      expect(said).toContain("A cord can catch and strangle");
      for (const standard of ["EN 14682", "ASTM F1816", "16 CFR 1120.3"]) expect(said).toContain(standard);
      expect(said).toContain("the rules where the child lives go before them");
      expect(said).toContain("The command sheet says all of this in full.");
      expect(said).toContain("up to 53 mm round.");
      expect(said.length).toBeLessThan((await cautions("sleeve", wearer)).length / 2);
    }
    expect(await short("sleeve")).toContain("say who will wear this (wearer: { age, height })");
  });

  test("keep what is kept for a child, and from which name it was taken where a piece lies", async () => {
    const said = await short("child-pullover");
    expect(said).toContain("no cord lies on a hood, a collar or the back of the neck");
    expect(said).toContain("no loop of cord and cloth is more than 75 mm round");
    expect(said).toContain("read from their names: front as front.");
  });

  test("say what of a garment a young child may not have, where the file does not say who wears it", async () => {
    // 10 cord stitches of 100/26 mm and 9 needles by 7 rows of 100/28 and 100/40 mm: 38.46 + 36.59 mm.
    expect(await short("front")).toContain(
      "up to 76 mm round, which is over the 75 mm that a young child may have.",
    );
    expect(await short("sleeve")).not.toMatch(/over the 75 mm|no cord may lie/);
    const text = readFileSync("samples/sleeve.yaml", "utf8")
      .replaceAll("sleeve:", "hood:")
      .replaceAll("on: sleeve", "on: hood");
    const result = await fitHere(soundGarment(text), { rivals: 0 });
    if (result.status !== "fits") throw new Error(result.status);
    expect(shortCautionsFor(result.fit)).toContain(
      "For a child up to 7 years no cord may lie where one lies on hood.",
    );
  });

  test("are no shorter for a grown wearer, and none where no cord is laid", async () => {
    expect(await short("sleeve", "wearer: { age: 40 }")).toBe(
      await cautions("sleeve", "wearer: { age: 40 }"),
    );
    expect(await short("cable-sleeve")).toBe("");
  });
});
