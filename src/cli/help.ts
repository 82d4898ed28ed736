import type { CommandEntry, OptionEntry } from "./command.ts";
import { commandTable } from "./command-table.ts";

export function generalHelp(): string {
  const width = Math.max(...commandTable.map(({ name }) => name.length));
  return [
    "Evenrow fits a cord, a cable or a repeat whole onto a shaped machine-knitted piece.",
    "",
    "Examples",
    "  evenrow fit samples/sleeve.yaml      the best fit and its rivals",
    "  evenrow sheet samples/sleeve.yaml    what to do at every row",
    "",
    "Usage: evenrow COMMAND FILE [options]   (- reads standard input)",
    "",
    "Commands",
    ...commandTable.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    "",
    "  evenrow COMMAND --help says more of a command; evenrow --version tells the version.",
    "",
    "Exit codes: 0 done, 1 the file is right but nothing fits, 2 the file or the command line is wrong,",
    "            3 stopped at a limit before the best fit was proven.",
  ].join("\n");
}

export function commandHelp({ name, summary, operands, options, examples }: CommandEntry): string {
  const labels = options.map(optionLabel);
  const width = Math.max(0, ...labels.map((label) => label.length));
  return [
    `evenrow ${name}: ${summary}`,
    "",
    "Examples",
    ...examples.map((example) => `  ${example}`),
    "",
    `Usage: evenrow ${name} ${operands}${options.length > 0 ? " [options]" : ""}`,
    ...(options.length > 0
      ? [
          "",
          "Options",
          ...options.map((option, index) => `  ${labels[index]!.padEnd(width)}  ${option.summary}`),
        ]
      : []),
  ].join("\n");
}

const optionLabel = ({ name, short, value }: OptionEntry): string =>
  `${short === undefined ? "    " : `-${short}, `}--${name}${value === undefined ? "" : ` ${value}`}`;
