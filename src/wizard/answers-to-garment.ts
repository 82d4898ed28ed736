import { writtenText, writtenValue } from "../edit/written-form.ts";
import { type Answers, given, mmOf, numberOf, rowsOf } from "./answers.ts";
import { neckOf, outlineOf, type WrittenStation } from "./outline.ts";
import { hemMark, isCord, isTapered, marksOf, taperMark } from "./sizes.ts";
import { texOf } from "./yarn.ts";

/** A part of the file: what a line says, and the remark behind it. */
type Line = string | readonly [text: string, remark: string];

/**
 * The garment file that the answers describe, as YAML with remarks for the knitter.
 *
 * @param answers to every question that was asked
 */
export function answersToGarment(answers: Answers): string {
  const blocks: readonly (readonly Line[])[] = [
    [
      "# A garment for evenrow. What stands after a # is a remark for people; change whatever you like.",
      "# Lengths have a unit (mm, cm, m, in), percentages a %; a bare number counts stitches, rows or needles.",
      "format: evenrow/1",
      `title: ${block(given(answers, "title"))}`,
    ],
    [
      "# The machine: needles on both sides of the centre together, and from one needle to the next.",
      `bed: { needles: ${given(answers, "needles")}, pitch: ${flow(given(answers, "pitch"))} }`,
    ],
    gaugeLines(answers),
    yarnLines(answers),
    pieceLines(answers),
    motifLines(answers),
    placeLines(answers),
    [
      "# What one unit of each kind of giving up costs, where you would rather have something else than the default:",
      "# weights: { length: 3, interval: 1.5, spread: 1.2, ease: 1, balance: 0.5 }",
    ],
  ];
  return `${blocks
    .filter(({ length }) => length > 0)
    .map((lines) => aligned(lines).join("\n"))
    .join("\n\n")}\n`;
}

const block = (text: string): string => writtenText(text, { json: false, flow: false });
const flow = (text: string): string => writtenText(text, { json: false, flow: true });

function gaugeLines(answers: Answers): readonly Line[] {
  const swatch = (count: string, over: string, more = ""): string =>
    `${count}, over: ${flow(given(answers, over as "over"))}${more} }`;
  const { rows, over: rowsOver } = rowsOf(answers);
  return [
    "# What was counted and measured on the swatch, which is sure once it was washed and rested.",
    "gauge:",
    `  ground: { stitches: ${given(answers, "stitches")}, rows: ${swatch(rows, "over", rowsOver === undefined ? "" : `, rows over: ${flow(rowsOver)}`)}`,
    ...(isCord(answers)
      ? [
          `  cord: { needles: ${given(answers, "cord needles")}, stitches: ${swatch(given(answers, "cord stitches"), "cord over")}`,
        ]
      : []),
  ];
}

function yarnLines(answers: Answers): readonly Line[] {
  const answer = given(answers, "yarn");
  const tex = texOf(answer);
  if (tex === undefined) return [];
  const by = answer.includes("=") ? `; by the label of a ball, ${answer}` : "";
  return [`# The yarn of the cloth: tex is the grams of 1000 m${by}.`, `yarn: { ground: { tex: ${tex} } }`];
}

function pieceLines(answers: Answers): readonly Line[] {
  const neck = neckOf(answers);
  const marks = Object.entries(marksToWrite(answers));
  const change = given(answers, "change");
  return [
    "pieces:",
    `  ${block(given(answers, "piece"))}:`,
    ["    outline:", "from the cast-on edge upward; each width is the full one"],
    ...outlineOf(answers).map(stationLine),
    ...(neck.length > 0
      ? [["    neck:", "the opening around the centre, upward; more points make its curve rounder"] as const]
      : []),
    ...neck.map(stationLine),
    ...(marks.length > 0
      ? [
          [
            `    marks: ${writtenValue(Object.fromEntries(marks), { json: false, flow: false })}`,
            "heights with a name",
          ] as const,
        ]
      : []),
    ...(mmOf(answers, "change") > 0
      ? [
          [`    grow: ${block(change)}`, "it may become longer by at most this, to suit the motif"] as const,
          [`    shrink: ${block(change)}`, "or shorter"] as const,
        ]
      : [["    grow: 0 cm", "its length is kept"] as const, ["    shrink: 0 cm", "so is this"] as const]),
  ];
}

const stationLine = ({ height, width }: WrittenStation): Line =>
  `      - { height: ${flow(height)}, width: ${flow(width)} }`;

/** The marks that the piece does not have of itself. */
function marksToWrite(answers: Answers): Readonly<Record<string, string>> {
  const known = marksOf(answers).map(({ name }) => name);
  const [from, to] = [given(answers, "from"), given(answers, "to")];
  return {
    ...(known.includes(hemMark) && { [hemMark]: given(answers, "hem") }),
    ...(known.includes(taperMark) && isTapered(answers) && { [taperMark]: given(answers, "taper") }),
    ...(!known.includes(from) && { [startMark]: from }),
    ...(!known.includes(to) && { [endMark]: to }),
  };
}

const startMark = "motif start";
const endMark = "motif end";

function motifLines(answers: Answers): readonly Line[] {
  const interval = numberOf(answers, "interval");
  return isCord(answers)
    ? cordLines(interval, numberOf(answers, "spread"))
    : [
        "motifs:",
        `  ${motifName(answers)}:`,
        ["    like: transferred cable", "stitches that change places every few rows"],
        [
          `    cross: [${given(answers, "cross")}, ${given(answers, "cross")}]`,
          "stitches on the left and on the right that do",
        ],
        ["    over: left", "which of them lie on top, as worn"],
        [
          `    interval: { allow: ${Math.max(2, interval - 2)}..${interval + 2}, prefer: ${interval} }`,
          "rows from one crossing to the next",
        ],
        [`    draw-in: ${block(given(answers, "draw-in"))}`, "how much narrower crossed stitches lie"],
      ];
}

function cordLines(interval: number, spread: number): readonly Line[] {
  const intervals = [interval - 2, interval, interval + 2].filter((rows) => rows >= 2);
  return [
    "motifs:",
    `  ${cordName}:`,
    ["    like: crossed cord", "two arms of one folded cord that change sides at every hanging"],
    [
      `    interval: { allow: [${intervals.join(", ")}], prefer: ${interval} }`,
      "ground rows between one hanging and the next",
    ],
    [
      `    spread: { allow: ${Math.max(2, spread - 2)}..${spread + 3}, prefer: ${spread} }`,
      "needles each side of the panel's centre",
    ],
    ["    ease: { from: -5 %, to: 15 %, prefer: 2 % }", "how much longer than its path the cord is"],
  ];
}

const cordName = "plait";
const cableName = "rope";
const motifName = (answers: Answers): string => (isCord(answers) ? cordName : cableName);

function placeLines(answers: Answers): readonly Line[] {
  const known = marksOf(answers).map(({ name }) => name);
  const mark = (id: "from" | "to", own: string): string =>
    known.includes(given(answers, id)) ? given(answers, id) : own;
  return [
    "place:",
    `  - motif: ${motifName(answers)}`,
    `    on: ${block(given(answers, "piece"))}`,
    `    from: ${mark("from", startMark)}`,
    `    to: ${mark("to", endMark)}`,
    ["    repeats: { allow: 1..99 }", "how often it is repeated upward"],
    ["    columns: 1", "panels side by side; with more than one, gap: 4 leaves needles between them"],
    ["    margins:", "what stays free around it"],
    [`      bottom: ${upTo(answers, "bottom")}`, "rows below"],
    [`      top: ${upTo(answers, "top")}`, "rows above"],
    [`      side: { least: ${given(answers, "side")} }`, "needles at both sides"],
  ];
}

const upTo = (answers: Answers, id: "bottom" | "top"): string =>
  numberOf(answers, id) === 0 ? "0" : `0..${given(answers, id)}`;

/** Widest a line's text may be for the remarks of its block to stand below one another. */
const widestText = 60;

/** Puts the remarks of a block below one another. */
function aligned(lines: readonly Line[]): readonly string[] {
  const texts = lines.filter((line) => typeof line !== "string").map(([text]) => text.length);
  const column = Math.max(0, ...texts.filter((length) => length <= widestText)) + 2;
  return lines.map((line) =>
    typeof line === "string" ? line : `${line[0].padEnd(column - 2)}  # ${line[1]}`,
  );
}
