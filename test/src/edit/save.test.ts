import { chmod, mkdtemp, readdir, readFile, readlink, rm, stat, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { openForEditing } from "../../../src/edit/open.ts";
import { saveFile } from "../../../src/edit/save.ts";
import { smallDisk } from "../../support/small-disk.ts";

let folder: string;
let file: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "evenrow-save-"));
  file = join(folder, "sleeve.yaml");
  await writeFile(file, "a: 1\n");
});

afterEach(() => rm(folder, { recursive: true, force: true }));

describe("saveFile", () => {
  it("writes what is on disk as was read, and leaves nothing else behind", async () => {
    expect(await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" })).toEqual({ status: "saved" });
    expect(await readFile(file, "utf8")).toBe("a: 2\n");
    expect(await readdir(folder)).toEqual(["sleeve.yaml"]);
  });

  it("does not write over another program's change, and hands it on", async () => {
    await writeFile(file, "a: 7\n");
    expect(await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" })).toEqual({
      status: "changed on disk",
      diskText: "a: 7\n",
    });
    expect(await readFile(file, "utf8")).toBe("a: 7\n");
  });

  it("sees a change of nothing but line breaks", async () => {
    await writeFile(file, "a: 1\r\n");
    expect(await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" })).toMatchObject({
      status: "changed on disk",
    });
  });

  it("follows a symbolic link and leaves it one", async () => {
    const link = join(folder, "link.yaml");
    await symlink("sleeve.yaml", link);
    expect(await saveFile({ file: link, text: "a: 2\n", expected: "a: 1\n" })).toEqual({ status: "saved" });
    expect(await readlink(link)).toBe("sleeve.yaml");
    expect(await readFile(file, "utf8")).toBe("a: 2\n");
  });

  it("says where links lead in a circle", async () => {
    const link = join(folder, "round.yaml");
    await symlink("round.yaml", link);
    expect(await saveFile({ file: link, text: "", expected: "" })).toEqual({
      status: "failed",
      reason: "the links lead in a circle",
    });
  });

  const small = smallDisk();
  afterAll(() => small?.remove());

  it.skipIf(!small)("keeps the old text whole where the disk is full", async () => {
    const there = join(small!.at, "sleeve.yaml");
    const before = "a: 1\n".repeat(8000);
    await writeFile(there, before);
    const text = "a: 2\n".repeat(8000);
    expect(await saveFile({ file: there, text, expected: before })).toEqual({
      status: "failed",
      reason: "the disk is full",
    });
    expect(await readFile(there, "utf8")).toBe(before);
    expect(await readdir(small!.at)).toEqual(["sleeve.yaml"]);
  });

  it("keeps permissions", async () => {
    await chmod(file, 0o640);
    await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" });
    expect((await stat(file)).mode & 0o777).toBe(0o640);
  });

  it("leaves a write-protected file alone", async () => {
    await chmod(file, 0o444);
    expect(await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" })).toEqual({
      status: "failed",
      reason: "the file is marked as one that must not be written",
    });
    expect(await readFile(file, "utf8")).toBe("a: 1\n");
  });

  it("makes a new file where none is expected, and only there", async () => {
    const fresh = join(folder, "new.yaml");
    expect(await saveFile({ file: fresh, text: "b: 1\n", expected: null })).toEqual({ status: "saved" });
    expect(await saveFile({ file: fresh, text: "c: 1\n", expected: null })).toEqual({
      status: "changed on disk",
      diskText: "b: 1\n",
    });
  });

  it("says that a file is gone", async () => {
    await rm(file);
    expect(await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" })).toEqual({
      status: "failed",
      reason: "the file is no longer there",
    });
  });

  it("says that a folder is gone", async () => {
    const lost = join(folder, "lost", "sleeve.yaml");
    expect(await saveFile({ file: lost, text: "a: 2\n", expected: null })).toEqual({
      status: "failed",
      reason: "there is no such file or folder any more",
    });
  });

  it.each([
    ["ENOSPC", "the disk is full"],
    ["EACCES", "you are not allowed to write there"],
    ["EROFS", "this disk can only be read"],
    ["EIO", "the disk reports a fault"],
    ["ENXIO", "it cannot be read or written (ENXIO)"],
  ])("puts %s into plain words and leaves the file as it was", async (code, reason) => {
    const refusing = () => Promise.reject(Object.assign(new Error(code), { code }));
    const outcome = await saveFile({ file, text: "a: 2\n", expected: "a: 1\n" }, refusing);
    expect(outcome).toEqual({ status: "failed", reason });
    expect(await readFile(file, "utf8")).toBe("a: 1\n");
  });

  it("saves what was opened, byte order mark and all, as it was", async () => {
    await writeFile(file, "\ufeffa: ü\r\n");
    const opened = await openForEditing(file);
    if (opened.status !== "read") throw new Error(opened.reason);
    expect(await saveFile({ file, text: opened.text, expected: opened.text })).toEqual({ status: "saved" });
    expect(await readFile(file)).toEqual(Buffer.from("\ufeffa: ü\r\n"));
  });
});

describe("openForEditing", () => {
  it("says why a file cannot be read", async () => {
    expect(await openForEditing(folder)).toEqual({
      status: "failed",
      reason: "this is a folder, not a file",
    });
    await writeFile(file, Buffer.from([0x61, 0xff]));
    expect(await openForEditing(file)).toEqual({
      status: "failed",
      reason: "the file is not saved as UTF-8",
    });
  });
});
