import type { ExitCode } from "./exit-codes.ts";

/** Where a command reads and writes; tests give their own. */
export interface Terminal {
  /** Results. */
  readonly out: (text: string) => void;
  /** Results that are no text; absent where a person would see them. */
  readonly outBytes?: (bytes: Uint8Array) => void;
  /** Words about the results. */
  readonly say: (text: string) => void;
  readonly columns: number;
  /** Whether a person sits at both ends. */
  readonly interactive: boolean;
  readonly readStdin: () => Promise<Uint8Array>;
  /** One line that is written anew in its place, or taken away; absent where nobody would see it change. */
  readonly status?: (line: string | undefined) => void;
  /**
   * Takes the knitter's first Ctrl-C instead of ending at once, until what is returned is called; a second one ends
   * the program. Absent where there is none to take.
   */
  readonly onInterrupt?: (stop: () => void) => () => void;
}

/** One entry of the command table, from which the dispatch, the help and the documents are made. */
export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  /** The words after the name, such as "FILE". */
  readonly operands: string;
  /** The only words that its operand may be. */
  readonly words?: readonly string[];
  readonly options: readonly OptionEntry[];
  readonly examples: readonly string[];
  /** Loads only what this command needs, because starting is most of the time a short command takes. */
  readonly load: () => Promise<{ readonly run: CommandRun }>;
}

export interface OptionEntry {
  readonly name: string;
  readonly short?: string;
  /** Name of its value; absent for a switch. */
  readonly value?: string;
  /** The only words that its value may be. */
  readonly words?: readonly string[];
  /** Endings of the files that its value may name, where it has to be of a kind. */
  readonly endings?: readonly string[];
  readonly summary: string;
}

export interface CommandInput {
  readonly operands: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  readonly terminal: Terminal;
}

export type CommandRun = (input: CommandInput) => Promise<ExitCode>;
