import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk of 64 kB of its own; undefined where none may be made: only root may, and not everywhere. */
export function smallDisk(): { readonly at: string; readonly remove: () => void } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const at = mkdtempSync(join(tmpdir(), "evenrow-small-disk-"));
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=64k", "evenrow", at], { stdio: "ignore" });
  } catch {
    rmSync(at, { recursive: true });
    return undefined;
  }
  return {
    at,
    remove: () => {
      execFileSync("umount", [at]);
      rmSync(at, { recursive: true });
    },
  };
}
