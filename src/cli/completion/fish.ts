import type { CommandEntry, OptionEntry } from "../command.ts";
import { generalOptions, helpOption, type Offer, operandOffer, valueOffer } from "./offer.ts";

/** The completion for fish: `evenrow completion fish > ~/.config/fish/completions/evenrow.fish`. */
export function fishCompletion(table: readonly CommandEntry[]): string {
  return [
    "# Completion of evenrow for fish: a file evenrow.fish in ~/.config/fish/completions",
    ...filesFunction,
    "complete -c evenrow -f",
    ...generalOptions.map((option) => optionLine("__fish_use_subcommand", option)),
    ...table.map(
      ({ name, summary }) => `complete -c evenrow -n __fish_use_subcommand -a ${name} -d ${quoted(summary)}`,
    ),
    ...table.flatMap(commandLines),
  ].join("\n");
}

/** The shell's own way to ask for an ending offers all other files as well. */
const filesFunction = [
  "function __evenrow_files",
  "  set -l ending '(?:/|\\.(?:'(string join '|' $argv)'))(?:\\t.*)?$'",
  "  __fish_complete_path (commandline -ct) | string match -re $ending",
  "end",
];

function commandLines(command: CommandEntry): readonly string[] {
  const when = `'__fish_seen_subcommand_from ${command.name}'`;
  return [
    ...[...command.options, helpOption].map((option) => optionLine(when, option)),
    `complete -c evenrow -n ${when}${listFlag(operandOffer(command))}`,
  ];
}

function optionLine(when: string, option: OptionEntry): string {
  const { name, short, summary } = option;
  const flags = `-l ${name}${short === undefined ? "" : ` -s ${short}`}`;
  return `complete -c evenrow -n ${when} ${flags}${valueFlags(valueOffer(option))} -d ${quoted(summary)}`;
}

function valueFlags(offer: Offer | undefined): string {
  if (!offer) return "";
  if (offer.kind === "files" && offer.endings.length === 0) return " -r -F";
  return ` -x${listFlag(offer)}`;
}

/** `-a` with words, or with a call for files. */
function listFlag(offer: Offer): string {
  switch (offer.kind) {
    case "words":
      return ` -a ${quoted(offer.words.join(" "))}`;
    case "files":
      return ` -a ${quoted(`(__evenrow_files ${offer.endings.join(" ")})`)}`;
    case "nothing":
      return "";
  }
}

const quoted = (text: string): string => `'${text.replace(/['\\]/g, "\\$&")}'`;
