import { readFileSync } from "node:fs";
import { XMLParser } from "fast-xml-parser";
import { beforeAll, describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { readAsk } from "../../../src/tradeoff/ask.ts";
import { bestBeside, markOf, plot } from "../../../src/tradeoff/plot.ts";
import { ticks } from "../../../src/tradeoff/ticks.ts";
import { type TradeOff, tradeOff } from "../../../src/tradeoff/trade.ts";
import { tradeSvg } from "../../../src/tradeoff/tradeoff-svg.ts";
import { tradeText } from "../../../src/tradeoff/tradeoff-text.ts";
import { soundGarment } from "../../support/run-garment.ts";

async function tradeIn(sample: string, between: string, hold?: string): Promise<TradeOff> {
  const garment = soundGarment(readFileSync(`samples/${sample}.yaml`, "utf8"));
  const ask = readAsk(garment, between, hold);
  if ("refused" in ask) throw new Error(ask.refused);
  const result = await tradeOff(garment, ask, simplexEngine);
  if (result.status !== "traded") throw new Error(result.status);
  return result;
}

const [two, three, beside] = ["two", "three", "beside"].map((name) => ({ name, trade: {} as TradeOff }));
beforeAll(async () => {
  two!.trade = await tradeIn("hat", "ease,interval");
  three!.trade = await tradeIn("hat", "ease,interval,rest");
  beside!.trade = await tradeIn("front", "balance,ease", "interval");
});

describe("the plot in letters", () => {
  test("keeps to its size, and to ASCII where nothing else is allowed", () => {
    for (const { trade } of [two!, three!, beside!])
      for (const columns of [30, 50, 76]) {
        const lines = plot(trade, { columns, rows: 14, unicode: false });
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(columns);
        expect(lines.join("")).toMatch(/^[\x20-\x7e]*$/);
        expect(lines).toHaveLength(14);
      }
  });

  test("has each point where its amounts say, the steps between them and all labels", () => {
    const lines = plot(two!.trade, { columns: 60, rows: 14, unicode: true });
    const places = two!.trade.points.map((_, index) => {
      const row = lines.findIndex(
        (line) => line.includes(`│${" "}`) && line.slice(3).includes(markOf(index)),
      );
      return { row, column: lines[row]!.indexOf(markOf(index), 3) };
    });
    for (const [index, place] of places.entries()) {
      const before = places[index - 1];
      if (!before) continue;
      expect(place.row).toBeGreaterThan(before.row);
      expect(place.column).toBeGreaterThan(before.column);
      // From the point before to the right, and down to this one.
      expect(lines[before.row]!.slice(before.column + 1, place.column)).toMatch(/^─*$/);
      expect(lines[before.row]![place.column]).toBe("┐");
    }
    expect(
      lines
        .slice(1)
        .map((line) => line.slice(0, 2).trim())
        .filter((label) => /\d/.test(label)),
    ).toEqual(["4", "2", "1", "0"]);
  });

  test("draws the points of three terms by their numbers in the list, and says which fall on one spot", () => {
    for (const { trade } of [two!, three!])
      for (const columns of [18, 30, 60]) {
        const lines = plot(trade, { columns, rows: 16, unicode: true });
        const drawn = lines.flatMap((line) =>
          [...(line.split("│")[1] ?? "")].filter((mark) => /\w/.test(mark)),
        );
        const text = lines.join(" ");
        const told = /On one spot, the first drawn: ([^.]*)\./.exec(text)?.[1] ?? "";
        const hidden = told.split("; ").flatMap((spot) => spot.split(/, | and /).slice(1));
        expect([...drawn, ...hidden].toSorted()).toEqual(
          trade.points.map((_, index) => markOf(index)).toSorted(),
        );
      }
  });

  test("tells between what the third term is, and marks a best fit that is no point", () => {
    const lines = plot(three!.trade, { columns: 60, rows: 14, unicode: true });
    expect(lines.join(" ")).toContain("Points as in the list, which tells everything else (weighed) of");
    expect(beside!.trade.bestAt).toBeUndefined();
    const marked = plot(beside!.trade, { columns: 60, rows: 14, unicode: true });
    expect(marked.some((line) => line.includes("│") && line.includes(bestBeside))).toBe(true);
    expect(marked.join("\n")).toContain("* is the best fit.");
  });
});

test("the table keeps to a narrow width too", () => {
  for (const { trade } of [two!, three!, beside!])
    for (const width of [40, 60, 100])
      for (const line of tradeText(trade, width, false).split("\n"))
        expect(line.length).toBeLessThanOrEqual(width);
});

describe("the drawing", () => {
  test.each([two!, three!, beside!])(
    "of $name is well-formed, and says in words what it shows",
    ({ trade }) => {
      const svg = tradeSvg(trade);
      const { svg: read } = new XMLParser({ ignoreAttributes: false }).parse(svg);
      expect(read["@_role"]).toBe("img");
      expect(read.title["#text"]).toContain("Trade-off between");
      const told = read.desc["#text"];
      trade.points.forEach((point, index) => {
        expect(told).toContain(`${index + 1}: ${trade.terms[0]!.name} `);
        expect(told).toContain(`cost ${point.fit.cost.toFixed(3)}`);
      });
      for (const unit of ["percentage points", "rows"]) expect(svg).toContain(`(${unit})</text>`);
      expect(svg.match(/<circle /g)?.length).toBe(trade.points.length);
      // Every point has its number, also where several fall on one spot.
      const numbers = [...svg.matchAll(/font-weight="bold"[^>]*>([\d, ]+?)(?: best fit)?<\/text>/g)].flatMap(
        ([, words]) => words!.split(", "),
      );
      for (const [index] of trade.points.entries()) expect(numbers).toContain(String(index + 1));
      expect(svg.includes("<polyline")).toBe(trade.terms.length === 2);
      expect(svg.includes('class="best"')).toBe(trade.bestAt === undefined);
    },
  );

  test("is the picture in the samples", async () => {
    await expect(tradeSvg(two!.trade)).toMatchFileSnapshot("../../../samples/pictures/tradeoff-hat.svg");
  });

  test("puts the points where its axes say", () => {
    const svg = tradeSvg(two!.trade);
    const circles = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    const across = circles.map(([x]) => x!);
    const share = (values: readonly number[], index: number) =>
      (values[index]! - values[0]!) / (values.at(-1)! - values[0]!);
    two!.trade.points.forEach((_, index) => {
      for (const [pixels, term] of [
        [across, 0],
        [circles.map(([, y]) => y!), 1],
      ] as const)
        expect(share(pixels, index)).toBeCloseTo(
          share(
            two!.trade.points.map(({ amounts }) => amounts[term]!),
            index,
          ),
          3,
        );
    });
  });
});

test("ticks are round numbers around what is shown", () => {
  expect(ticks(0, 4, 1)).toEqual([0, 1, 2, 3, 4]);
  expect(ticks(0, 1, 1)).toEqual([0, 1]);
  expect(ticks(3, 3, 1)).toEqual([3, 4]);
  expect(ticks(0.41, 2.6)).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3]);
  expect(ticks(12, 96)).toEqual([0, 20, 40, 60, 80, 100]);
});
