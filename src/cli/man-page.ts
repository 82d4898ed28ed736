import type { CommandEntry, OptionEntry } from "./command.ts";
import { flagsOf } from "./completion/offer.ts";

/**
 * The manual page, in the macros of man(7), made from the command table.
 *
 * @param version of the program, for the foot of the page
 */
export function manPage(table: readonly CommandEntry[], version: string): string {
  return [
    `.TH EVENROW 1 "" "evenrow ${version}" "User Commands"`,
    ...section("NAME", ["evenrow \\- fits a cord, a cable or a repeat whole onto a machine\\-knitted piece"]),
    ...section("SYNOPSIS", [
      ".B evenrow",
      ".I COMMAND FILE",
      "[options]",
      ".br",
      ".B evenrow",
      ".RB [ COMMAND ]",
      ".B \\-\\-help",
    ]),
    ...section(
      "DESCRIPTION",
      paragraphs(
        "Evenrow reads a garment file: a swatch, an outline in centimetres, and motifs with their rules. It finds the best fit by a linear program, proves it, says what it gives up and what the next best would be, draws it, and prints the working sheet row by row.",
        "FILE is a garment in YAML or JSON; - reads it from standard input. Results go to standard output and words about them to standard error.",
      ),
    ),
    ...section("COMMANDS", table.flatMap(commandLines)),
    ...section(
      "EXIT STATUS",
      tagged([
        ["0", "done"],
        ["1", "the file is right but nothing fits"],
        ["2", "the file or the command line is wrong"],
        ["3", "stopped at a limit before the best fit was proven"],
        ["70", "a fault of the program's own"],
        ["130", "stopped by the knitter before there was anything to show"],
      ]),
    ),
    ...section(
      "ENVIRONMENT",
      tagged([
        ["NO_COLOR", "where it is set, nothing is written in colour"],
        [
          "XDG_STATE_HOME",
          "where the row counter keeps its place and the screen what was not saved; ~/.local/state where it is not set",
        ],
        ["INK_SCREEN_READER", "where it is true, the full screens come as lines of text, as with TERM=dumb"],
      ]),
    ),
    ...section(
      "SEE ALSO",
      paragraphs(
        "README.md beside the program has the garment file by example, and the limits that a cord on a child's garment has to keep.",
      ),
    ),
    "",
  ].join("\n");
}

function commandLines({ name, summary, operands, options, examples }: CommandEntry): readonly string[] {
  return [
    `.SS evenrow ${escaped(`${name} ${operands}`)}`,
    ...paragraphs(`${summary[0]!.toUpperCase()}${summary.slice(1)}.`).slice(1),
    ...options.flatMap((option) => [".TP", optionTag(option), ...paragraphs(option.summary).slice(1)]),
    ".PP",
    examples.length === 1 ? "Example:" : "Examples:",
    ".PP",
    ".RS 4",
    ".EX",
    ...examples.map(escaped),
    ".EE",
    ".RE",
  ];
}

function optionTag(option: OptionEntry): string {
  const flags = [...flagsOf(option)]
    .reverse()
    .map((flag) => `\\fB${escaped(flag)}\\fR`)
    .join(", ");
  return option.value === undefined ? flags : `${flags} \\fI${escaped(option.value)}\\fR`;
}

const section = (heading: string, lines: readonly string[]): readonly string[] => [
  `.SH ${heading}`,
  ...(lines[0] === ".PP" ? lines.slice(1) : lines),
];

const paragraphs = (...texts: readonly string[]): readonly string[] =>
  texts.flatMap((text) => [".PP", escaped(text)]);

const tagged = (entries: readonly (readonly [tag: string, text: string])[]): readonly string[] =>
  entries.flatMap(([tag, text]) => [".TP", `.B ${escaped(tag)}`, escaped(text)]);

/** Text as it is: no letter is an escape, no hyphen is broken, no line is taken for a request. */
const escaped = (text: string): string =>
  text.replaceAll("\\", "\\e").replaceAll("-", "\\-").replace(/^[.']/, "\\&$&");
