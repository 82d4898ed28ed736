import { describe, expect, test } from "vitest";
import { SIZES } from "../../src/sizes/body.ts";
import { FITS } from "../../src/sizes/fits.ts";

/**
 * The body measurements of the Craft Yarn Council's Standards & Guidelines, written down here a second time from a text
 * copy of its tables: inches, and in brackets the centimetres that are printed beside them. A dot is a value that was
 * not seen, a ? one that is from memory.
 */
const TABLES = {
  baby: `
                          | 3 months    | 6 months    | 12 months   | 18 months   | 24 months
chest                     | 16 (40.5)   | 17 (43)     | 18 (45.5)   | 19 (48)     | 20 (50.5)
back waist length         | 6 (15.5)    | 7 (17.5)    | 7.5 (19)    | 8 (20.5)    | 8.5 (21.5)
cross back                | 7.25 (18.5) | 7.75 (19.5) | 8.25 (21)   | 8.5 (21.5)  | 8.75 (22)
arm length to underarm    | 6 (15.5)    | 6.5 (16.5)  | 7.5 (19)    | 8 (20.5)    | 8.5 (21.5)
upper arm                 | 5.5 (14)    | 6 (15.5)    | 6.5 (16.5)  | 7 (17.5)    | 7.5 (19)
armhole depth             | 3.25 (8.5)  | 3.5 (9)     | 3.75 (9.5)  | 4 (10)      | 4.25 (10.5)
waist                     | 18          | 19          | 20          | 20.5        | 21
hips                      | 19          | 20          | 20          | 21          | 22
centre back neck to wrist | 10.5 (26.5) | 11.5 (29)   | 12.5 (31.5) | 14 (35.5)   | 18 (45.5)`,
  child: `
                          | 2       | 4         | 6         | 8         | 10      | 12      | 14        | 16
chest                     | 21 (53) | 23 (58.5) | 25 (63.5) | 26.5 (67) | 28 (71) | 30 (76) | 31.5 (80) | 32.5 (82.5)
back waist length         | 8.5     | 9.5       | 10.5      | 12.5      | 14      | 15      | 15.5      | 16
cross back                | 9.25    | 9.75      | 10.25     | 10.75     | 11.25   | 12      | 12.25     | 13
arm length to underarm    | 8.5     | 10.5      | 11.5      | 12.5      | 13.5    | 15      | 16        | 16.5
upper arm                 | 7       | 7.5       | 8         | 8.5       | 8.75    | 9       | 9.25      | 9.5
armhole depth             | 4.25    | 4.75      | 5         | 5.5       | 6       | 6.5     | 7         | 7.5
waist                     | 21      | 21.5      | 22.5      | 23.5      | 24.5    | 25      | 26.5      | 27.5
hips                      | 22      | 23.5      | 25        | 28        | 29.5    | 31.5    | 33        | 35.5
centre back neck to wrist | 18      | 19.5      | 20.5      | 22        | 24      | 26      | 27        | 28`,
  woman: `
                          | XS            | S             | M                 | L                   | XL                | 2X      | 3X      | 4X      | 5X
chest                     | 28-30 (71-76) | 32-34 (81-86) | 36-38 (91.5-96.5) | 40-42 (101.5-106.5) | 44-46 (111.5-117) | 48-50 ? | 52-54 ? | 56-58 ? | 60-62 ?
back waist length         | 16.5 (42)     | 17 (43)       | 17.25 (43.5)      | 17.5 (44.5)         | 17.75 (45)        | .       | .       | .       | .
cross back                | 14-14.5       | 14.5-15       | 15.5-16           | 16.5-17             | 17.5              | .       | .       | .       | .
arm length to underarm    | 16.5 (42)     | 17 (43)       | 17 (43)           | 17.5 (44.5)         | 17.5 (44.5)       | .       | .       | .       | .
upper arm                 | 9.75 (25)     | 10.25 (26)    | 11 (28)           | 12 (30.5)           | 13.5 (34.5)       | .       | .       | .       | .
armhole depth             | 6-6.5         | 6.5-7         | 7-7.5             | 7.5-8               | 8-8.5             | .       | .       | .       | .
waist                     | 23-24         | 25-26.5       | 28-30             | 32-34               | 36-38             | .       | .       | .       | 49-50
hips                      | 33-34         | 35-36         | 38-40             | 42-44               | 46-48             | 52-53   | 54-55   | 56-57   | 61-62
centre back neck to wrist | 26-26.5       | 27-27.5       | 28-28.5           | 29-29.5             | 29-29.5           | 30-30.5 | 30.5-31 | 31.5-32 | 31.5-32`,
  man: `
                          | S               | M                  | L                   | XL                | 2X    | 3X    | 4X    | 5X
chest                     | 34-36 (86-91.5) | 38-40 (96.5-101.5) | 42-44 (106.5-111.5) | 46-48 (116.5-122) | 50-52 | 54-56 | 58-60 | 62-64
back hip length           | 23-24 (58.5-61) | 25-26              | 26-27               | 28 (71)           | 29    | 30    | 30    | .
cross back                | 15.5-16         | 16.5-17            | 17.5-18             | 18-18.5           | .     | .     | .     | .
arm length to underarm    | 18 (45.5)       | 18.5 (47)          | 19.5 (49.5)         | 20 (50.5)         | .     | .     | .     | .
upper arm                 | 12 (30.5)       | 13 (33)            | 15 (38)             | 15.5 (39.5)       | .     | .     | .     | .
armhole depth             | 8.5-9           | 9-9.5              | 9.5-10              | 10-10.5           | .     | .     | .     | .
waist                     | 28-30           | 32-34              | 36-38               | 42-44             | .     | .     | .     | .
hips                      | 35-37           | 39-41              | 43-45               | 47-49             | .     | .     | .     | .
centre back neck to wrist | 32-32.5         | 33-33.5            | 34-34.5             | 35-35.5           | .     | .     | .     | .`,
} as const;

interface Cell {
  readonly size: string;
  readonly measure: string;
  readonly printed: string;
}

function cellsOf(of: string, table: string): readonly Cell[] {
  const [head, ...rows] = table
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => line.split("|").map((part) => part.trim()));
  const sizes = head!.slice(1);
  return rows.flatMap(([measure, ...values]) =>
    values.map((printed, column) => ({ size: `${of} ${sizes[column]}`, measure: measure!, printed })),
  );
}

const CELLS = Object.entries(TABLES).flatMap(([of, table]) => cellsOf(of, table));

const lengthOf = ({ size, measure }: Cell) =>
  [...(SIZES.get(size)?.lengths ?? [])].find(([name]) => name === measure)?.[1];

const rangeOf = (text: string, unitMm: number): readonly [number, number] => {
  const [least, most = least] = text.split("-").map((value) => Number(value) * unitMm);
  return [least!, most!];
};

describe("sizes", () => {
  test("are those of the tables, and no others", () => {
    expect(new Set(SIZES.keys())).toEqual(new Set(CELLS.map(({ size }) => size)));
    expect(CELLS).toHaveLength(9 * (5 + 8 + 9 + 8));
  });

  test.each(CELLS)("$size: $measure is $printed", (cell) => {
    const length = lengthOf(cell);
    const { inches, cm, memory } =
      /^(?<inches>[\d.-]+)(?: \((?<cm>[\d.-]+)\))?(?<memory> \?)?$/.exec(cell.printed)?.groups ?? {};
    if (cell.printed === ".") {
      expect(length).toBeUndefined();
      return;
    }
    const [leastMm, mostMm] = cm === undefined ? rangeOf(inches!, 25.4) : rangeOf(cm, 10);
    expect(length).toMatchObject({ leastMm, mostMm, mm: (leastMm + mostMm) / 2 });
    // The printed centimetres are the inches to about the nearest half, so that a slip of the pen would show.
    const [leastOfInches, mostOfInches] = rangeOf(inches!, 25.4);
    expect(Math.abs(leastMm - leastOfInches)).toBeLessThanOrEqual(4);
    expect(Math.abs(mostMm - mostOfInches)).toBeLessThanOrEqual(4);
    expect(/from memory/.test(length?.uncertain ?? "")).toBe(memory !== undefined);
  });

  test("say that a woman's cross back and neck to wrist may differ by up to an inch, and nothing else printed", () => {
    const uncertain = CELLS.filter((cell) => /up to 1 in/.test(lengthOf(cell)?.uncertain ?? ""));
    expect(uncertain.every(({ size }) => size.startsWith("woman"))).toBe(true);
    expect(new Set(uncertain.map(({ measure }) => measure))).toEqual(
      new Set(["cross back", "centre back neck to wrist"]),
    );
    expect(uncertain).toHaveLength(5 + 9);
  });

  test("have neither a wrist nor a neck, which the tables do not have", () => {
    for (const { lengths } of SIZES.values())
      for (const measure of lengths.keys()) expect(measure).not.toMatch(/^(wrist|neck)/);
  });
});

describe("published examples", () => {
  const inches = (mm: number | undefined): number => (mm ?? Number.NaN) / 25.4;
  const bodyOf = (size: string) => SIZES.get(size)!.lengths;

  test("a woman's M: upper arm 11 in, 28 cm; sleeve 17 in, 43 cm", () => {
    const body = bodyOf("woman M");
    expect([body.get("upper arm")?.mm, body.get("arm length to underarm")?.mm]).toEqual([280, 430]);
  });

  test("a child of 6: chest 25, sleeve 11.5, back 10.5 in", () => {
    const body = bodyOf("child 6");
    expect(body.get("chest")?.mm).toBe(635);
    expect(inches(body.get("arm length to underarm")?.mm)).toBeCloseTo(11.5, 9);
    expect(inches(body.get("back waist length")?.mm)).toBeCloseTo(10.5, 9);
  });

  test("a man's L: chest 42 to 44 in, upper arm 15 in", () => {
    const body = bodyOf("man L");
    expect(body.get("chest")).toMatchObject({ leastMm: 1065, mostMm: 1115 });
    expect(body.get("upper arm")?.mm).toBe(380);
  });

  // A designer's page, "Factoring in ease": chest 40 in with the standard ease of 2 to 4 in makes 42 to 44 in.
  test("a chest of 40 in with the standard ease makes 42 to 44 in", () => {
    const { leastMm, mostMm, mm } = FITS.get("standard")!;
    expect([40 + inches(leastMm), 40 + inches(mostMm)]).toEqual([42, 44]);
    expect(mm).toBe((leastMm + mostMm) / 2);
  });
});
