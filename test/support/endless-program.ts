import { copyFileSync, cpSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The built program with an engine that never comes to its end, in a folder of its own. */
export interface EndlessProgram {
  /** Its entry, for node. */
  readonly program: string;
  readonly folder: string;
  readonly remove: () => void;
}

/** HiGHS is not to be found from there, so nothing takes over. */
export function endlessProgram(): EndlessProgram {
  const folder = mkdtempSync(join(tmpdir(), "evenrow-endless-"));
  const built = join(folder, "dist");
  cpSync("dist", built, { recursive: true });
  renameSync(join(built, "engine-worker.cjs"), join(built, "real-engine-worker.cjs"));
  copyFileSync("test/support/endless-engine.cjs", join(built, "engine-worker.cjs"));
  return { program: join(built, "evenrow.js"), folder, remove: () => rmSync(folder, { recursive: true }) };
}
