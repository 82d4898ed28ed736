import { mkdir, mkdtemp, readdir, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { forgetUnsaved, rememberUnsaved, unsavedFor } from "../../../src/state/unsaved.ts";

let top: string;
let folder: string;
let file: string;

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), "evenrow-unsaved-"));
  folder = join(top, "state");
  file = join(top, "sleeve.yaml");
  await writeFile(file, "a: 1\n");
});

afterEach(() => rm(top, { recursive: true, force: true }));

describe("unsaved changes", () => {
  it("are none at first", async () => {
    expect(await unsavedFor(folder, file)).toBeUndefined();
    expect(await forgetUnsaved(folder, file)).toEqual({ status: "kept" });
  });

  it("come back as they were kept last", async () => {
    expect(await rememberUnsaved(folder, file, "a: 1\n", "a: 2\n")).toEqual({ status: "kept" });
    await rememberUnsaved(folder, file, "a: 1\n", "a: ü 🧶\r\n");
    expect(await unsavedFor(folder, file)).toMatchObject({
      file,
      baseText: "a: 1\n",
      currentText: "a: ü 🧶\r\n",
    });
  });

  it("are each file's own, however its path is written", async () => {
    await mkdir(join(top, "b"));
    await symlink(join("..", "sleeve.yaml"), join(top, "b", "link.yaml"));
    await rememberUnsaved(folder, join(top, "b", "link.yaml"), "", "linked");
    await rememberUnsaved(folder, join(top, "b", "sleeve.yaml"), "", "other");
    expect((await unsavedFor(folder, file))?.currentText).toBe("linked");
    expect((await unsavedFor(folder, relative(process.cwd(), file)))?.currentText).toBe("linked");
    expect((await unsavedFor(folder, join(top, "b", "sleeve.yaml")))?.currentText).toBe("other");
  });

  it("are found again where the file is gone", async () => {
    await rememberUnsaved(folder, file, "a: 1\n", "a: 2\n");
    await rm(file);
    expect((await unsavedFor(folder, file))?.currentText).toBe("a: 2\n");
  });

  it("are forgotten for good, also when forgotten while they are being kept", async () => {
    const keeping = rememberUnsaved(folder, file, "a: 1\n", "a: 2\n");
    const forgetting = forgetUnsaved(folder, file);
    expect([await keeping, await forgetting]).toEqual([{ status: "kept" }, { status: "kept" }]);
    expect(await unsavedFor(folder, file)).toBeUndefined();
  });

  it("are none where the journal is damaged", async () => {
    await rememberUnsaved(folder, file, "a: 1\n", "a: 2\n");
    const [journal] = await readdir(join(folder, "unsaved"));
    for (const text of ["", "{", "{}", '{"file":1}', "null"]) {
      await writeFile(join(folder, "unsaved", journal!), text);
      expect(await unsavedFor(folder, file)).toBeUndefined();
    }
  });

  it("are not taken from a half-written journal beside the whole one", async () => {
    await rememberUnsaved(folder, file, "a: 1\n", "a: 2\n");
    const [journal] = await readdir(join(folder, "unsaved"));
    await writeFile(join(folder, "unsaved", `${journal}.12345`), '{"file":');
    expect((await unsavedFor(folder, file))?.currentText).toBe("a: 2\n");
  });

  it("say why they cannot be kept", async () => {
    expect(await rememberUnsaved(join(file, "state"), file, "", "")).toEqual({
      status: "failed",
      reason: "part of the path is a file, not a folder",
    });
    expect(await unsavedFor(join(file, "state"), file)).toBeUndefined();
  });
});
