import { describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { groundStitch } from "../../../src/cloth/gauge.ts";
import { type Scene, sceneOf } from "../../../src/draw/scene.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { buildSheet } from "../../../src/sheet/build-sheet.ts";
import type { HangAction } from "../../../src/sheet/sheet.ts";
import { sampleGarments } from "../../support/random-garment.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";
import {
  fitOfPlain,
  fitOfSample,
  fitOfText,
  sampleNames,
  sampleText,
  sceneOfSample,
  withCord,
} from "./support/scenes.ts";

async function randomFits(): Promise<readonly Fit[]> {
  const fits: Fit[] = [];
  for (const plain of sampleGarments(60, 20_417)) {
    const result = await fitHere(soundGarment(stringify(plain)));
    if (result.status === "fits") fits.push(result.fit);
  }
  return fits;
}

const fits: readonly Fit[] = [...(await Promise.all(sampleNames.map(fitOfSample))), ...(await randomFits())];
const drawn = fits.flatMap((fit) =>
  fit.pieces.map((piece) => ({ fit, piece, scene: sceneOf(fit, piece.name) })),
);

test("enough random pieces have a neck, strands and cables for what follows to mean something", () => {
  expect(drawn.length).toBeGreaterThan(40);
  expect(drawn.filter(({ scene }) => scene.neck).length).toBeGreaterThan(4);
  expect(drawn.filter(({ scene }) => scene.cables.length > 0).length).toBeGreaterThan(4);
  expect(drawn.filter(({ scene }) => scene.crossings.length > 0).length).toBeGreaterThan(10);
});

describe("strands", () => {
  test("are hung where the working sheet hangs them, with its counts", () => {
    for (const { fit, piece, scene } of drawn) {
      const { widthMm, heightMm } = groundStitch(fit.garment.gauge);
      const hung = buildSheet(fit)
        .pieces.find((one) => one.piece === piece.name)!
        .rows.flatMap(({ row, do: actions }) =>
          actions
            .filter((action): action is HangAction => action.act === "hang")
            .map(({ strand, count, needle, loop = false, placement, column }) => ({
              key: `${placement}/${column}/${strand}`,
              needle,
              row,
              count,
              loop,
              xMm: (needle > 0 ? needle - 0.5 : needle + 0.5) * widthMm,
              yMm: row * heightMm,
            })),
        );
      for (const { placement, column, name, hangings } of scene.strands)
        expect(hangings).toEqual(
          hung
            .filter(({ key }) => key === `${placement}/${column}/${name}`)
            .map(({ key: _, ...hanging }) => expect.objectContaining(hanging)),
        );
      expect(scene.strands.flatMap(({ hangings }) => hangings)).toHaveLength(hung.length);
    }
  });

  test("cross where both of them run, the one that is hung later lying over", () => {
    for (const { scene } of drawn)
      for (const { over, under, overFrom, underFrom, xMm, yMm } of scene.crossings) {
        const ends = [
          [over, overFrom],
          [under, underFrom],
        ].map(([strand, from]) => scene.strands[strand!]!.hangings.slice(from!, from! + 2));
        for (const [from, to] of ends) {
          expect(from!.yMm).toBeLessThanOrEqual(yMm + 1e-9);
          expect(yMm).toBeLessThanOrEqual(to!.yMm + 1e-9);
          const share = (yMm - from!.yMm) / (to!.yMm - from!.yMm);
          expect(from!.xMm + share * (to!.xMm - from!.xMm)).toBeCloseTo(xMm, 6);
        }
        const [overTo, underTo] = ends.map(([, to]) => to!.row);
        expect(overTo).toBeGreaterThanOrEqual(underTo!);
        if (overTo === underTo)
          expect(scene.strands[over]!.order).toBeGreaterThan(scene.strands[under]!.order);
      }
  });

  test("of a crossed cord cross once in each interval after the lead-in", async () => {
    const scene = await sceneOfSample("sleeve");
    expect(scene.crossings).toHaveLength(16);
    expect(scene.crossings.map(({ over }) => scene.strands[over]!.name)).toEqual(Array(16).fill("right"));
    const [first] = scene.crossings;
    expect(first!.xMm).toBeCloseTo(0, 9);
    expect(first!.yMm).toBeCloseTo(29 * scene.stitch.heightMm, 9);
  });

  test("worked in the other order lie the other way over each other", async () => {
    const text = sampleText("sleeve").replace(
      "like: crossed cord",
      "like: crossed cord\n    order: [right, left]",
    );
    const [piece] = (await fitOfText(text)).pieces;
    const scene = sceneOf(await fitOfText(text), piece!.name);
    expect(new Set(scene.crossings.map(({ over }) => scene.strands[over]!.name))).toEqual(new Set(["left"]));
  });

  test("hung at different rows: the later one lies over, whatever the order of work", async () => {
    const scene = sceneOf(
      await fitOfPlain(
        withCord({
          lead: 0,
          repeat: 12,
          strands: {
            early: {
              start: [-3, 0],
              "lead-in": [],
              repeat: [
                [3, 4],
                [3, 8],
                [-3, 12],
              ],
            },
            late: {
              start: [3, 0],
              "lead-in": [],
              repeat: [
                [-3, 6],
                [3, 12],
              ],
            },
          },
          order: ["late", "early"],
        }),
      ),
      "square",
    );
    const firstRepeat = scene.crossings.filter(
      ({ yMm }) => yMm < scene.strands[0]!.hangings[0]!.yMm + 12 * scene.stitch.heightMm - 1e-9,
    );
    // "early" is hung at 4 and "late" at 6 above their first crossing; at the second both are hung at 12.
    expect(firstRepeat.map(({ over }) => scene.strands[over]!.name)).toEqual(["late", "early"]);
  });

  test("that meet on one needle cross there only if they leave it on the other side", async () => {
    const meeting = (third: number): object =>
      withCord({
        lead: 0,
        repeat: 12,
        strands: {
          one: {
            start: [-4, 0],
            "lead-in": [],
            repeat: [
              [1, 4],
              [third, 8],
              [-4, 12],
            ],
          },
          other: {
            start: [4, 0],
            "lead-in": [],
            repeat: [
              [1, 4],
              [1, 8],
              [4, 12],
            ],
          },
        },
        order: ["one", "other"],
      });
    const crossed = sceneOf(await fitOfPlain(meeting(3)), "square");
    const touched = sceneOf(await fitOfPlain(meeting(-3)), "square");
    const start = crossed.strands[0]!.hangings[0]!.row;
    expect(crossed.crossings[0]!.yMm).toBeCloseTo((start + 4) * crossed.stitch.heightMm, 9);
    expect(touched.crossings).toEqual([]);
  });
});

describe("the cloth", () => {
  const area = (points: Scene["outline"]): number =>
    points.reduce((sum, { xMm, yMm }, index) => {
      const next = points[(index + 1) % points.length]!;
      return sum + (xMm * next.yMm - next.xMm * yMm) / 2;
    }, 0);

  test("is outlined so that the outline holds exactly its stitches", () => {
    for (const { scene } of drawn) {
      const stitches = scene.cells.flat().reduce((sum, { from, to }) => sum + to - from, 0);
      const { widthMm, heightMm } = scene.stitch;
      expect(Math.abs(area(scene.outline)) / (widthMm * heightMm)).toBeCloseTo(stitches, 6);
    }
  });

  test("grows and shrinks by its shaping events and by nothing else", () => {
    for (const { scene } of drawn) {
      const needles = (row: number): number =>
        (scene.cells[row - 1] ?? []).reduce((sum, { from, to }) => sum + to - from, 0);
      for (let row = 1; row < scene.rows; row++) {
        const change = scene.shaping
          .filter((event) => event.row === row)
          .reduce(
            (sum, event) =>
              sum + (event.kind === "increase" || event.kind === "cast-on" ? event.needles : -event.needles),
            0,
          );
        expect(needles(row + 1) - needles(row)).toBe(change);
      }
      for (const { from, to, needles: count } of scene.shaping) expect(to - from).toBe(count);
    }
  });

  test("has the motif nowhere in the zone that it may not reach", () => {
    for (const { scene } of drawn)
      for (const { row, from, to } of scene.unreachable) {
        expect(scene.cells[row - 1]!.some((span) => span.from <= from && to <= span.to)).toBe(true);
        for (const { hangings } of scene.strands)
          for (const hanging of hangings)
            if (hanging.row === row - 1) {
              const boundary = hanging.xMm / scene.stitch.widthMm;
              expect(boundary < from || boundary > to).toBe(true);
            }
      }
  });

  test("of the front has its neck, its marks and the half that is knitted first", async () => {
    const scene = await sceneOfSample("front");
    expect(scene.neck).toEqual({ row: 200, firstHalf: "right" });
    expect(scene.cells[199]).toEqual([{ from: -52, to: 52 }]);
    expect(scene.cells[200]).toEqual([
      { from: -52, to: -10 },
      { from: 10, to: 52 },
    ]);
    expect(scene.marks.map(({ name, row }) => [name, row])).toEqual([
      ["cast-on", 0],
      ["hem top", 20],
      ["underarm", 144],
      ["neck", 200],
      ["bind-off", 232],
    ]);
    expect(scene.fields).toMatchObject([
      {
        from: "hem top",
        to: "neck",
        fromRow: 20,
        toRow: 200,
        firstRow: 25,
        lastRow: 200,
        panel: { from: -5, to: 5 },
      },
    ]);
    expect(scene.shaping.filter(({ edge, side }) => edge === "neck" && side === undefined)).toEqual([
      { row: 200, kind: "bind-off", needles: 20, edge: "neck", from: -10, to: 10 },
    ]);
  });
});

describe("the side that is worn", () => {
  const cablePiece = {
    outline: [
      { height: "0 cm", width: "20 cm" },
      { height: "30 cm", width: "20 cm" },
    ],
  };
  const both = {
    format: "evenrow/1",
    title: "Both",
    bed: { needles: 150 },
    gauge: {
      ground: { stitches: 22, rows: 31, over: "10 cm" },
      cord: { needles: 3, stitches: 19, over: "10 cm" },
    },
    pieces: { cable: cablePiece, cord: cablePiece, plain: cablePiece },
    motifs: { rope: { like: "transferred cable", cross: [2, 2] }, plait: { like: "crossed cord" } },
    place: [
      { motif: "rope", on: "cable" },
      { motif: "plait", on: "cord" },
    ],
  };

  test("faces the knitter for a cord, lies on the far side for a cable, and a plain piece goes with a cord", async () => {
    const fit = await fitOfPlain(both);
    const worn = (piece: string): string => sceneOf(fit, piece).worn;
    expect([worn("cable"), worn("cord"), worn("plain")]).toEqual(["far", "facing", "facing"]);
  });

  test("is the far one for a plain piece beside cables alone", async () => {
    const { gauge, ...rest } = both;
    const fit = await fitOfPlain({
      ...rest,
      gauge: { ground: gauge.ground },
      motifs: { rope: both.motifs.rope },
      place: both.place.slice(0, 1),
    });
    expect(sceneOf(fit, "plain").worn).toBe("far");
  });
});

test("a piece that the fit does not have is refused", async () => {
  const fit = await fitOfSample("sleeve");
  expect(() => sceneOf(fit, "cuff")).toThrow("no piece called cuff");
});
