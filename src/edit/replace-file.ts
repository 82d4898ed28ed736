import { constants } from "node:fs";
import { copyFile, link, open, rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { errorCode } from "./file-reason.ts";

/**
 * Puts a text or bytes in a file's place as a whole or not at all; they are on the disk once it returns. Permissions stay
 * as they are, and the owner where the system allows that. What the system says is thrown.
 *
 * The library write-file-atomic is not used: 7.0.1 takes a write that a full disk cut short for a whole one, and puts what
 * there was room for in the file's place.
 *
 * @param file no symbolic link: that would be replaced by the file
 * @param mode of a file that is not there yet
 */
export async function replaceFile(file: string, content: string | Uint8Array, mode?: number): Promise<void> {
  await withAside(file, content, mode ?? NEW_FILE, async (aside) => {
    await likeBefore(file, aside);
    await rename(aside, file);
  });
}

/** Makes a file in the same manner; where one is there by then it is left as it is, and EEXIST is thrown. */
export async function createFile(file: string, content: string | Uint8Array): Promise<void> {
  await withAside(file, content, NEW_FILE, async (aside) => {
    try {
      await link(aside, file);
    } catch (error) {
      if (errorCode(error) === "EEXIST") throw error;
      // A disk without hard links, such as a memory card.
      await copyFile(aside, file, constants.COPYFILE_EXCL);
    }
  });
}

/** As any program makes files: what of it the knitter's own mask leaves. */
const NEW_FILE = 0o666;

/** The content is written beside the file first, under a name that is nobody's, and synced. */
async function withAside(
  file: string,
  content: string | Uint8Array,
  mode: number,
  place: (aside: string) => Promise<void>,
): Promise<void> {
  const aside = join(dirname(file), `.evenrow-${crypto.randomUUID()}.new`);
  try {
    const handle = await open(aside, "wx", mode);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await place(aside);
    await syncFolder(dirname(file));
  } finally {
    await rm(aside, { force: true });
  }
}

/** Gives a file the permissions and the owner of one that it is to replace; root alone may give files away. */
async function likeBefore(file: string, aside: string): Promise<void> {
  const handle = await open(aside, "r");
  try {
    const before = await stat(file);
    const made = await handle.stat();
    if (before.uid !== made.uid || before.gid !== made.gid)
      await handle.chown(before.uid, before.gid).catch((error: unknown) => {
        if (!["EPERM", "EINVAL", "ENOSYS", "ENOTSUP"].includes(errorCode(error))) throw error;
      });
    if ((before.mode & ALL_BITS) !== (made.mode & ALL_BITS)) await handle.chmod(before.mode & ALL_BITS);
  } catch (error) {
    if (errorCode(error) !== "ENOENT") throw error;
  } finally {
    await handle.close();
  }
}

const ALL_BITS = 0o7777;

/** That a file has its new name is on the disk only once its folder is (fsync(2), Linux man-pages). */
async function syncFolder(folder: string): Promise<void> {
  // A system that cannot open or sync folders does so by itself or not at all, and the file is in its place already.
  const handle = await open(folder, "r").catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
