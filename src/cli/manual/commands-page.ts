import type { CommandEntry, OptionEntry } from "../command.ts";
import { flagsOf } from "../completion/offer.ts";
import { bold, escaped, heading, italic, paragraphs, section, tagged } from "./roff.ts";

/**
 * The manual page evenrow(1), made from the command table.
 *
 * @param version of the program, for the foot of the page
 */
export function commandsPage(table: readonly CommandEntry[], version: string): string {
  return [
    heading("evenrow", 1, version, "User Commands"),
    ...section("NAME", ["evenrow \\- fits a cord, a cable or a repeat whole onto a machine\\-knitted piece"]),
    ...section("SYNOPSIS", [
      `${bold("evenrow")} ${italic("COMMAND FILE")} [options]`,
      ".br",
      `${bold("evenrow")} [${italic("COMMAND")}] ${bold("--help")}`,
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
        [bold("0"), "done"],
        [bold("1"), "the file is right but nothing fits"],
        [bold("2"), "the file or the command line is wrong"],
        [bold("3"), "stopped at a limit before the best fit was proven"],
        [bold("70"), "a fault of the program's own"],
        [bold("130"), "stopped by the knitter before there was anything to show"],
      ]),
    ),
    ...section(
      "ENVIRONMENT",
      tagged([
        [bold("NO_COLOR"), "where it is set, nothing is written in colour"],
        [
          bold("XDG_STATE_HOME"),
          "where the row counter keeps its place and the screen what was not saved; ~/.local/state where it is not set",
        ],
        [
          bold("INK_SCREEN_READER"),
          "where it is true, the full screens come as lines of text, as with TERM=dumb",
        ],
      ]),
    ),
    ...section("SEE ALSO", [`.BR evenrow\\-garment (5)`]),
    "",
  ].join("\n");
}

function commandLines({ name, summary, operands, options, examples }: CommandEntry): readonly string[] {
  return [
    `.SS evenrow ${escaped(`${name} ${operands}`)}`,
    escaped(`${summary[0]!.toUpperCase()}${summary.slice(1)}.`),
    ...tagged(options.map((option) => [optionTag(option), option.summary])),
    ".PP",
    "Examples:",
    ".PP",
    ".RS 4",
    ".EX",
    ...examples.map(escaped),
    ".EE",
    ".RE",
  ];
}

function optionTag(option: OptionEntry): string {
  const flags = [...flagsOf(option)].reverse().map(bold).join(", ");
  return option.value === undefined ? flags : `${flags} ${italic(option.value)}`;
}
