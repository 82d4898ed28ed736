import { stripVTControlCharacters } from "node:util";
import { renderDiagnostics } from "../../src/diagnostics/render.ts";
import { examine } from "../../src/examine/examine.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { must } from "./target.ts";

/** Characters that could steer a terminal, and what JavaScript makes of values that were not thought of. */
const unfit = /[\p{Cc}\p{Bidi_Control}]|\[object|\bNaN\b|\bundefined\b|\bInfinity\b|\bnull\b/u;

/** What was read out of the file may say anything but what steers a terminal. */
const steering = /[\p{Cc}\p{Bidi_Control}]/u;

/**
 * Reads and examines a garment as every command does. Either it is sound, or there is at least one mistake; every mistake
 * has a place inside the file and words that a person can read.
 */
export function readAsCommandsDo(
  input: string | Uint8Array,
  outside: Parameters<typeof readGarment>[2] = {},
): Garment | undefined {
  const { garment, diagnostics, locate } = readGarment(input, "soak.yaml", outside);
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  must(
    (garment === undefined) === errors.length > 0,
    `${errors.length} mistakes, and a garment: ${garment !== undefined}`,
  );
  const found = garment ? examine(garment) : [];
  const source = typeof input === "string" ? input : new TextDecoder().decode(input);
  for (const one of [...diagnostics, ...found]) {
    const place = one.place ?? locate(one.path);
    must(place !== undefined && place.line >= 1 && place.column >= 1, `no place: ${JSON.stringify(one)}`);
    must(place.line <= source.split(/\r\n|\n|\r/).length, `a place behind the end: ${JSON.stringify(one)}`);
    must(one.message.length > 0 && !steering.test(one.message), `unfit words: ${JSON.stringify(one)}`);
    must(!steering.test(`${one.found}${one.expected}`), `unfit words: ${JSON.stringify(one)}`);
    must(!unfit.test(one.expected ?? ""), `unfit words: ${JSON.stringify(one)}`);
  }
  const text = renderDiagnostics([...diagnostics, ...found], { file: "soak.yaml", source });
  must(stripVTControlCharacters(text) === text, `a message steers the terminal: ${JSON.stringify(text)}`);
  must(!/\n\s+at .*:\d+:\d+/.test(text), `a stack trace: ${text}`);
  return found.some(({ severity }) => severity === "error") ? undefined : garment;
}
