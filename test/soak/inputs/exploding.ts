import fc from "fast-check";

/** One of few values, most of them far too large and all of them such as a garment may say. */
const some = (...values: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...values);

/** What is counted on a swatch, and a width that the largest bed has needles for. */
const cloths = fc.constantFrom(
  { ground: "{ stitches: 22, rows: 31, over: 10 cm }", width: "50 cm" },
  { ground: "{ stitches: 22, rows: 31, over: 10 cm }", width: "270 cm" },
  { ground: "{ stitches: 200, rows: 200, over: 10 cm }", width: "30 cm" },
  { ground: "{ stitches: 2, rows: 2, over: 10 cm }", width: "10 m" },
);

const margins = some("0..2", "2..20", "0..400", "0..9999", "{ least: 0 }");

const placement = fc.record({
  columns: some(
    "",
    ", columns: 1..50",
    ", columns: 1..5, mirror: true",
    ", columns: 50",
    ", columns: 2, gap: 0..200",
  ),
  gap: some("", ", gap: 0..200"),
  repeats: some("", ", repeats: 1..9999", ", unfinished: part"),
  bottom: margins,
  top: margins,
  side: margins,
  sideways: fc.boolean(),
});

/**
 * Garments of a few lines that read without a mistake and ask for more choices than there is time or room for: wide ranges,
 * many columns and gaps, pieces that may grow by metres, outlines of thousands of heights, motifs that share a piece.
 */
export const explodingGarments = (): fc.Arbitrary<string> =>
  fc
    .record({
      cloth: cloths,
      height: some("36 cm", "60 cm", "3 m", "10 m"),
      stations: fc.oneof({ weight: 4, arbitrary: fc.constant(2) }, fc.constantFrom(500, 2500)),
      grow: some("", ", grow: 1 cm", ", grow: 1 m", ", grow: 10 m, shrink: 10 m"),
      interval: some("2..20", "1..140", "4", "1..400"),
      spread: some("2..20", "1..140", "1..3", "3"),
      change: some("", "", ", change: 1", ", change: 400"),
      ease: some("from: -5 %, to: 15 %", "from: -50 %, to: 200 %"),
      pieces: fc.integer({ min: 1, max: 4 }),
      shared: fc.integer({ min: 1, max: 4 }),
      place: placement,
      match: fc.boolean(),
      rules: some("", ', rules: ["spread <= interval"]'),
    })
    .map(({ cloth, place, ...ask }) => {
      const grows = ask.change !== "";
      // What grows from repeat to repeat lies alone, in one column about the middle of one piece.
      const [pieces, shared] = grows ? [1, 1] : [ask.pieces, ask.shared];
      const names = Array.from({ length: pieces }, (_, index) => `p${index}`);
      const sides =
        place.sideways && !grows ? `left: ${place.side}, right: ${place.side}` : "side: { least: 0 }";
      const across = grows ? "" : place.columns.includes("gap") ? place.columns : place.columns + place.gap;
      const lies = `from: cast-on, to: bind-off${across}${place.repeats}, margins: { bottom: ${place.bottom}, top: ${place.top}, ${sides} }`;
      const outline = stationsOf(ask.stations, ask.height, cloth.width);
      return [
        "format: evenrow/1",
        "bed: { needles: 600 }",
        `gauge: { ground: ${cloth.ground}, cord: { needles: 3, stitches: 19, over: 10 cm } }`,
        "pieces:",
        ...names.map((name) => `  ${name}: { outline: [${outline}]${ask.grow} }`),
        `motifs: { plait: { like: crossed cord, interval: ${ask.interval}, spread: { allow: ${ask.spread}${ask.change} }, ease: { ${ask.ease} }${ask.rules} } }`,
        "place:",
        ...names.flatMap((name) =>
          Array.from({ length: shared }, () => `  - { motif: plait, on: ${name}, ${lies} }`),
        ),
        ...(ask.match && pieces > 1 && shared === 1
          ? [`match: [{ motif: plait, on: [${names.join(", ")}], mark: bind-off }]`]
          : []),
        "",
      ].join("\n");
    });

function stationsOf(count: number, height: string, width: string): string {
  if (count === 2) return `{ height: 0 cm, width: ${width} }, { height: ${height}, width: ${width} }`;
  return Array.from(
    { length: count },
    (_, index) => `{ height: ${index} mm, width: ${200 + ((index * 7) % 11)} mm }`,
  ).join(", ");
}
