import { expect, test } from "vitest";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { checkFirstSection } from "../../../../src/sheet/document/check-first.ts";
import { needlesSection } from "../../../../src/sheet/document/needles.ts";
import { fitOfText } from "../../draw/support/scenes.ts";

const panel = (outline: string, more = ""): string => `format: evenrow/1
bed: { needles: 150 }
gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 17, over: 10 cm }
pieces:
  panel:
    outline: [${outline}]
    marks: { bend: 20 cm }
${more}motifs:
  plait: { like: crossed cord, interval: { allow: 4 } }
place:
  - { motif: plait, on: panel, from: cast-on, to: bend, margins: { bottom: 0..8, top: 0..8 } }
`;

test("a piece that leans to one side takes more of the bed than it ever has in work at once", async () => {
  const fit = await fitOfText(
    panel(
      "{ height: 0 cm, left: 10 cm, right: 10 cm }, { height: 20 cm, left: 10 cm, right: 10 cm }, { height: 40 cm, left: -5 cm, right: 25 cm }",
    ),
  );
  // The last row is knitted on the needles of the row before.
  const [, table] = needlesSection(fit, buildSheet(fit)).content;
  expect(table).toMatchObject({ rows: [["panel", "40, L20 to R20", "69, L20 to R49", "100", "right"]] });
});

const words = (text: string, found: readonly object[]): boolean => JSON.stringify(found).includes(text);

test("an edge that the bed can follow only from far off is told before anything is cast on", async () => {
  // 24 cm on each side go within 3 cm of height: six stitches a row, and they wait for the carriage.
  const steep =
    "{ height: 0 cm, width: 60 cm }, { height: 37 cm, width: 60 cm }, { height: 40 cm, width: 12 cm }";
  const { content } = checkFirstSection(await fitOfText(panel(steep)));
  expect(words("Knitted edge beside the outline: panel, left edge: at most", content)).toBe(true);
  expect(words("before it became", content)).toBe(false);

  const longer = checkFirstSection(
    await fitOfText(panel(steep, "    grow: 3 cm\n").replace("bottom: 0..8, top: 0..8", "bottom: 0, top: 0")),
  );
  expect(words("before it became", longer.content)).toBe(true);

  const straight = "{ height: 0 cm, width: 40 cm }, { height: 40 cm, width: 40 cm }";
  expect(words("beside the outline", checkFirstSection(await fitOfText(panel(straight))).content)).toBe(
    false,
  );
});
