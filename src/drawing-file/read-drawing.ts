import { type Drawing, type DrawingKind, type DrawingProblem, LARGEST_DRAWING_BYTES } from "./drawing.ts";

/**
 * Reads a drawing's bytes. The parsers are loaded only here, because most garments have no drawing and every command
 * would pay for them.
 *
 * @returns never throws: what is wrong with the file is its value
 */
export async function readDrawing(bytes: Uint8Array, kind: DrawingKind): Promise<Drawing | DrawingProblem> {
  const text = textOf(bytes, kind);
  if (typeof text !== "string") return text;
  if (kind === "svg") return (await import("./svg/read-svg.ts")).readSvg(text);
  return (await import("./dxf/read-dxf.ts")).readDxf(text);
}

function textOf(bytes: Uint8Array, kind: DrawingKind): string | DrawingProblem {
  if (bytes.length > LARGEST_DRAWING_BYTES)
    return {
      problem: "it is too large for a drawing of pieces",
      expected: `at most ${LARGEST_DRAWING_BYTES / 1_000_000} MB`,
    };
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return { problem: "it is compressed; save it as plain SVG" };
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { problem: "it is saved as UTF-16", expected: "the same drawing saved as UTF-8" };
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    // Older pattern programs write DXF in the code page of their country, and only names are outside of ASCII.
    return kind === "dxf"
      ? new TextDecoder("windows-1252").decode(bytes)
      : { problem: "it is not saved as UTF-8", expected: "the same drawing saved as UTF-8" };
  }
}
