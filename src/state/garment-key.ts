import { createHash } from "node:crypto";
import { realpath } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";

/** One garment file is one, by whatever link it is reached, and also while it is not there. */
export const fullPath = (file: string): Promise<string> =>
  realpath(file)
    .catch(async () => join(await realpath(dirname(file)), basename(file)))
    .catch(() => resolve(file));

/** A file's name that stands for a path: paths may be longer than a name can be, and hold characters that it can't. */
export const nameFor = (path: string): string => createHash("sha256").update(path).digest("hex").slice(0, 32);
