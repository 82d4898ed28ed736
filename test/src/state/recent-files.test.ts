import { mkdtemp, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { recentFiles, rememberRecent } from "../../../src/state/recent-files.ts";

let top: string;
let folder: string;

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), "evenrow-recent-"));
  folder = join(top, "state", "evenrow");
});

afterEach(() => rm(top, { recursive: true, force: true }));

const garment = async (name: string): Promise<string> => {
  const file = join(top, name);
  await writeFile(file, "");
  return file;
};

describe("recent files", () => {
  it("are none at first", async () => {
    expect(await recentFiles(folder)).toEqual([]);
  });

  it("come back the most recent first, each once", async () => {
    const [a, b] = [await garment("a.yaml"), await garment("b.yaml")];
    for (const file of [a, b, a]) expect(await rememberRecent(folder, file)).toEqual({ status: "kept" });
    expect(await recentFiles(folder)).toEqual([a, b]);
  });

  it("are in the order of the asking, also without waiting", async () => {
    const files = await Promise.all(["a", "b", "c"].map(garment));
    await Promise.all(files.map((file) => rememberRecent(folder, file)));
    expect(await recentFiles(folder)).toEqual([...files].reverse());
  });

  it("are at most 20", async () => {
    const files = await Promise.all(Array.from({ length: 23 }, (_, index) => garment(`${index}.yaml`)));
    for (const file of files) await rememberRecent(folder, file);
    expect(await recentFiles(folder)).toEqual(files.slice(3).reverse());
  });

  it("leave out what is not there any more, until it is there again", async () => {
    const [a, b] = [await garment("a.yaml"), await garment("b.yaml")];
    await rememberRecent(folder, a);
    await rememberRecent(folder, b);
    await rm(b);
    expect(await recentFiles(folder)).toEqual([a]);
    await garment("b.yaml");
    expect(await recentFiles(folder)).toEqual([b, a]);
  });

  it("are for nobody else to read", async () => {
    await rememberRecent(folder, await garment("a.yaml"));
    expect((await stat(folder)).mode & 0o777).toBe(0o700);
    expect((await stat(join(folder, "recent.json"))).mode & 0o777).toBe(0o600);
  });

  it.each(["", "{", "[]", '{"files":3}', '{"files":[1,null]}'])(
    "begin anew where the list reads %j",
    async (text) => {
      const a = await garment("a.yaml");
      await rememberRecent(folder, a);
      await writeFile(join(folder, "recent.json"), text);
      expect(await recentFiles(folder)).toEqual([]);
      await rememberRecent(folder, a);
      expect(await recentFiles(folder)).toEqual([a]);
    },
  );

  it("say why they cannot be kept", async () => {
    const blocked = join(await garment("file"), "evenrow");
    expect(await rememberRecent(blocked, "a.yaml")).toEqual({
      status: "failed",
      reason: "part of the path is a file, not a folder",
    });
    expect(await recentFiles(blocked)).toEqual([]);
  });
});
