import { expect, test } from "vitest";
import { castOnWords } from "../../../../src/sheet/document/cast-on.ts";

test("a piece is begun with waste yarn and with the carriage where its first row has it", () => {
  const words = (carriage: "left" | "right") =>
    castOnWords({
      piece: "pocket",
      needlesAtStart: [-5, 5],
      rowsInAll: 9,
      rows: [
        { row: 0, carriage, needles: [-5, 5], do: [] },
        { row: 9, carriage: carriage === "left" ? "right" : "left", needles: [], do: [] },
      ],
    });
  expect(words("right")).toEqual([
    {
      kind: "paragraph",
      text: "Knit a few rows of waste yarn, then set the row counter to 0 with the carriage at the right.",
    },
  ]);
  expect(words("left")[0]!.text).toContain("with the carriage at the left.");
});
