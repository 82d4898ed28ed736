import type { CommandEntry, OptionEntry } from "../command.ts";
import { flagsOf, generalOptions, helpOption, type Offer, operandOffer, valueOffer } from "./offer.ts";

/** The completion for zsh: a file in a folder of its `fpath`, or a line for its settings after `compinit`. */
export function zshCompletion(table: readonly CommandEntry[]): string {
  return `#compdef evenrow
# Completion of evenrow for zsh: call it _evenrow in a folder of your fpath,
# or have a line in ~/.zshrc after compinit: eval "$(evenrow completion zsh)"

_evenrow() {
  local context state line
  typeset -A opt_args
  _arguments -C \\
    ${[...generalOptions.flatMap((option) => argumentOf(option, "(- *)")), "'1:command:->command'", "'*::argument:->argument'"].join(" \\\n    ")}
  case $state in
    command)
      local -a commands
      commands=(
${table.map(({ name, summary }) => `        ${quoted(`${name}:${summary}`)}`).join("\n")}
      )
      _describe command commands
      ;;
    argument)
      case $line[1] in
${table.map(commandCase).join("\n")}
      esac
      ;;
  esac
}

if [[ $funcstack[1] == _evenrow ]]; then _evenrow "$@"; else compdef _evenrow evenrow; fi`;
}

function commandCase(command: CommandEntry): string {
  const specs = [
    ...command.options.flatMap((option) => argumentOf(option)),
    ...argumentOf(helpOption, "(- *)"),
    ...operandOf(command),
  ];
  return `        ${command.name})\n          _arguments -s \\\n            ${specs.join(" \\\n            ")}\n          ;;`;
}

/** One option to `_arguments`, with what shuts it out: its other form, unless that is named. */
function argumentOf(option: OptionEntry, shut?: string): readonly string[] {
  const flags = flagsOf(option);
  const offer = valueOffer(option);
  const value = offer ? `:${option.value}:${actionOf(offer)}` : "";
  const said = `[${option.summary.replace(/[\]\\]/g, "\\$&")}]${value}`;
  return flags.map((flag) =>
    quoted(`${shut ?? (flags.length > 1 ? `(${flags.join(" ")})` : "")}${flag}${said}`),
  );
}

function operandOf(command: CommandEntry): readonly string[] {
  const offer = operandOffer(command);
  return offer.kind === "nothing"
    ? []
    : [quoted(`*:${command.operands.replace(/[[\]]/g, "")}:${actionOf(offer)}`)];
}

function actionOf(offer: Offer): string {
  switch (offer.kind) {
    case "words":
      return `(${offer.words.join(" ")})`;
    case "files":
      return offer.endings.length === 0
        ? "_files"
        : `_files -g "${offer.endings.map((ending) => `*.${ending}`).join(" ")}"`;
    case "nothing":
      return " ";
  }
}

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
