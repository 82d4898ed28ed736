/** The parts of a small garment that reads without a mistake. */
const PARTS = {
  format: "format: evenrow/1",
  bed: "bed: { needles: 150 }",
  gauge: `gauge:
  ground: { stitches: 22, rows: 31, over: 10 cm }
  cord: { needles: 3, stitches: 19, over: 10 cm }`,
  yarn: "",
  onHand: "",
  pieces: `pieces:
  sleeve:
    outline:
      - { height: 0 cm, width: 20 cm }
      - { height: 36 cm, width: 31 cm }
    marks: { rib top: 4 cm, underarm: 33 cm }`,
  sizes: "",
  share: "",
  motifs: `motifs:
  plait: { like: crossed cord }`,
  place: `place:
  - { motif: plait, on: sleeve, from: rib top, to: underarm }`,
  weights: "",
} as const;

export type PartName = keyof typeof PARTS;

/** A garment file with some of its parts written otherwise; an empty part is left out. */
export function garmentText(changes: Readonly<Partial<Record<PartName, string>>> = {}): string {
  const parts: Readonly<Record<PartName, string>> = { ...PARTS, ...changes };
  return `${Object.values(parts)
    .filter((part) => part !== "")
    .join("\n")}\n`;
}

/** Text in which one character, the mark, shows a place; the mark itself is taken out. */
export function marked(
  text: string,
  mark = "§",
): { readonly text: string; readonly place: { readonly line: number; readonly column: number } } {
  const [before, after, ...more] = text.split(mark);
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error(`not one ${mark} in ${text}`);
  const lines = before.split("\n");
  return {
    text: before + after,
    place: { line: lines.length, column: [...(lines.at(-1) ?? "")].length + 1 },
  };
}
