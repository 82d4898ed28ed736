import { readFile } from "node:fs/promises";
import { fileReason } from "./file-reason.ts";

export type Opening =
  | { readonly status: "read"; readonly text: string }
  | { readonly status: "failed"; readonly reason: string };

/**
 * Reads a garment file to be edited: its text as it is, a byte order mark included, so that saving it again gives the
 * same bytes. Nothing is thrown.
 */
export async function openForEditing(file: string): Promise<Opening> {
  try {
    const bytes = await readFile(file);
    return { status: "read", text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    if (error instanceof TypeError) return { status: "failed", reason: "the file is not saved as UTF-8" };
    return { status: "failed", reason: fileReason(error) };
  }
}
