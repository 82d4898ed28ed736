import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { knit, type SheetPiece } from "../../../support/bed-simulator.ts";

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

const state = mkdtempSync(join(tmpdir(), "evenrow-refit-"));
afterAll(() => rmSync(state, { recursive: true, force: true }));

const evenrow = (...words: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const env = { ...process.env, XDG_STATE_HOME: state };
    execFile(process.execPath, ["dist/evenrow.js", ...words], { env }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });

const refit = (...words: readonly string[]): Promise<Ended> => evenrow("refit", ...words);

describe("refit", () => {
  test("tells the gauge, what changes and the sheet from the present row on", async () => {
    const { code, out } = await refit("samples/sleeve.yaml", "--row", "50", "--length", "17 cm");
    expect(code).toBe(0);
    expect(out).toContain("a row is 3.40 mm");
    expect(out).toContain("106 rows instead of 112");
    expect(out).toContain("The sheet, above row 50");
  });

  test("writes a sheet for programs that a bed can knit from its first row", async () => {
    const { code, out } = await refit("samples/front.yaml", "--row", "120", "--width", "50 cm", "--json");
    const told = JSON.parse(out) as { from_row: number; sheet: { pieces: SheetPiece[] } };
    expect([code, told.from_row]).toEqual([0, 120]);
    // Counts change above row 130, where the repeat in hand ends.
    const countsAt = (_: number, row: number): string => (row > 130 ? ", anew" : "");
    expect(knit(told.sheet.pieces[0]!, { countsAt }).violations).toEqual([]);
  });

  test("ends with 1 and the reason where nothing fits", async () => {
    const { code, out } = await refit("samples/sleeve.yaml", "--row", "107", "--length", "37 cm");
    expect(code).toBe(1);
    expect(out).toContain("as long as its outline already");
  });

  test.each([
    ["no row", ["--length", "17 cm"], "needs the row"],
    ["nothing measured", ["--row", "50"], "--length, --width or both"],
    ["a length without its unit", ["--row", "50", "--length", "17"], "--length"],
    ["no length at all", ["--row", "50", "--length", "0 cm"], "above 0"],
    ["a piece that is not there", ["--row", "50", "--length", "17 cm", "--piece", "sleev"], "sleeve"],
    ["a row beyond the piece", ["--row", "500", "--length", "17 cm"], "rows 1 to 111"],
    [
      "text under the name of a PDF",
      ["--row", "50", "--length", "17 cm", "-o", join(state, "refit.pdf")],
      "not as PDF",
    ],
    [
      "text under the name of HTML",
      ["--row", "50", "--length", "17 cm", "-o", join(state, "refit.HTML")],
      "not as HTML",
    ],
    ["a length that no cloth comes to", ["--row", "50", "--length", "40 cm"], "measure again"],
  ])("ends with 2 for %s", async (_, words, said) => {
    const { code, out, err } = await refit("samples/sleeve.yaml", ...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(said);
  });

  test("says so where the row counter follows a sheet that was fitted anew", async () => {
    const here = ["samples/sleeve.yaml", "--row", "70", "--length", "24 cm"];
    expect((await refit(...here)).err).toBe("");
    await evenrow("work", "samples/sleeve.yaml", "--row", "50");
    await evenrow("work", "samples/sleeve.yaml", "--measure", "17 cm", "--refit");
    const { code, err } = await refit(...here);
    expect(code).toBe(0);
    expect(err).toMatch(/^The row counter follows another sheet of sleeve from row \d+ on/);
    expect(err).toContain("evenrow work samples/sleeve.yaml --measure LENGTH --refit");
  });
});
