import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { groundStitch, type Stitch } from "../../src/cloth/gauge.ts";
import { fieldsOf, stretchOf } from "../../src/fit/field.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { canBeKnitted, recount } from "../../src/refit/recount.ts";
import { type RefitResult, refit } from "../../src/refit/refit.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import { type BegunCord, exhaustiveRest } from "../support/exhaustive-rest.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { fitHere, garmentOf } from "../support/run-garment.ts";

/** Costs are sums of a few products; two ways of adding them differ by far less than this. */
const costTolerance = 1e-6;

const count = 400;

interface Judged {
  readonly plain: GarmentFile;
  readonly fit: Fit;
  readonly row: number;
  /** As measured, in mm. */
  readonly stitch: Stitch;
  readonly result: RefitResult;
}

const begun: Judged[] = [];
const fresh: Judged[] = [];

const share = (from: number, to: number) => fc.noBias(fc.integer({ min: from, max: to })).map((n) => n / 100);

/** Shares that bring no height to lie just between two rows, where the last digit of a division would decide. */
const off = fc.noBias(fc.integer({ min: 927, max: 1067 })).map((n) => n / 997);

beforeAll(async () => {
  const garments = sampleGarments(count, 20261127, {
    placements: [1, 1],
    kinds: ["crossed cord"],
    necks: false,
    sharedPieces: false,
  });
  const tapes = fc.sample(fc.record({ at: share(0, 99), height: off, width: off }), {
    numRuns: count,
    seed: 11,
  });
  for (const [index, plain] of garments.entries()) {
    const fitted = await fitHere(garmentOf(plain), { rivals: 0 });
    if (fitted.status !== "fits") continue;
    const { fit } = fitted;
    const [placed] = fit.placements;
    const { at, height, width } = tapes[index]!;
    const judge = async (row: number): Promise<Judged> => {
      const planned = groundStitch(fit.garment.gauge);
      const stitch = { heightMm: planned.heightMm * height, widthMm: planned.widthMm * width };
      const needles = fit.pieces[0]!.left[row]! + fit.pieces[0]!.right[row]!;
      const measured = { lengthMm: row * stitch.heightMm, widthMm: needles * stitch.widthMm };
      return {
        plain,
        fit,
        row,
        stitch,
        result: await refit(fit, { piece: placed!.piece, row, measured }, simplexEngine),
      };
    };
    const within = placed!.firstRow + Math.floor((placed!.lastRow - placed!.firstRow) * at);
    if (within >= 1) begun.push(await judge(within));
    const below = fit.pieces[0]!.marks.get(plain.place[0]!.from)! - 3;
    if (below >= 1) fresh.push(await judge(below));
  }
});

/** The edges of the piece as it is counted anew for a change of its length, as the sheet would have them. */
function edgesOf({ plain, fit, row, stitch }: Judged): BegunCord["edges"] {
  const gauge = { ...fit.garment.gauge };
  const measured = {
    ...fit.garment,
    gauge: {
      ...gauge,
      ground: { overMm: 1000, stitches: 1000 / stitch.widthMm, rows: 1000 / stitch.heightMm },
    },
  };
  const [now] = fieldsOf(fit.garment);
  const [anew] = fieldsOf(measured);
  const stretches = (field: typeof now, change: number) => (change === 0 ? [] : [stretchOf(field!, change)]);
  const known = new Map<number, ReturnType<typeof recount>>();
  const pieceWith = (change: number): ReturnType<typeof recount> => {
    if (known.has(change)) return known.get(change);
    const piece = recount(
      {
        piece: fit.garment.pieces[0]!,
        counted: fit.pieces[0]!,
        row,
        counting: {
          stitch: groundStitch(gauge),
          stretches: stretches(now, fit.placements[0]!.change),
          extraNeedles: 0,
        },
      },
      { stitch, stretches: stretches(anew, change), extraNeedles: 0 },
    );
    const sound = piece && canBeKnitted(piece, { needles: plain.bed.needles, carriage: "right" });
    known.set(change, sound ? piece : undefined);
    return known.get(change);
  };
  return (change) => {
    const piece = pieceWith(change);
    return piece && ((side, at) => piece[side][at]!);
  };
}

const told = ({ result }: Judged): number | undefined =>
  result.status === "refitted" ? result.fit.cost : undefined;

function expectSame(judged: Judged, best: number | undefined): void {
  const { plain, row, stitch } = judged;
  const about = `row ${row}, ${JSON.stringify(stitch)}: ${JSON.stringify(plain)}`;
  const cost = told(judged);
  if (best === undefined || cost === undefined) expect(cost, about).toBe(best);
  else expect(Math.abs(cost - best), about).toBeLessThan(costTolerance);
}

describe("a crossed cord on a piece that is measured", () => {
  test("goes on as cheaply as an exhaustive search of what is left finds, once it is begun", () => {
    for (const judged of begun) {
      const { plain, fit, row, stitch } = judged;
      const [placed] = fit.placements;
      const { values, segments } = placed!.sections[0]!.look;
      const best = exhaustiveRest(plain, {
        rowMm: stitch.heightMm,
        stitchMm: stitch.widthMm,
        row,
        firstRow: placed!.firstRow,
        fromRow: fit.pieces[0]!.marks.get(plain.place[0]!.from)!,
        interval: values.get("interval")!,
        spread: values.get("spread")!,
        leadIn: segments[0]!.pickup,
        crossing: segments[1]!.pickup,
        columns: placed!.columns,
        gap: placed!.gap,
        leftEdge: placed!.panel.leftEdge,
        rightEdge: placed!.panel.rightEdge,
        edges: edgesOf(judged),
      });
      expectSame(judged, best);
    }
    const some = begun.filter((judged) => told(judged) !== undefined).length;
    expect(some).toBeGreaterThan(count / 4);
    expect(some).toBeLessThan(begun.length);
    expect(changedLooks()).toBeGreaterThan(5);
  });

  test("is fitted as if the measured gauge had been the swatch's, where it is still to begin", () => {
    for (const judged of fresh) {
      const { plain, stitch } = judged;
      const edges = edgesOf(judged);
      const ground = {
        over: "1000 mm",
        stitches: 1000 / stitch.widthMm,
        rows: 1000 / stitch.heightMm,
      };
      const best = exhaustiveBest(
        { ...plain, gauge: { ...plain.gauge, ground } },
        { edges: (_, change, side, row) => edges(change)?.(side, row) ?? Number.NEGATIVE_INFINITY },
      );
      expectSame(judged, best?.cost);
    }
    expect(fresh.filter((judged) => told(judged) !== undefined).length).toBeGreaterThan(count / 8);
  });
});

const changedLooks = (): number =>
  begun.filter(
    ({ result }) =>
      result.status === "refitted" &&
      result.fit.placements.some(({ sections: [first, second] }) =>
        second ? second.look.values.get("interval") !== first!.look.values.get("interval") : false,
      ),
  ).length;
