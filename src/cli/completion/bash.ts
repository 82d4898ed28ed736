import type { CommandEntry } from "../command.ts";
import { flagsOf, generalOptions, helpOption, type Offer, operandOffer, valueOffer } from "./offer.ts";

/** The completion for bash, from version 3.2 on; it needs nothing else to be installed. */
export function bashCompletion(table: readonly CommandEntry[]): string {
  const first = [...table.map(({ name }) => name), ...generalOptions.flatMap(flagsOf)];
  return `# Completion of evenrow for bash. A line for ~/.bashrc: eval "$(evenrow completion bash)"

_evenrow() {
  local current=\${COMP_WORDS[COMP_CWORD]} previous=\${COMP_WORDS[COMP_CWORD - 1]} command=\${COMP_WORDS[1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    _evenrow_words ${first.join(" ")}
    return
  fi
  case "$command $previous" in
${table.flatMap(valueCases).join("\n")}
  esac
  case "$command $current" in
${table.flatMap(wordCases).join("\n")}
  esac
}

_evenrow_words() {
  local word
  while IFS= read -r word; do COMPREPLY+=("$word"); done < <(compgen -W "$*" -- "$current")
}

# Files with one of these endings, and folders on the way to them.
_evenrow_files() {
  local name ending
  compopt -o filenames 2>/dev/null
  while IFS= read -r name; do COMPREPLY+=("$name"); done < <(
    if (($# == 0)); then compgen -f -- "$current"; else compgen -d -- "$current"; fi
    for ending; do compgen -f -X "!*.$ending" -- "$current"; done
  )
}

complete -F _evenrow evenrow`;
}

function valueCases({ name, options }: CommandEntry): readonly string[] {
  return options.flatMap((option) => {
    const offer = valueOffer(option);
    if (!offer) return [];
    const places = flagsOf(option).map((flag) => `"${name} ${flag}"`);
    return [`    ${places.join(" | ")}) ${doing(offer)} ;;`];
  });
}

function wordCases(command: CommandEntry): readonly string[] {
  const flags = [...command.options, helpOption].flatMap(flagsOf);
  const offer = operandOffer(command);
  return [
    `    "${command.name} -"*) _evenrow_words ${flags.join(" ")} ;;`,
    ...(offer.kind === "nothing" ? [] : [`    "${command.name} "*) ${calling(offer)} ;;`]),
  ];
}

const doing = (offer: Offer): string => (offer.kind === "nothing" ? "return" : `${calling(offer)}; return`);

const calling = (offer: Exclude<Offer, { kind: "nothing" }>): string =>
  offer.kind === "words"
    ? `_evenrow_words ${offer.words.join(" ")}`
    : ["_evenrow_files", ...offer.endings].join(" ");
