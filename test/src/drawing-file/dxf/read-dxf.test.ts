import { DxfWriter, point2d, point3d } from "@tarikjabiri/dxf";
import { polygonArea } from "d3-polygon";
import { describe, expect, test, vi } from "vitest";
import { type Drawing, isProblem, type Point } from "../../../../src/drawing-file/drawing.ts";
import { readDxf } from "../../../../src/drawing-file/dxf/read-dxf.ts";

/** Group codes and values, one pair a line: "8 1". */
const groups = (text: string): string =>
  text
    .trim()
    .split("\n")
    .map((line) => line.trim().replace(/^(\d+) ?/, "$1\n"))
    .join("\n");

const layer = (name: string | number): string => `8 ${name}`;

const polyline = (
  points: readonly (readonly [number, number, number?])[],
  on: string | number = 1,
  closed = 1,
): string =>
  [
    `0 POLYLINE\n${layer(on)}\n66 1\n70 ${closed}`,
    ...points.map(
      ([x, y, bulge]) =>
        `0 VERTEX\n${layer(on)}\n10 ${x}\n20 ${y}${bulge === undefined ? "" : `\n42 ${bulge}`}`,
    ),
    `0 SEQEND\n${layer(on)}`,
  ].join("\n");

const text = (words: string): string => `0 TEXT\n8 1\n10 0\n20 0\n40 1\n1 ${words}`;
const SQUARE = [
  [0, 0],
  [200, 0],
  [200, 300],
  [0, 300],
] as const;

/** A style with one piece whose block holds these entities, as pattern programs write it: with an empty header. */
const style = (entities: string, units = "Units: METRIC", name = "FRONT"): string =>
  groups(`0 SECTION\n2 HEADER\n0 ENDSEC\n0 SECTION\n2 BLOCKS\n0 BLOCK\n8 1\n2 ${name}\n10 0\n20 0\n${entities}\n0 ENDBLK\n8 1\n0 ENDSEC
    0 SECTION\n2 ENTITIES\n${text(units)}\n0 INSERT\n8 1\n2 ${name}\n10 0\n20 0\n0 ENDSEC\n0 EOF`);

function read(dxf: string): Drawing {
  const drawing = readDxf(dxf);
  if (isProblem(drawing)) throw new Error(drawing.problem);
  return drawing;
}

const first = (dxf: string) => read(dxf).shapes[0]!;
const areaOf = (points: readonly Point[] | undefined): number =>
  Math.abs(polygonArea((points ?? []).map(([x, y]): [number, number] => [x, y])));

describe("a pattern written by a general DXF writer", () => {
  const writer = new DxfWriter();
  writer.addLayer("1", 7, "CONTINUOUS");
  for (const name of ["4", "7", "8", "14"]) writer.addLayer(name, 7, "CONTINUOUS");
  const block = writer.addBlock("FRONT_M");
  block.layerName = "1";
  const corner = (x: number, y: number, bulge?: number) => ({
    point: point2d(x, y),
    ...(bulge !== undefined && { bulge }),
  });
  block.addLWPolyline([corner(0, 0), corner(200, 0), corner(200, 300, 1), corner(0, 300)], { flags: 1 });
  block.addText(point3d(0, 0), 5, "Piece Name: Front");
  block.addText(point3d(0, 0), 5, "Size: M");
  block.layerName = "7";
  block.addLine(point3d(100, 20), point3d(100, 280));
  block.layerName = "14";
  block.addLWPolyline([corner(10, 10), corner(190, 10), corner(190, 290), corner(10, 290)], { flags: 1 });
  block.layerName = "8";
  block.addLine(point3d(0, 150), point3d(200, 150));
  writer.addText(point3d(0, 0), 5, "UNITS:METRIC");
  writer.addInsert("FRONT_M", point3d(0, 0));
  const drawing = read(writer.stringify());
  const piece = drawing.shapes.find(({ name }) => name === "Front")!;

  test("gives the boundary on layer 1, and neither grain (7) nor sew lines (14)", () => {
    expect(drawing.remarks).toEqual([]);
    expect(piece.size).toBe("M");
    expect(piece.contours).toHaveLength(1);
    expect(piece.remarks).toEqual(["what lies on layer 8 (internal lines) is left out"]);
  });

  test("breaks a bulge into chords: the top is half a circle", () => {
    const half = (Math.PI * 100 ** 2) / 2;
    expect(Math.abs(areaOf(piece.contours[0]?.points) - (200 * 300 + half))).toBeLessThan(
      0.05 * Math.PI * 100,
    );
  });
});

describe("units", () => {
  test.each([
    ["Units: METRIC", 200, 0],
    ["UNITS :  ENGLISH", 200 * 25.4, 0],
    ["units:english", 200 * 25.4, 0],
    ["Author: nobody", 200, 1],
  ])("%s", (units, width, remarks) => {
    const drawing = read(style(polyline(SQUARE), units));
    expect(Math.max(...drawing.shapes[0]!.contours[0]!.points.map(([x]) => x))).toBeCloseTo(width, 9);
    expect(drawing.remarks).toHaveLength(remarks);
  });

  test("of the header are not believed", () => {
    const dxf = style(polyline(SQUARE)).replace("HEADER\n", "HEADER\n9\n$INSUNITS\n70\n1\n");
    expect(Math.max(...first(dxf).contours[0]!.points.map(([x]) => x))).toBe(200);
  });
});

describe("traps that writers lay", () => {
  const plain = first(style(polyline(SQUARE))).contours;

  test.each([
    ["windows line ends", style(polyline(SQUARE)).replaceAll("\n", "\r\n")],
    ["spaces about codes and values", style(polyline(SQUARE)).replaceAll("\n", " \n  ")],
    ["decimal commas in coordinates", style(polyline(SQUARE)).replaceAll("200", "200,0")],
    ["decimal commas in texts", style(`${text("Curve Tolerance: 0,01")}\n${polyline(SQUARE)}`)],
    ["group codes after SEQEND", style(polyline(SQUARE).replace("0 SEQEND", "0 SEQEND\n5 FF\n62 3"))],
    ["a layer with a leading zero", style(polyline(SQUARE, "01"))],
    [
      "turn and curve points beside the line",
      style(`${polyline(SQUARE)}\n0 POINT\n8 2\n10 0\n20 0\n0 POINT\n8 3\n10 5\n20 0`),
    ],
    ["a line that comes back to its start without being closed", style(polyline([...SQUARE, [0, 0]], 1, 0))],
  ])("%s", (_, dxf) => {
    const { contours, refusal, remarks } = first(dxf);
    expect(refusal).toBeUndefined();
    expect(remarks).toEqual([]);
    expect(areaOf(contours[0]?.points)).toBeCloseTo(areaOf(plain[0]?.points), 6);
  });

  test("a boundary in several strokes, some backward, becomes one line", () => {
    const strokes = [
      "0 LINE\n8 1\n10 0\n20 0\n11 200\n21 0",
      polyline(
        [
          [0, 300],
          [0, 0],
        ],
        1,
        0,
      ),
      "0 LINE\n8 1\n10 200\n20 300\n11 200\n21 0",
      // Half a circle over the top, counter-clockwise from the right.
      "0 ARC\n8 1\n10 100\n20 300\n40 100\n50 0\n51 180",
    ];
    const { contours } = first(style(strokes.join("\n")));
    expect(contours.map(({ closed }) => closed)).toEqual([true]);
    expect(Math.abs(areaOf(contours[0]?.points) - (60_000 + (Math.PI * 100 ** 2) / 2))).toBeLessThan(16);
  });

  test("keys of texts in any case and spacing, the piece's name before the block's", () => {
    const dxf = style(
      `${text("PIECE NAME :Back  Left")}\n${text("size: 38")}\n${polyline(SQUARE)}`,
      "Units: METRIC",
      "B01",
    );
    expect(first(dxf)).toMatchObject({ name: "Back  Left", size: "38" });
    expect(first(style(polyline(SQUARE), "Units: METRIC", "B01")).name).toBe("B01");
  });

  test("notches are places, whichever layer of theirs they lie on", () => {
    const notches = "0 POINT\n8 4\n10 0\n20 100\n30 5\n50 90\n0 POINT\n8 81\n10 200\n20 100";
    expect(first(style(`${polyline(SQUARE)}\n${notches}`)).notches).toEqual([
      [0, 100],
      [200, 100],
    ]);
  });
});

describe("what cannot be used is named with the reason", () => {
  test.each([
    [polyline(SQUARE, 14), "no boundary on layer 1"],
    [`0 SPLINE\n8 1\n71 3\n10 0\n20 0\n10 5\n20 5`, "drawn with spline"],
    [`${polyline(SQUARE)}\n0 CIRCLE\n8 1\n10 5\n20 5\n40 2`, "drawn with circle"],
    [
      polyline([
        [0, 0],
        [1e308, 0],
        [5, 5],
      ]),
      "beyond all measure",
    ],
    [
      polyline([
        [0, 0],
        [Number.NaN, 0],
        [5, 5],
      ]),
      "no number",
    ],
    ["0 LINE\n8 1\n10 0\n20 0", "is missing"],
    [
      polyline([
        [0, 0, 1e308],
        [5, 0, -1e-308],
        [5, 5, Number.NaN],
      ]),
      undefined,
    ],
    [
      polyline(Array.from({ length: 20_001 }, (_, index) => [index % 7, index % 5] as const)),
      "more than 20000 points",
    ],
    [
      Array.from({ length: 5001 }, () => "0 LINE\n8 1\n10 0\n20 0\n11 1\n21 1").join("\n"),
      "more than 5000 strokes",
    ],
  ])("%#", (entities, words) => {
    const { refusal } = first(style(entities));
    if (words === undefined) expect(refusal ?? "a line").toBeDefined();
    else expect(refusal).toContain(words);
  });

  test("layers by their number", () => {
    const extra = [6, 11, 99]
      .map((number) =>
        polyline(
          [
            [1, 1],
            [2, 2],
          ],
          number,
        ),
      )
      .join("\n");
    expect(first(style(`${polyline(SQUARE)}\n${extra}`)).remarks).toEqual([
      "what lies on layer 11 (cut-outs inside the piece) is left out",
      "what lies on layer 6 (mirror line: the piece is taken as it is drawn, not unfolded) is left out",
      "what lies on layer 99 (not in the standard) is left out",
    ]);
  });

  test("a corner outside of any line is passed over, and the parser's own words do not reach the terminal", () => {
    const told = vi.spyOn(console, "error").mockImplementation(() => {});
    const corner = `0 VERTEX\n${layer(1)}\n10 5\n20 5`;
    expect(first(style(`${corner}\n${polyline(SQUARE)}`)).refusal).toBeUndefined();
    expect(told).not.toHaveBeenCalled();
    told.mockRestore();
  });

  test.each([
    ["", "there is no piece in it"],
    ["just words", "line 1 should be a group code"],
    ["0\nSECTION\n2\nBLOCKS\nBLOCK", 'line 5 should be a group code, and is "BLOCK"'],
    ["AutoCAD Binary DXF\r\n\u001a\0", "binary"],
    ["0\nSECTION\n0\nENDSEC\n0\nEOF", "sections are broken"],
    ["0\nSECTION\n2\nENTITIES\n5\nFF\n0\nENDSEC", "sections are broken"],
    [style(polyline(SQUARE)).slice(0, 150), "no piece"],
  ])("a file that is no pattern: %#", (dxf, words) => {
    expect(readDxf(dxf)).toMatchObject({ problem: expect.stringContaining(words) });
  });
});
