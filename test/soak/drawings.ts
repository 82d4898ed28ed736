import { readFileSync } from "node:fs";
import fc from "fast-check";
import { type DrawingKind, isProblem } from "../../src/drawing-file/drawing.ts";
import { drawnOutline } from "../../src/drawing-file/outline/drawn-outline.ts";
import { readDrawing } from "../../src/drawing-file/read-drawing.ts";
import { anyBytes, changedBytes } from "./inputs/bytes.ts";
import { sampleFiles } from "./inputs/samples.ts";
import { edgeNumbers } from "./inputs/trees.ts";
import { readAsCommandsDo } from "./reading.ts";
import { must, type Outcome, type Target, targetOf } from "./target.ts";

const encoder = new TextEncoder();

function garmentWith(outline: string): string {
  return `format: evenrow/1
bed: { needles: 200 }
gauge: { ground: { stitches: 22, rows: 31, over: 10 cm }, cord: { needles: 3, stitches: 19, over: 10 cm } }
pieces: { front: { outline: ${outline} } }
place: [{ motif: crossed cord, on: front, from: cast-on, to: bind-off }]
`;
}

const garments: Readonly<Record<DrawingKind, string>> = {
  svg: garmentWith("{ svg: a.svg, id: p }"),
  dxf: garmentWith("{ dxf: a.dxf, piece: FRONT }"),
};

async function read(bytes: Uint8Array, kind: DrawingKind): Promise<Outcome> {
  const drawing = await readDrawing(bytes, kind);
  // What is said of a drawing is said at its place in the garment that names it.
  readAsCommandsDo(garments[kind], { drawing: () => drawing });
  if (isProblem(drawing)) {
    must(drawing.problem !== "", "no reason why it cannot be read");
    return "refused";
  }
  let outlines = 0;
  for (const shape of drawing.shapes.slice(0, 20)) {
    for (const { points } of shape.contours)
      must(
        points.every((point) => point.every(Number.isFinite)),
        `a point that is no place in ${shape.name}`,
      );
    for (const turn of [0, 90] as const) {
      const outline = drawnOutline(shape, { stitch: { widthMm: 4.5, heightMm: 3.2 }, turn });
      if ("problem" in outline) continue;
      outlines += 1;
      const numbers = [...outline.outline, ...outline.neck].flatMap(
        (station) => Object.values(station) as number[],
      );
      must(numbers.every(Number.isFinite), `a station that is no number in ${shape.name}`);
    }
  }
  return outlines > 0 ? "accepted" : "refused";
}

const number = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: -50, max: 900 }).map(String) },
  {
    weight: 2,
    arbitrary: fc.double({ min: -1000, max: 1000, noNaN: true }).map((value) => value.toFixed(2)),
  },
  fc.constantFrom(...edgeNumbers),
);

const pathData = fc
  .array(
    fc.tuple(
      fc.constantFrom(..."MLHVCSQTAZmlhvcsqtaz", "L", "L", "l", "Z", "x"),
      fc.array(number, { maxLength: 7 }),
    ),
    { minLength: 1, maxLength: 20 },
  )
  .map(
    (commands) => `M 0 0 ${commands.map(([letter, numbers]) => `${letter}${numbers.join(" ")}`).join(" ")}`,
  );

const transform = fc
  .tuple(
    fc.constantFrom("translate", "scale", "rotate", "skewX", "skewY", "matrix", "rotate3d", ""),
    fc.array(number, { maxLength: 6 }),
  )
  .map(([name, numbers]) => `${name}(${numbers.join(",")})`);

/** The corners of a piece that can be knitted, more often than not. */
const cornersOfSleeve = fc
  .tuple(
    fc.integer({ min: 50, max: 400 }),
    fc.integer({ min: -80, max: 150 }),
    fc.integer({ min: 20, max: 900 }),
  )
  .map(([base, wider, height]): [number, number][] => [
    [300 - base / 2, 0],
    [300 + base / 2, 0],
    [300 + base / 2 + wider, height],
    [300 - base / 2 - wider, height],
  ]);

const figure = fc.oneof(
  {
    weight: 3,
    arbitrary: cornersOfSleeve.map(
      (corners) => `<path id="p" d="M ${corners.map(([x, y]) => `${x} ${900 - y}`).join(" L ")} Z"/>`,
    ),
  },
  { weight: 4, arbitrary: pathData.map((d) => `<path id="p" d="${d}"/>`) },
  fc.array(number, { maxLength: 24 }).map((points) => `<polygon points="${points.join(" ")}"/>`),
  fc.array(number, { maxLength: 24 }).map((points) => `<polyline points="${points.join(",")}"/>`),
  fc
    .tuple(number, number, number, number)
    .map(([x, y, w, h]) => `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${x}"/>`),
  fc.tuple(number, number, number).map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}"/>`),
  fc.tuple(number, number).map(([a, b]) => `<ellipse cx="9" cy="9" rx="${a}" ry="${b}"/>`),
  fc.tuple(number, number).map(([a, b]) => `<line x1="0" y1="0" x2="${a}" y2="${b}"/>`),
  fc.constantFrom(
    '<use href="#p"/>',
    '<g id="p"><use href="#p"/></g>',
    "<style>path{display:none}</style>",
    '<image href="file:///etc/passwd"/>',
    "<script>process.exit()</script>",
    "&a;",
    "<text>x</text>",
    "<symbol><path d='M 0 0 L 9 9'/></symbol>",
  ),
);

const svgText: fc.Arbitrary<string> = fc
  .record({
    size: fc.constantFrom('width="900mm"', 'width="1e9mm"', 'width="0"', 'width="50%"', 'width="30em"', ""),
    box: fc.oneof(
      fc.constant('viewBox="0 0 900 900"'),
      fc.array(number, { maxLength: 5 }).map((numbers) => `viewBox="${numbers.join(" ")}"`),
    ),
    transforms: fc.array(transform, { maxLength: 4 }),
    depth: fc.integer({ min: 0, max: 60 }),
    figures: fc.array(figure, { minLength: 1, maxLength: 6 }),
    head: fc.constantFrom(
      "",
      '<?xml version="1.0"?>',
      '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>',
      '<!DOCTYPE svg SYSTEM "file:///etc/passwd" [<!ENTITY a SYSTEM "file:///etc/passwd">]>',
    ),
  })
  .map(
    ({ size, box, transforms, depth, figures, head }) =>
      `${head}<svg ${size} ${box} xmlns="http://www.w3.org/2000/svg">${"<g>".repeat(depth)}<g transform="${transforms.join(" ")}">${figures.join("")}</g>${"</g>".repeat(depth)}</svg>`,
  );

/** Drawings in SVG: figures with odd numbers, transforms and nesting, entities, references; and sample files broken. */
export const svgDrawings: Target = targetOf({
  name: "SVG drawings",
  usual: 30_000,
  inputs: () =>
    fc.oneof(
      { weight: 5, arbitrary: svgText.map((text) => encoder.encode(text)) },
      { weight: 2, arbitrary: changedBytes(sampleFiles(".svg").map((file) => readFileSync(file, "utf8"))) },
      anyBytes(),
    ),
  attempt: async () => (bytes: Uint8Array) => read(bytes, "svg"),
});

const entity = fc
  .tuple(
    fc.constantFrom(
      "LINE",
      "ARC",
      "CIRCLE",
      "ELLIPSE",
      "LWPOLYLINE",
      "POLYLINE",
      "SPLINE",
      "INSERT",
      "POINT",
      "TEXT",
      "SEQEND",
      "VERTEX",
    ),
    fc.array(
      fc.tuple(
        fc.constantFrom(..."10 20 30 11 21 31 40 41 42 50 51 62 66 70 71 72 73 90 91 210 220 230".split(" ")),
        number,
      ),
      { maxLength: 24 },
    ),
  )
  .map(
    ([kind, pairs]) =>
      `0\n${kind}\n8\n1\n${kind === "INSERT" ? "2\nFRONT\n" : ""}${pairs.map(([code, value]) => `${code}\n${value}\n`).join("")}`,
  );

/** A closed line of plain strokes, as pattern programs write them. */
const boundary = fc
  .oneof(
    fc.array(fc.tuple(fc.integer({ min: 0, max: 600 }), fc.integer({ min: 0, max: 900 })), {
      minLength: 3,
      maxLength: 12,
    }),
    cornersOfSleeve,
  )
  .map(
    (corners) =>
      `0\nPOLYLINE\n8\n1\n66\n1\n70\n1\n${corners.map(([x, y]) => `0\nVERTEX\n8\n1\n10\n${x}\n20\n${y}\n`).join("")}0\nSEQEND\n8\n1\n`,
  );

const dxfText: fc.Arbitrary<string> = fc
  .record({
    head: fc.constantFrom(
      "",
      "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n",
      "0\nSECTION\n2\nTABLES\n0\nENDSEC\n",
    ),
    blocks: fc.array(fc.array(fc.oneof(entity, boundary), { maxLength: 5 }), { maxLength: 3 }),
    loose: fc.array(fc.oneof(entity, boundary), { maxLength: 4 }),
    end: fc.constantFrom("0\nEOF\n", "", "0\nEOF", "0\nENDSEC\n0\nEOF\n"),
  })
  .map(({ head, blocks, loose, end }) => {
    const made = blocks
      .map((inner) => `0\nBLOCK\n2\nFRONT\n10\n0\n20\n0\n${inner.join("")}0\nENDBLK\n`)
      .join("");
    return `${head}0\nSECTION\n2\nBLOCKS\n${made}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${loose.join("")}0\nINSERT\n2\nFRONT\n0\nENDSEC\n${end}`;
  });

/** Drawings in DXF: blocks that hold one another, entities of every kind with odd groups, lines broken and cut. */
export const dxfDrawings: Target = targetOf({
  name: "DXF drawings",
  usual: 30_000,
  inputs: () =>
    fc.oneof(
      { weight: 5, arbitrary: dxfText.map((text) => encoder.encode(text)) },
      {
        weight: 2,
        arbitrary: changedBytes(fc.sample(dxfText, { seed: 1, numRuns: 20 })),
      },
      anyBytes(),
    ),
  attempt: async () => (bytes: Uint8Array) => read(bytes, "dxf"),
});
