import type { CommandEntry, OptionEntry } from "./command.ts";

const json: OptionEntry = { name: "json", summary: "write the machine-readable form" };
const output: OptionEntry = {
  name: "output",
  short: "o",
  value: "FILE",
  summary: "write to a file instead of standard output",
};
const force: OptionEntry = { name: "force", short: "f", summary: "overwrite an output file that exists" };
const timeLimit: OptionEntry = {
  name: "time-limit",
  value: "SECONDS",
  summary: "stop after so long, with the best found so far (default 60)",
};

/** Every command there is, in the order in which help shows them. */
export const commandTable: readonly CommandEntry[] = [
  {
    name: "fit",
    summary: "the best fit, what it gives up, and the next best",
    operands: "FILE",
    options: [
      json,
      { name: "rivals", value: "NUMBER", summary: "how many of the next best to show (default 5)" },
      timeLimit,
      output,
      force,
    ],
    examples: ["evenrow fit samples/sleeve.yaml", "evenrow fit samples/sleeve.yaml --json -o fit.json"],
    load: () => import("./commands/fit.ts"),
  },
  {
    name: "why",
    summary: "what stands in the way, and the smallest changes that would let it fit",
    operands: "FILE",
    options: [json, timeLimit, output, force],
    examples: ["evenrow why samples/too-narrow.yaml", "evenrow why samples/sleeve.yaml --json"],
    load: () => import("./commands/why.ts"),
  },
  {
    name: "explore",
    summary: "full screen: push the rules about and watch the fit",
    operands: "[FILE]",
    options: [{ name: "no-color", summary: "no colours (as does NO_COLOR in the environment)" }],
    examples: ["evenrow explore samples/sleeve.yaml", "evenrow explore"],
    load: () => import("./commands/explore.ts"),
  },
  {
    name: "sheet",
    summary: "the row-by-row working sheet of the best fit",
    operands: "FILE",
    options: [
      json,
      { name: "html", summary: "one file to print on A4 or US Letter, and to read on a screen" },
      { name: "pdf", summary: "the same as a PDF, to a file or a pipe" },
      { name: "paper", value: "PAPER", summary: "paper of the PDF: a4 (the default) or letter" },
      { name: "piece", value: "NAME", summary: "only this piece (default: all)" },
      timeLimit,
      output,
      force,
    ],
    examples: [
      "evenrow sheet samples/sleeve.yaml",
      "evenrow sheet samples/front.yaml -o front.html",
      "evenrow sheet samples/front.yaml --paper letter -o front.pdf",
    ],
    load: () => import("./commands/sheet.ts"),
  },
  {
    name: "chart",
    summary: "the pieces drawn to scale with their motifs",
    operands: "FILE",
    options: [
      { name: "piece", value: "NAME", summary: "only this piece (default: all)" },
      {
        name: "view",
        value: "VIEW",
        summary: "knitter (as the knitter sees it, the default), worn (as worn) or both",
      },
      {
        name: "format",
        value: "FORMAT",
        summary: "svg, png or text (default: by the output's ending; text on a terminal)",
      },
      timeLimit,
      output,
      force,
    ],
    examples: [
      "evenrow chart samples/sleeve.yaml",
      "evenrow chart samples/front.yaml --view both -o front.svg",
      "evenrow chart samples/front.yaml --piece front -o front.png",
    ],
    load: () => import("./commands/chart.ts"),
  },
  {
    name: "work",
    summary: "a row counter that stays beside the machine and keeps its place",
    operands: "FILE",
    options: [
      { name: "where", summary: "only say where the work stands" },
      { name: "notes", summary: "only list notes, mistakes and measurements with their rows" },
      json,
      { name: "piece", value: "NAME", summary: "this piece (default: the one worked at last)" },
      { name: "next", summary: "without the screen: one row on, and say what to do now" },
      { name: "back", summary: "without the screen: one row back" },
      { name: "row", value: "NUMBER", summary: "without the screen: go to a row" },
      {
        name: "half",
        value: "1 or 2",
        summary: "which half above a neck --row means (default: the present one)",
      },
      { name: "note", value: "TEXT", summary: "without the screen: leave a note at the row" },
      { name: "mistake", summary: "without the screen: mark a mistake at the row, or take the mark away" },
      {
        name: "measure",
        value: "LENGTH",
        summary: "without the screen: measured from the cast-on edge to the needles, at the row",
      },
      {
        name: "measure-width",
        value: "LENGTH",
        summary: "without the screen: measured over all needles in work",
      },
      { name: "refit", summary: "with --measure: fit the rest anew, and follow the new sheet from here on" },
      { name: "new-sheet", summary: "follow the changed file's sheet from here on, without the question" },
      {
        name: "sheet",
        value: "FILE",
        summary:
          "without the screen: follow this sheet from here on, as refit --json or sheet --json wrote it",
      },
      { name: "take-over", summary: "take the work over from another copy that has it open" },
      {
        name: "step-key",
        value: "KEY",
        summary: "the key that a foot switch types, such as F5; held down or bouncing it counts once",
      },
      { name: "rest", value: "MS", summary: "how near to each other its presses count once (default 700)" },
      { name: "bell", summary: "ring the terminal's bell at a row with something to do" },
      { name: "no-color", summary: "no colours (as does NO_COLOR in the environment)" },
      timeLimit,
    ],
    examples: [
      "evenrow work samples/sleeve.yaml",
      "evenrow work samples/sleeve.yaml --step-key pagedown --bell",
      "evenrow work samples/sleeve.yaml --where --json",
      "evenrow work samples/sleeve.yaml --next",
    ],
    load: () => import("./commands/work.ts"),
  },
  {
    name: "refit",
    summary: "fits the rest of a piece anew from what is measured on it at a row",
    operands: "FILE",
    options: [
      { name: "row", value: "NUMBER", summary: "rows knitted" },
      { name: "length", value: "LENGTH", summary: "measured from the cast-on edge to the needles" },
      { name: "width", value: "LENGTH", summary: "measured over all needles in work" },
      { name: "piece", value: "NAME", summary: "which piece (default: the only one)" },
      json,
      timeLimit,
      output,
      force,
    ],
    examples: [
      'evenrow refit samples/sleeve.yaml --row 50 --length "17 cm"',
      'evenrow refit samples/front.yaml --row 120 --length "31 cm" --width "50.5 cm" -o front-from-120.txt',
    ],
    load: () => import("./commands/refit.ts"),
  },
  {
    name: "check",
    summary: "everything that is wrong with a garment file",
    operands: "FILE",
    options: [json, output, force],
    examples: ["evenrow check samples/sleeve.yaml", "evenrow check - < samples/sleeve.yaml"],
    load: () => import("./commands/check.ts"),
  },
  {
    name: "model",
    summary: "the linear program in CPLEX LP format, for any solver to check the answer",
    operands: "FILE",
    options: [output, force],
    examples: ["evenrow model samples/sleeve.yaml", "evenrow model samples/sleeve.yaml -o sleeve.lp"],
    load: () => import("./commands/model.ts"),
  },
  {
    name: "new",
    summary: "asks a knitter's questions and writes a garment file",
    operands: "[FILE]",
    options: [{ name: "defaults", summary: "ask nothing and take what is suggested" }, force],
    examples: [
      "evenrow new sleeve.yaml",
      "evenrow new --defaults > first.yaml",
      "evenrow new < answers.txt    (one answer a line, without a terminal)",
    ],
    load: () => import("./commands/new.ts"),
  },
  {
    name: "gauge",
    summary: "the gauge from counts and measures of swatches, and how sure it is",
    operands: "[SWATCH ...]",
    options: [
      { name: "into", value: "FILE", summary: "write the gauge into this garment file" },
      json,
      output,
      force,
    ],
    examples: [
      'evenrow gauge "40 stitches 18.2 cm, 60 rows 19.4 cm" "washed: 40 stitches 17.8 cm, 60 rows 18.6 cm"',
      'evenrow gauge "washed: 40 stitches 18 cm, 60 rows 19 cm" "cord on 3 needles: 50 stitches 26 cm" --into sleeve.yaml',
      "evenrow gauge < answers.txt    (one answer a line, without a terminal)",
    ],
    load: () => import("./commands/gauge.ts"),
  },
  {
    name: "start",
    summary:
      "a first look: the screen of explore; without a terminal the fit of a sample and its sheet's start",
    operands: "[FILE]",
    options: [],
    examples: ["evenrow start", "evenrow start samples/scarf.yaml"],
    load: () => import("./commands/start.ts"),
  },
];
