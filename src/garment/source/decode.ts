import type { Code } from "../../diagnostics/codes.ts";
import type { Diagnostic, Place } from "../../diagnostics/diagnostic.ts";

/**
 * The largest file that is read, in bytes. A garment of thirty sizes with three pieces each takes about 30 kB; at
 * this size even text made to be slow to read is refused within a few seconds, and nothing larger is looked into.
 */
export const LARGEST_FILE_BYTES = 256_000;

/** A file's text without a byte order mark, or why it is not text that can be read. */
export function decode(
  input: string | Uint8Array,
): { readonly text: string } | { readonly diagnostic: Diagnostic } {
  if (input.length > LARGEST_FILE_BYTES) {
    return refuse("file-too-large", "this file is too large for a garment", {
      found: `more than ${LARGEST_FILE_BYTES / 1000} kB`,
      expected: `at most ${LARGEST_FILE_BYTES / 1000} kB`,
    });
  }
  if (typeof input === "string") return checkText(input);
  if ((input[0] === 0xff && input[1] === 0xfe) || (input[0] === 0xfe && input[1] === 0xff)) {
    return refuse("file-not-utf8", "this file is saved as UTF-16", {
      expected: "the same text saved as UTF-8",
    });
  }
  if (input.includes(0)) {
    return refuse("file-binary", "this file is not text", { expected: "a garment written as YAML or JSON" });
  }
  try {
    return checkText(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(input));
  } catch {
    return refuse("file-not-utf8", "this file is not saved as UTF-8", {
      expected: "the same text saved as UTF-8",
    });
  }
}

/** Characters that no text editor writes; on a terminal they could move the cursor or change colours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be found.
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u0084\u0086-\u009f]/;

function checkText(raw: string): { readonly text: string } | { readonly diagnostic: Diagnostic } {
  const text = raw.replace(/^\ufeff/, "");
  const control = CONTROL.exec(text);
  if (control) {
    const before = text.slice(0, control.index).split(/\r\n|\n|\r/);
    const place = { line: before.length, column: [...(before.at(-1) ?? "")].length + 1 };
    const code = `U+${control[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
    return refuse(
      "file-binary",
      "this file holds a character that is not text",
      { found: `the character ${code}`, expected: "a garment written as YAML or JSON" },
      place,
    );
  }
  return text.trim() === "" ? { diagnostic: emptyFile() } : { text };
}

export const emptyFile = (): Diagnostic =>
  refuse("file-empty", "there is no garment in this file", {
    expected: "a garment, from the line format: evenrow/1 on",
  }).diagnostic;

function refuse(
  code: Code,
  message: string,
  detail: { readonly found?: string; readonly expected: string },
  place: Place = { line: 1, column: 1 },
): { readonly diagnostic: Diagnostic } {
  return { diagnostic: { severity: "error", code, message, ...detail, path: [], place } };
}
