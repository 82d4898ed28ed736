import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { conflictOf } from "../../src/explore/answer.ts";
import { givingSteps, tryStep } from "../../src/explore/steps.ts";
import { footer } from "../../tui/content/footer.ts";
import { frame } from "../../tui/content/frame.ts";
import { unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { keyListMarkdown, keySections } from "../../tui/content/key-list.ts";
import { plainText } from "../../tui/content/line.ts";
import { helpLines } from "../../tui/content/other-screens.ts";
import { keyName } from "../../tui/keys/key-name.ts";
import { bindingsAt, keyTable, placeOf } from "../../tui/keys.ts";
import { actions } from "../../tui/update/actions.ts";
import { frameSvg } from "../support/frame-svg.ts";
import { opened, sampleNames } from "./support/driver.ts";

describe("the key table", () => {
  test("is what the README, the help and the handlers hold", () => {
    expect(readFileSync("README.md", "utf8")).toContain(keyListMarkdown());
    expect(new Set(keyTable.map(({ action }) => action))).toEqual(new Set(Object.keys(actions)));
    expect(keySections().flatMap(({ bindings }) => bindings)).toHaveLength(keyTable.length);
    const help = helpLines(1_000).map(plainText).join("\n");
    for (const { keys, words } of keyTable) {
      expect(help).toContain(keys.map(keyName).join(", "));
      expect(help).toContain(words);
    }
  });

  test("is what the footer shows, without the keys that cannot be used now", async () => {
    const program = await opened("sleeve");
    const shown = (): string => footer(program.state(), 1_000, 1).map(plainText).join("");
    expect(shown()).not.toContain("undo");
    program.press("j", "+");
    expect(shown()).toContain("u undo");
    for (const { short, keys, unusable } of bindingsAt(placeOf(program.state())))
      if (short !== undefined && unusable?.(program.state()) === undefined)
        expect(shown()).toContain(`${keyName(keys[0]!)} ${short}`);
  });
});

test.each(sampleNames)("the picture of %s is what the screen shows", async (name) => {
  const [columns, rows] = [120, 40];
  const program = await opened(name, columns, rows);
  const { text } = program.garment().version;
  const { sequence } = program.state();
  const fit = program.garment().solving.shown?.fit;
  for (const step of givingSteps(program.garment().reading.rules)) {
    const outcome = await tryStep(text, `${name}.yaml`, step, fit, simplexEngine);
    if (outcome) program.send({ kind: "step", sequence, outcome });
  }
  program.send({ kind: "all tried", sequence });
  if (!fit) {
    const conflict = await conflictOf(program.garment().reading.garment!, simplexEngine);
    program.send({ kind: "conflict", sequence, conflict });
  }
  const title = `The screen of explore with the sample ${name}`;
  await expect(frameSvg(frame(program.state(), unicodeGlyphs), columns, title)).toMatchFileSnapshot(
    `../../samples/pictures/explore-${name}.svg`,
  );
});
