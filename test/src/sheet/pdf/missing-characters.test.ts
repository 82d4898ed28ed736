import { describe, expect, test } from "vitest";
import { missingCharacters } from "../../../../src/sheet/pdf/missing-characters.ts";
import { ownTypeface } from "../../../../src/typeface/typeface.ts";
import { tinyDocument } from "../support/tiny-document.ts";
import { openPage, ownFaces } from "./support/drawn-by-pdfkit.ts";

describe.each([
  ["the program's typeface", ownTypeface()!],
  ["the PDF's own", ownFaces],
])("of %s", (_, faces) => {
  const missingIn = async (title: string): Promise<readonly string[]> => {
    const { doc } = await openPage(faces.regular);
    return missingCharacters(doc, faces, tinyDocument({ title }));
  };

  test("nothing is missing of what a sheet is written in", async () => {
    expect(await missingIn('Grüße, "déjà" \\ 20 ± 0.3 cm')).toEqual([]);
  });

  test("each character that it has no picture of is told once, in their order", async () => {
    expect(await missingIn("Sleeve 袖 ω 袖 𝄞")).toEqual(["袖", "ω", "𝄞"]);
  });
});
