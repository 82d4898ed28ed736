import { beforeAll, describe, expect, test } from "vitest";
import { checkFit } from "../../src/fit/check.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { FitResult } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { gaugesWithin, numbersFrom, type TrueGauge } from "../support/gauges.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fraction, lengthMm } from "../support/referee/entries.ts";
import { wearerRules } from "../support/referee/wearer.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 120;

interface Judged {
  readonly plain: GarmentFile;
  readonly garment: Garment;
  readonly steady: FitResult;
  /** The best fit at the gauge as it is told. */
  readonly bold: FitResult;
}

const judged: Judged[] = [];

beforeAll(async () => {
  const some = { steady: true, placements: [1, 2], wearers: true } as const;
  for (const plain of [
    ...sampleGarments(count, 20261130, { ...some, sharedPieces: false }),
    // Two fields above one another, whose changes of length only together have to keep the piece's.
    ...sampleGarments(600, 20261201, { ...some, placements: [1, 1], necks: false })
      .filter(({ place: [one, other] }) => other && one!.from !== other.from)
      .slice(0, 40),
  ]) {
    const garment = garmentOf(plain);
    const { steady: _, ...bold } = garment;
    judged.push({
      plain,
      garment,
      steady: await fitHere(garment, { rivals: 1 }),
      bold: await fitHere(bold, { rivals: 0 }),
    });
  }
});

describe("random garments that have to be steady", () => {
  test("cost what an exhaustive search finds that tries every corner of the gauge", () => {
    let fits = 0;
    for (const { plain, garment, steady } of judged) {
      const referee = exhaustiveBest(plain, { edges: edgesOf(garment) });
      const told = steady.status === "fits" ? steady.fit.cost : undefined;
      const about = JSON.stringify(plain);
      if (referee === undefined || told === undefined) expect(told, about).toBe(referee?.cost);
      else expect(Math.abs(told - referee.cost), about).toBeLessThan(costTolerance);
      if (told !== undefined) fits++;
    }
    expect(fits).toBeGreaterThan(judged.length / 3);
    expect(fits).toBeLessThan((judged.length * 9) / 10);
  });

  test("keep every limit for 1,000 gauges drawn from what the swatch leaves open, corners included", () => {
    for (const [seed, { plain, steady }] of judged.entries()) {
      if (steady.status !== "fits") continue;
      const gauges = gaugesWithin(plain, shareOf(plain), 1000, numbersFrom(seed + 1));
      for (const fit of [steady.fit, ...steady.rivals])
        expect(firstBreach(plain, fit, gauges), JSON.stringify(plain)).toBeUndefined();
    }
  });

  test("are fitted less cautiously by a fit that some gauge of the range breaks", () => {
    const seen = { cheaper: 0, only: 0, alike: 0 };
    for (const [seed, { plain, garment, steady, bold }] of judged.entries()) {
      if (bold.status !== "fits") continue;
      const isAlike = steady.status === "fits" && steady.fit.cost < bold.fit.cost + costTolerance;
      const gauges = gaugesWithin(plain, shareOf(plain), 1000, numbersFrom(seed + 1));
      const breach = firstBreach(plain, bold.fit, gauges);
      // The program's own check comes to the same verdict.
      expect(checkFit(garment, bold.fit, bold.fit.cost).length > 0, JSON.stringify(plain)).toBe(
        breach !== undefined,
      );
      if (isAlike) seen.alike++;
      else {
        seen[steady.status === "fits" ? "cheaper" : "only"]++;
        expect(breach, JSON.stringify(plain)).toBeDefined();
      }
    }
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(20);
  });
});

test("cords that climb one another: what is cheaper than the best steady fit is refused by the check", async () => {
  const wishes = { steady: true, placements: [1, 2], sharedPieces: false } as const;
  const seen = { steady: 0, bolder: 0 };
  for (const [index, plain] of sampleGarments(70, 20261204, {
    ...wishes,
    kinds: ["sample", "crossed cord"],
  }).entries()) {
    const { gauge, ...others } = garmentOf(plain);
    const garment = {
      ...others,
      gauge: { ...gauge, cord: { ...gauge.cord!, thicknessMm: 1 + (index % 8) } },
    };
    const { steady: _, ...asTold } = garment;
    // What the check refuses of a steady fit is thrown.
    const steady = await fitHere(garment, { rivals: 1 });
    const bold = await fitHere(asTold, { rivals: 0 });
    if (steady.status === "fits") seen.steady++;
    if (bold.status !== "fits") continue;
    if (steady.status === "fits" && bold.fit.cost > steady.fit.cost - costTolerance) continue;
    seen.bolder++;
    expect(checkFit(garment, bold.fit, bold.fit.cost), JSON.stringify(plain)).not.toEqual([]);
  }
  expect(seen.steady).toBeGreaterThan(20);
  expect(seen.bolder).toBeGreaterThan(20);
});

const shareOf = ({ steady }: GarmentFile): number => (typeof steady === "string" ? fraction(steady) : 1);

/** The first limit of ease, length or loops that a fit breaks at some gauge. */
function firstBreach(plain: GarmentFile, fit: Fit, gauges: readonly TrueGauge[]): string | undefined {
  for (const gauge of gauges) {
    const found = breachAt(plain, fit, gauge);
    if (found !== undefined) return `${found} at ${JSON.stringify(gauge)}`;
  }
  return undefined;
}

/** What the last digits of a sum may lose. */
const tiny = 2e-9;

function breachAt(plain: GarmentFile, fit: Fit, { stitchMm, rowMm, cordMm }: TrueGauge): string | undefined {
  for (const { motif, segments } of fit.looks) {
    const entry = plain.motifs[motif.name]!;
    const ease = "ease" in entry ? entry.ease : undefined;
    const [from, to] = [fraction(ease?.from ?? "-5 %"), fraction(ease?.to ?? "15 %")];
    for (const { name, needles, rows, pickup, fixed } of segments) {
      const path = Math.sqrt(needles * needles * stitchMm * stitchMm + rows * rows * rowMm * rowMm);
      const slack = (pickup * cordMm - path) / path;
      if (fixed === undefined && (slack < from - tiny || slack > to + tiny))
        return `${motif.name}: ease of ${name} is ${slack}`;
      if (limitsLoops(plain, motif.name) && pickup * cordMm + path > 75.001)
        return `${motif.name}: ${name} is ${pickup * cordMm + path} mm round`;
    }
  }
  for (const [name, piece] of Object.entries(plain.pieces)) {
    if (piece.grow === undefined && piece.shrink === undefined) continue;
    const planned = lengthMm(piece.outline.at(-1)!.height);
    const length = fit.pieces.find((one) => one.name === name)!.rows * rowMm;
    if (length > planned + lengthMm(piece.grow ?? "0 mm") + tiny * 1e3) return `${name} is ${length} mm long`;
    if (length < planned - lengthMm(piece.shrink ?? "0 mm") - tiny * 1e3)
      return `${name} is ${length} mm long`;
  }
  return undefined;
}

/** Whether what a wearer asks limits the loops of a motif, wherever it lies. */
const limitsLoops = (plain: GarmentFile, motif: string): boolean =>
  plain.place.some((placement) => placement.motif === motif && wearerRules(plain).limitsLoops(placement));
