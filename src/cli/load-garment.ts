import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { renderDiagnostics } from "../diagnostics/render.ts";
import { drawingsIn, type LoadedDrawing, loadDrawings } from "../drawing-file/load-drawings.ts";
import { examine } from "../examine/examine.ts";
import type { Garment } from "../garment/garment.ts";
import { readGarment } from "../garment/read-garment.ts";
import { LARGEST_FILE_BYTES } from "../garment/source/decode.ts";
import type { CommandInput, Terminal } from "./command.ts";
import { CommandError } from "./exit-codes.ts";
import { readInput, sizeOf } from "./files.ts";

export interface LoadedGarment {
  readonly garment?: Garment;
  readonly diagnostics: readonly Diagnostic[];
  readonly locate: (path: Path) => Place | undefined;
  readonly name: string;
  readonly source: string;
  /** The drawings that it names, as they were read beside it. */
  readonly drawings: readonly LoadedDrawing[];
}

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
  const { garment, diagnostics, locate } = readGarment(bytes, name, { drawing: drawingsIn(drawings) });
  const found = garment ? examine(garment).map((one) => placed(one, locate)) : [];
  const all = [...diagnostics, ...found];
  const sound = garment && !all.some(({ severity }) => severity === "error");
  return {
    ...(sound && { garment }),
    diagnostics: all,
    locate,
    name,
    source: new TextDecoder().decode(bytes),
    drawings,
  };
}

/** The garment, with warnings said, and notes left to the command check; where the file is wrong everything wrong with it is said and the command ends. */
export async function soundGarment(
  file: string,
  terminal: Terminal,
): Promise<LoadedGarment & { garment: Garment }> {
  const loaded = await loadGarment(file, terminal);
  const { garment, name, source } = loaded;
  const diagnostics = loaded.diagnostics.filter(({ severity }) => severity !== "note");
  const text = diagnostics.length > 0 ? renderDiagnostics(diagnostics, { file: name, source }) : "";
  if (!garment) throw new CommandError(text);
  if (text !== "") terminal.say(text);
  return { ...loaded, garment };
}

function placed(diagnostic: Diagnostic, locate: LoadedGarment["locate"]): Diagnostic {
  const place = locate(diagnostic.path);
  return place ? { ...diagnostic, place } : diagnostic;
}
