import { open } from "node:fs/promises";
import { LARGEST_FILE_BYTES } from "../garment/source/decode.ts";
import { errorCode, fileReason } from "./file-reason.ts";

export type Opening =
  | { readonly status: "read"; readonly text: string }
  | { readonly status: "failed"; readonly reason: string; readonly missing?: true };

/**
 * Reads a garment file to be edited: its text as it is, a byte order mark included, so that saving it again gives the
 * same bytes. Nothing is thrown.
 */
export async function openForEditing(file: string): Promise<Opening> {
  try {
    const bytes = await readUpTo(file, LARGEST_FILE_BYTES);
    if (!bytes) return { status: "failed", reason: "the file is too large for a garment" };
    return { status: "read", text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    if (error instanceof TypeError) return { status: "failed", reason: "the file is not saved as UTF-8" };
    return {
      status: "failed",
      reason: fileReason(error),
      ...(errorCode(error) === "ENOENT" && { missing: true }),
    };
  }
}

const CHUNK_BYTES = 65_536;

/**
 * Reads a file, a pipe or a device, of which some never end; undefined where it is longer than so many bytes. Throws what
 * the system says.
 */
export async function readUpTo(file: string, mostBytes: number): Promise<Buffer | undefined> {
  const handle = await open(file, "r");
  try {
    const parts: Buffer[] = [];
    for (let size = 0; size <= mostBytes; ) {
      const { bytesRead, buffer } = await handle.read(Buffer.allocUnsafe(CHUNK_BYTES), 0, CHUNK_BYTES, null);
      if (bytesRead === 0) return Buffer.concat(parts, size);
      parts.push(buffer.subarray(0, bytesRead));
      size += bytesRead;
    }
    return undefined;
  } finally {
    await handle.close();
  }
}
