import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { renderBriefly } from "../diagnostics/render.ts";
import { drawingsIn, type LoadedDrawing, loadDrawings } from "../drawing-file/load-drawings.ts";
import { examineRead } from "../examine/examine-read.ts";
import type { Garment, SizedGarment, SizeRange } from "../garment/garment.ts";
import { readGarment } from "../garment/read-garment.ts";
import { LARGEST_FILE_BYTES } from "../garment/source/decode.ts";
import type { CommandInput, Terminal } from "./command.ts";
import { CommandError } from "./exit-codes.ts";
import { readInput, sizeOf } from "./files.ts";
import { needOneSize, sizeAsked } from "./size-option.ts";

export interface LoadedGarment {
  /** Of a file with sizes the garment in the first of them. */
  readonly garment?: Garment;
  readonly range?: SizeRange;
  /** The size that was asked for; then the garment is of that size. */
  readonly size?: SizedGarment;
  readonly diagnostics: readonly Diagnostic[];
  readonly locate: (path: Path) => Place | undefined;
  readonly name: string;
  readonly source: string;
  /** The drawings that it names, as they were read beside it. */
  readonly drawings: readonly LoadedDrawing[];
}

/** One without mistakes. */
export type SoundGarment = LoadedGarment & { readonly garment: Garment };

/** The one file a command is about. */
export function fileOperand({ operands }: CommandInput, command: string): string {
  const [file, second] = operands;
  if (file === undefined)
    throw new CommandError(
      `${command} needs a garment file.\nFor example: evenrow ${command} samples/sleeve.yaml`,
    );
  if (second !== undefined)
    throw new CommandError(`${command} takes one file, and these are two: ${file} and ${second}`);
  return file;
}

/** Reads and examines a garment file; mistakes in it are told in `diagnostics`, never thrown. */
export async function loadGarment(file: string, terminal: Terminal): Promise<LoadedGarment> {
  const size = await sizeOf(file);
  // The reader refuses it by its length alone, so a file of that length stands for one that is larger still.
  const bytes =
    size !== undefined && size > LARGEST_FILE_BYTES
      ? new Uint8Array(LARGEST_FILE_BYTES + 1)
      : await readInput(file, terminal);
  const name = file === "-" ? "standard input" : file;
  const drawings = await loadDrawings(bytes, file);
  const read = readGarment(bytes, name, { drawing: drawingsIn(drawings) });
  const { garment, range, locate } = read;
  const all = [...read.diagnostics, ...examineRead(read)];
  const sound = garment && !all.some(({ severity }) => severity === "error");
  return {
    ...(sound && { garment }),
    ...(sound && range && { range }),
    diagnostics: all,
    locate,
    name,
    source: new TextDecoder().decode(bytes),
    drawings,
  };
}

/**
 * The garment, in the size that is asked for, with warnings said and notes left to the command check.
 *
 * @throws CommandError with everything that is wrong with the file, or where there is no such size
 */
export async function soundGarment(
  file: string,
  terminal: Terminal,
  options: CommandInput["options"] = {},
): Promise<SoundGarment> {
  const loaded = await loadGarment(file, terminal);
  const { garment, range, name, source } = loaded;
  const diagnostics = loaded.diagnostics.filter(({ severity }) => severity !== "note");
  const text = diagnostics.length > 0 ? renderBriefly(diagnostics, { file: name, source }) : "";
  if (!garment) throw new CommandError(text);
  if (text !== "") terminal.say(text);
  const size = sizeAsked(range, options);
  return { ...loaded, garment: size?.garment ?? garment, ...(size && { size }) };
}

/** The same for a command that is about one size. */
export async function garmentInOneSize(
  file: string,
  terminal: Terminal,
  options: CommandInput["options"],
): Promise<SoundGarment> {
  const loaded = await soundGarment(file, terminal, options);
  needOneSize(loaded.range, loaded.size);
  return loaded;
}
