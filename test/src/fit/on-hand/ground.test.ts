import { describe, expect, test } from "vitest";
import { type CountedPiece, countPiece } from "../../../../src/cloth/counted-piece.ts";
import { groundStitch } from "../../../../src/cloth/gauge.ts";
import { type Field, fieldsOf } from "../../../../src/fit/field.ts";
import type { Layout } from "../../../../src/fit/layouts.ts";
import { groundOfLayouts, layoutsByLength } from "../../../../src/fit/on-hand/ground.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { stitchesIn } from "../../../../src/yarn/stitches.ts";
import { garmentText } from "../../../support/garment-text.ts";

/**
 * A piece of 40 rows that may be made 2 rows longer and 1 row shorter, with motifs from one mark to another, and a piece
 * without any. A row is 4 mm high, a stitch 5 mm wide.
 */
function garment(
  widths: readonly [string, string],
  ...places: readonly (readonly [string, string])[]
): Garment {
  const text = garmentText({
    gauge: `gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 40, over: 10 cm }`,
    pieces: `pieces:
  strip:
    make: 2
    outline: [{ height: 0 cm, width: ${widths[0]} }, { height: 16 cm, width: ${widths[1]} }]
    marks: { low: 4 cm, middle: 8 cm, high: 12 cm }
    grow: 8 mm
    shrink: 4 mm
  other: { outline: [{ height: 0 cm, width: 10 cm }, { height: 8 cm, width: 10 cm }], grow: 4 mm }`,
    place: `place:
${places.map(([from, to]) => `  - { motif: plait, on: strip, from: ${from}, to: ${to} }`).join("\n")}
  - { motif: plait, on: other, from: cast-on, to: bind-off }`,
  });
  return readGarment(text, "test.yaml").garment!;
}

const straight = ["10 cm", "10 cm"] as const;
const wedge = ["10 cm", "17 cm"] as const;

/** What a layout of a field says of the ground, knitted as this piece. */
const told = (fields: readonly Field[], teller: number, piece: CountedPiece): number =>
  groundOfLayouts(fields)({
    place: { field: fields[teller]!, pieces: [{ piece, fromRow: 0 }] },
  } as unknown as Parameters<ReturnType<typeof groundOfLayouts>>[0]);

describe("the ground of a piece", () => {
  const knitted = (file: Garment, name = "strip"): CountedPiece =>
    countPiece(file.pieces.find((piece) => piece.name === name)!, groundStitch(file.gauge));

  test("is told once, by the first of the placements that change it alike", () => {
    const file = garment(straight, ["cast-on", "bind-off"], ["cast-on", "bind-off"]);
    const fields = fieldsOf(file);
    // 20 needles by 40 rows, and 20 by 20.
    expect(told(fields, 0, knitted(file))).toBe(800);
    expect(told(fields, 1, knitted(file))).toBe(0);
    expect(told(fields, 2, knitted(file, "other"))).toBe(400);
  });

  test("is told by the one placement that can change it, whichever that is", () => {
    // The first two share rows without being one stretch, so that neither may change.
    const file = garment(straight, ["cast-on", "middle"], ["low", "high"], ["high", "bind-off"]);
    const fields = fieldsOf(file);
    expect(fields.map(({ leastChange, mostChange }) => [leastChange + 0, mostChange])).toEqual([
      [0, 0],
      [0, 0],
      [-1, 2],
      [0, 1],
    ]);
    expect([0, 1, 2].map((teller) => told(fields, teller, knitted(file)))).toEqual([0, 0, 800]);
  });

  test.each([
    ["longer", { leastChange: 0, mostChange: 1 }],
    ["shorter", { leastChange: -1, mostChange: 0 }],
  ])("is told by one that can only become %s", (_, change) => {
    const file = garment(straight, ["cast-on", "middle"], ["low", "high"], ["high", "bind-off"]);
    const fields = fieldsOf(file).map((field) => (field.index === 2 ? { ...field, ...change } : field));
    expect([0, 1, 2].map((teller) => told(fields, teller, knitted(file)))).toEqual([0, 0, 800]);
  });

  test("is told by the first placement where nothing can change", () => {
    const file = garment(straight, ["cast-on", "middle"], ["low", "high"]);
    expect([0, 1].map((teller) => told(fieldsOf(file), teller, knitted(file)))).toEqual([800, 0]);
  });

  test("is told by no placement alone where two stretches can change", () => {
    const file = garment(straight, ["cast-on", "middle"], ["middle", "bind-off"]);
    expect([0, 1].map((teller) => told(fieldsOf(file), teller, knitted(file)))).toEqual([0, 0]);
  });

  test("is added up once for one piece", () => {
    const file = garment(straight, ["cast-on", "bind-off"]);
    const fields = fieldsOf(file);
    let reads = 0;
    const piece = knitted(file);
    const watched = new Proxy(piece, {
      get(of, key: keyof CountedPiece) {
        reads += 1;
        return of[key];
      },
    });
    const ground = groundOfLayouts(fields);
    const ask = (): number =>
      ground({
        place: { field: fields[0]!, pieces: [{ piece: watched, fromRow: 0 }] },
      } as unknown as Parameters<typeof ground>[0]);
    expect(ask()).toBe(800);
    const before = reads;
    expect(ask()).toBe(800);
    expect(reads).toBe(before);
  });
});

/** Two supplies take of the ground, half a metre and 2 g a stitch; one unit of the second adds 0.25 to the cost. */
const supplies = {
  measures: [
    { name: "metres", ofLook: () => 0, ofLayout: () => 0 },
    { name: "grams", ofLook: () => 0, ofLayout: () => 0, costEach: 0.25 },
  ],
  ofGround: (stitches: number) => [stitches / 2, 2 * stitches],
};

/** A layout for every change of each field, which takes 7 of something else beside. */
const plainLayouts = (fields: readonly Field[]): readonly (readonly Layout[])[] =>
  fields.map((field) =>
    Array.from(
      { length: field.mostChange - field.leastChange + 1 },
      (_, index) =>
        ({
          field,
          change: field.leastChange + index,
          amounts: [1, 0, 7],
          cost: 10,
        }) as unknown as Layout,
    ),
  );

/** Every way to pick one layout for each of some placements that can be picked together. */
const together = (layouts: readonly (readonly Layout[])[]): readonly (readonly Layout[])[] =>
  layouts
    .reduce<readonly (readonly Layout[])[]>(
      (ways, own) => ways.flatMap((way) => own.map((one) => [...way, one])),
      [[]],
    )
    .filter((way) => new Set(way.map(({ variant }) => variant)).size === 1);

/** Changes of both stretches by which the strip gets no longer and no shorter than it may. */
const changesWithin = (least: number, most: number): readonly string[] => {
  const changes: string[] = [];
  for (let low = -1; low <= 2; low++)
    for (let high = -1; high <= 2; high++)
      if (low + high >= least && low + high <= most) changes.push(`${low},${high}`);
  return changes.sort();
};

/** Whatever is picked, its layouts tell the strip's stitches as often as the strip is made, and what they cost. */
function expectTold(
  file: Garment,
  fields: readonly Field[],
  made: readonly (readonly Layout[])[],
  extra = 0,
): void {
  const strip = file.pieces[0]!;
  for (const way of together(made.slice(0, fields.length - 1))) {
    const stretches = new Map(
      way.map(({ field: { fromRow, toRow }, change }) => [fromRow, { fromRow, toRow, change }]),
    );
    if (way.some(({ field, change }) => stretches.get(field.fromRow)!.change !== change)) continue;
    const counted = countPiece(strip, groundStitch(file.gauge), [...stretches.values()], extra);
    const stitches = 2 * stitchesIn(counted);
    const sums = [0, 1, 2].map((at) => way.reduce((sum, { amounts }) => sum + amounts[at]!, 0));
    expect(sums).toEqual([stitches / 2 + way.length, 2 * stitches, 7 * way.length]);
    const cost = way.reduce((sum, one) => sum + one.cost, 0);
    expect(cost).toBeCloseTo(10 * way.length + 0.25 * 2 * stitches, 6);
  }
}

describe("the ground of a piece of which two stretches can change", () => {
  const nothingLost = () => 0;

  test("is what each of them adds where it is straight", () => {
    const file = garment(straight, ["cast-on", "middle"], ["middle", "bind-off"]);
    const fields = fieldsOf(file);
    const layouts = plainLayouts(fields);
    const made = layoutsByLength(file, fields, layouts, supplies, nothingLost);
    expect(made.flat().every(({ variant }) => variant === undefined)).toBe(true);
    expect(together(made.slice(0, 2))).toHaveLength(16);
    expectTold(file, fields, made);
    expect(made[2]).toBe(layouts[2]);
    // 40 rows of 20 needles, twice, with the lower stretch; two rows more on the upper one are 80 stitches more.
    const plain = (own: readonly Layout[], rows: number) =>
      own.find(({ change }) => change === rows)!.amounts[0];
    expect(plain(made[0]!, 0)).toBe(1 + 800);
    expect(plain(made[1]!, 0)).toBe(1);
    expect(plain(made[1]!, 2)).toBe(1 + 40);
  });

  test("is the same where it can only become longer", () => {
    const file = garment(straight, ["cast-on", "middle"], ["middle", "bind-off"]);
    const fields = fieldsOf(file).map((field) => ({ ...field, leastChange: 0 }));
    const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
    expect(made.flat().every(({ variant }) => variant === undefined)).toBe(true);
    expect(together(made.slice(0, 2))).toHaveLength(9);
    expectTold(file, fields, made);
  });

  test("leaves no layout that changes a piece which has to keep its rows", () => {
    const file = garment(straight, ["cast-on", "middle"], ["middle", "bind-off"]);
    const fields = fieldsOf(file).map((field) => ({
      ...field,
      leastChange: 0,
      steadyChanges: { least: 0, most: 0 },
    }));
    const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
    expect(made.slice(0, 2).map((own) => own.map(({ change }) => change))).toEqual([[0], [0]]);
    expectTold(file, fields, made);
  });

  test.each([0, 1])("lets the piece change as far as the stretch that can change further: %d", (further) => {
    const file = garment(wedge, ["cast-on", "middle"], ["middle", "bind-off"]);
    const fields = fieldsOf(file).map((field) =>
      field.index === further ? field : { ...field, leastChange: 0, mostChange: 1 },
    );
    const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
    const changes = together(made.slice(0, 2)).map((way) => way.map(({ change }) => change));
    // -1 to 2 rows on the one, 0 or 1 on the other, no more than 2 and no fewer than -1 together.
    expect(changes.map((own) => own[further]).sort((a, b) => a! - b!)).toEqual([-1, -1, 0, 0, 1, 1, 2]);
    expectTold(file, fields, made);
  });

  test("is told by one of several placements on a stretch", () => {
    const file = garment(straight, ["cast-on", "middle"], ["middle", "bind-off"], ["cast-on", "middle"]);
    const fields = fieldsOf(file);
    const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
    expectTold(file, fields, made);
    expect(made.map((own) => own.length)).toEqual([4, 4, 4, 2]);
    const telling = made.slice(0, 3).map((own) => own.some(({ amounts }) => amounts[1] !== 0));
    expect(telling.filter((tells) => tells)).toHaveLength(2);
  });

  test("is told variant by variant where what one adds hangs on the other", () => {
    const file = garment(wedge, ["cast-on", "middle"], ["middle", "bind-off"]);
    const fields = fieldsOf(file);
    const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
    const ways = together(made.slice(0, 2));
    expect(ways.map((way) => way.map(({ change }) => change).join()).sort()).toEqual(changesWithin(-1, 2));
    for (const way of ways) expect(way[0]!.variant).toBe(way.map(({ change }) => change).join());
    expectTold(file, fields, made);
    for (const { amounts } of made[1]!) expect(amounts).toEqual([1, 0, 7]);
  });

  test("has the needles that make up for what its motifs draw in", () => {
    for (const widths of [straight, wedge]) {
      const file = garment(widths, ["cast-on", "middle"], ["middle", "bind-off"]);
      const fields = fieldsOf(file);
      const asked: (readonly number[])[] = [];
      const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, (onPiece) => {
        asked.push(onPiece.map(({ index }) => index));
        return 4;
      });
      // Half of four stitches' width at either side.
      expectTold(file, fields, made, 2);
      expect(asked).toEqual([[0, 1]]);
    }
  });

  test.each([
    [-2, 1],
    [0, 9],
    [-9, -1],
  ])("keeps a piece that has to stay steady between %d and %d rows more", (least, most) => {
    for (const widths of [straight, wedge]) {
      const file = garment(widths, ["cast-on", "middle"], ["middle", "bind-off"]);
      const fields = fieldsOf(file).map((field) => ({ ...field, steadyChanges: { least, most } }));
      const made = layoutsByLength(file, fields, plainLayouts(fields), supplies, nothingLost);
      expectTold(file, fields, made);
      const changes = together(made.slice(0, 2)).map((way) => way.map(({ change }) => change).join());
      const within = changesWithin(Math.max(-1, least), Math.min(2, most));
      // Only where each stretch adds so many stitches by itself is the sum of the changes left to the program.
      if (made[0]!.some(({ variant }) => variant !== undefined)) expect(changes.sort()).toEqual(within);
      else expect(changes).toEqual(expect.arrayContaining([...within]));
    }
  });

  test("stays as it was told where one stretch alone can change", () => {
    const file = garment(straight, ["cast-on", "bind-off"]);
    const fields = fieldsOf(file);
    const layouts = plainLayouts(fields);
    expect(layoutsByLength(file, fields, layouts, supplies, nothingLost)).toEqual(layouts);
  });
});
