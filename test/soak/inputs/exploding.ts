import fc from "fast-check";

/** One of few values, most of them far too large and all of them such as a garment may say. */
const some = (...values: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...values);

const lengths = some("36 cm", "60 cm", "3 m", "10 m");
const stitches = some(
  "{ stitches: 22, rows: 31, over: 10 cm }",
  "{ stitches: 200, rows: 200, over: 10 cm }",
  "{ stitches: 2, rows: 2, over: 10 cm }",
);
const counts = some("1..2", "1..50", "0..200", "{ least: 0 }", "0..9999", "2..20", "1..400");
const grown = some("", ", grow: 1 cm", ", grow: 10 m, shrink: 10 m");

const placement = fc
  .record({
    columns: some("", ", columns: 1..50", ", columns: 50", ", columns: { least: 1 }"),
    gap: some("", ", gap: 0..200", ", gap: { least: 0 }"),
    repeats: some("", ", repeats: 1..9999", ", repeats: { allow: { least: 1 }, prefer: 3 }"),
    margins: fc
      .tuple(counts, counts, counts, fc.boolean())
      .map(([bottom, top, side, sideways]) =>
        sideways
          ? `bottom: ${bottom}, top: ${top}, left: ${side}, right: ${side}`
          : `bottom: ${bottom}, top: ${top}, side: { least: 0 }`,
      ),
    unfinished: some("", ", unfinished: part", ", mirror: true"),
  })
  .map(
    ({ columns, gap, repeats, margins, unfinished }) =>
      `from: cast-on, to: bind-off${columns}${gap}${repeats}, margins: { ${margins} }${unfinished}`,
  );

/**
 * Garments of a few lines that read without a mistake and ask for more choices than there is time or room for: wide ranges,
 * many columns and gaps, pieces that may grow by metres, outlines of thousands of heights, motifs that share a piece.
 */
export const explodingGarments = (): fc.Arbitrary<string> =>
  fc
    .record({
      ground: stitches,
      height: lengths,
      width: some("20 cm", "50 cm", "1 m", "3 m"),
      stations: fc.oneof({ weight: 4, arbitrary: fc.constant(2) }, fc.constantFrom(500, 2500)),
      grow: grown,
      interval: counts,
      spread: counts,
      change: some("", ", change: 1", ", change: 400"),
      ease: some("-5 % to 15 %", "-50 % to 200 %"),
      pieces: fc.integer({ min: 1, max: 4 }),
      shared: fc.integer({ min: 1, max: 4 }),
      placement,
      match: fc.boolean(),
      rules: some("", ', rules: ["spread <= interval"]'),
    })
    .map((ask) => {
      const [from, to] = ask.ease.split(" to ");
      const names = Array.from({ length: ask.pieces }, (_, index) => `p${index}`);
      const outline = stationsOf(ask.stations, ask.height, ask.width);
      const places = names.flatMap((name) =>
        Array.from({ length: ask.shared }, () => `  - { motif: plait, on: ${name}, ${ask.placement} }`),
      );
      const match = ask.match && ask.pieces > 1 && ask.shared === 1;
      return [
        "format: evenrow/1",
        "bed: { needles: 600 }",
        `gauge: { ground: ${ask.ground}, cord: { needles: 3, stitches: 19, over: 10 cm } }`,
        "pieces:",
        ...names.map((name) => `  ${name}: { outline: [${outline}]${ask.grow} }`),
        `motifs: { plait: { like: crossed cord, interval: ${listed(ask.interval)}, spread: { allow: ${listed(ask.spread)}${ask.change} }, ease: { from: ${from}, to: ${to} }${ask.rules} } }`,
        "place:",
        ...places,
        ...(match ? [`match: [{ motif: plait, on: [${names.join(", ")}], mark: bind-off }]`] : []),
        "",
      ].join("\n");
    });

/** A quantity has no open range. */
const listed = (range: string): string => (range.startsWith("{") ? "1..30" : range.replace(/^0/, "1"));

function stationsOf(count: number, height: string, width: string): string {
  if (count === 2) return `{ height: 0 cm, width: ${width} }, { height: ${height}, width: ${width} }`;
  return Array.from(
    { length: count },
    (_, index) => `{ height: ${index} mm, width: ${200 + ((index * 7) % 11)} mm }`,
  ).join(", ");
}
