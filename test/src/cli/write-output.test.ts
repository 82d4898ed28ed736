import { execFileSync, spawn } from "node:child_process";
import {
  chmodSync,
  chownSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, test } from "vitest";
import { writeOutput } from "../../../src/cli/write-output.ts";
import { smallDisk } from "../../support/small-disk.ts";

const asRoot = process.getuid?.() === 0;

let folder: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-output-"));
  file = join(folder, "out.txt");
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** What is said where nothing is written; undefined where it was. */
const refusal = (name: string, force = false): Promise<string | undefined> =>
  writeOutput(name, "new\n", force).then(
    () => undefined,
    (error: Error) => error.message,
  );

const exists = (name: string): string =>
  `${name} exists already and was left as it is. To overwrite it, add --force.`;

describe("a file that is not there", () => {
  test("is made as a whole, and nothing else is left behind", async () => {
    expect(await refusal(file)).toBeUndefined();
    expect(readFileSync(file, "utf8")).toBe("new\n");
    expect(readdirSync(folder)).toEqual(["out.txt"]);
  });

  test("is not made where its folder is missing, or is a file", async () => {
    expect(await refusal(join(folder, "missing", "out.txt"))).toContain("there is no such file or folder");
    writeFileSync(file, "mine");
    expect(await refusal(join(file, "out.txt"))).toContain("part of the path is a file, not a folder");
  });

  test("is made where a link leads, and the link stays", async () => {
    mkdirSync(join(folder, "sheets"));
    symlinkSync("sheets/out.txt", file);
    expect(await refusal(file)).toBeUndefined();
    expect(readlinkSync(file)).toBe("sheets/out.txt");
    expect(readFileSync(join(folder, "sheets/out.txt"), "utf8")).toBe("new\n");
    expect(readdirSync(join(folder, "sheets"))).toEqual(["out.txt"]);
  });

  test("is not made where links lead in a circle, which stay as they are", async () => {
    symlinkSync("other.txt", file);
    symlinkSync("out.txt", join(folder, "other.txt"));
    for (const force of [false, true])
      expect(await refusal(file, force)).toContain("the links lead in a circle");
    expect(readlinkSync(file)).toBe("other.txt");
  });

  test("is made by one of several that make it at once, and the others leave it", async () => {
    const many = await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        writeOutput(file, `${index}\n`.repeat(5000), false).then(
          () => index,
          () => undefined,
        ),
      ),
    );
    const [first, ...others] = many.filter((index) => index !== undefined);
    expect(others).toEqual([]);
    expect(readFileSync(file, "utf8")).toBe(`${first}\n`.repeat(5000));
    expect(readdirSync(folder)).toEqual(["out.txt"]);
  });
});

test("of several programs that make one file at once, one does and the others say that it is there", async () => {
  const run = (): Promise<number | null> =>
    new Promise((done) => {
      const words = ["dist/evenrow.js", "check", "samples/sleeve.yaml", "--json", "-o", file];
      spawn(process.execPath, words, { stdio: "ignore" }).on("close", done);
    });
  expect((await Promise.all([run(), run(), run()])).sort()).toEqual([0, 2, 2]);
  expect(JSON.parse(readFileSync(file, "utf8"))).toMatchObject({ sound: true });
  expect(readdirSync(folder)).toEqual(["out.txt"]);
});

describe("a file that is there", () => {
  beforeEach(() => writeFileSync(file, "mine\n"));

  test("is left as it is, whoever wrote it, and overwritten where that is asked for", async () => {
    expect(await refusal(file)).toBe(exists(file));
    expect(readFileSync(file, "utf8")).toBe("mine\n");
    expect(await refusal(file, true)).toBeUndefined();
    expect(readFileSync(file, "utf8")).toBe("new\n");
    expect(await refusal(file)).toBe(exists(file));
  });

  test("keeps its permissions", async () => {
    for (const mode of [0o600, 0o640, 0o777]) {
      chmodSync(file, mode);
      await writeOutput(file, "new\n", true);
      expect(statSync(file).mode & 0o777).toBe(mode);
    }
  });

  test.skipIf(!asRoot)("keeps its owner where that is allowed", async () => {
    chownSync(file, 12345, 12346);
    await writeOutput(file, "new\n", true);
    expect(statSync(file)).toMatchObject({ uid: 12345, gid: 12346 });
  });

  test("is overwritten through a link, which stays one", async () => {
    const link = join(folder, "link.txt");
    symlinkSync("out.txt", link);
    expect(await refusal(link)).toBe(exists(link));
    expect(await refusal(link, true)).toBeUndefined();
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(file, "utf8")).toBe("new\n");
  });

  test("is not overwritten where it is marked as one that must not be", async () => {
    chmodSync(file, 0o444);
    expect(await refusal(file, true)).toContain("must not be written");
    expect(readFileSync(file, "utf8")).toBe("mine\n");
  });

  test("is never half of one and half of another that is written at once", async () => {
    const texts = Array.from({ length: 20 }, (_, index) => `${index}\n`.repeat(20_000));
    await Promise.all(texts.map((text) => writeOutput(file, text, true)));
    expect(texts).toContain(readFileSync(file, "utf8"));
    expect(readdirSync(folder)).toEqual(["out.txt"]);
  });
});

describe("what is no file", () => {
  test("a folder is told to be one, with and without --force", async () => {
    mkdirSync(file);
    for (const force of [false, true])
      expect(await refusal(file, force)).toContain("this is a folder, not a file");
    expect(statSync(file).isDirectory()).toBe(true);
  });

  test("a pipe is written to, and stays one", async () => {
    execFileSync("mkfifo", [file]);
    const reader = spawn("cat", [file]);
    let heard = "";
    reader.stdout.on("data", (data) => {
      heard += String(data);
    });
    const ended = new Promise((resolve) => reader.on("close", resolve));
    expect(await refusal(file)).toBeUndefined();
    await ended;
    expect(heard).toBe("new\n");
    expect(lstatSync(file).isFIFO()).toBe(true);
  });
});

describe("a disk", () => {
  test.skipIf(process.platform !== "linux")(
    "that can only be read, or makes no files, is told to be one",
    async () => {
      expect(await refusal("/proc/evenrow.txt")).toMatch(/^\/proc\/evenrow.txt: /);
      expect(await refusal("/sys/evenrow.txt")).toMatch(/you are not allowed|can only be read/);
    },
  );

  test("that takes no larger file leaves the old one whole and nothing behind", () => {
    writeFileSync(file, "mine\n");
    const words = [process.execPath, "dist/evenrow.js", "model", "samples/sleeve.yaml", "-o"];
    // At most 1 block of 1024 bytes can be written.
    const run = (name: string, ...more: string[]): string => {
      const [command, ...rest] = [...words, name, ...more];
      const script = 'ulimit -f 1; "$0" "$@" 2>&1; echo "ended $?"';
      return execFileSync("bash", ["-c", script, command!, ...rest], { encoding: "utf8" });
    };
    const told = run(file, "--force");
    expect(told).toContain("a file may not become so large here");
    expect(told).toContain("ended 2");
    expect(run(join(folder, "other.txt"))).toContain("ended 2");
    expect(readFileSync(file, "utf8")).toBe("mine\n");
    expect(readdirSync(folder)).toEqual(["out.txt"]);
  });

  const small = smallDisk();
  afterAll(() => small?.remove());

  test.skipIf(!small)("that is full leaves the old file whole and nothing behind", async () => {
    const [old, other] = [join(small!.at, "out.txt"), join(small!.at, "other.txt")];
    writeFileSync(old, "mine\n");
    const large = "row\n".repeat(100_000);
    await expect(writeOutput(old, large, true)).rejects.toThrow("the disk is full");
    await expect(writeOutput(other, large, false)).rejects.toThrow("the disk is full");
    expect(readFileSync(old, "utf8")).toBe("mine\n");
    expect(readdirSync(small!.at)).toEqual(["out.txt"]);
  });
});

describe("a folder that must not be written", () => {
  // Root may write everywhere, so the program is run as somebody else then.
  const somebody = asRoot ? { uid: 65_534, gid: 65_534 } : {};

  test("is told to be one, and keeps what is in it", () => {
    writeFileSync(file, "mine\n");
    chmodSync(folder, 0o555);
    const run = (...words: string[]) => {
      try {
        return execFileSync(process.execPath, ["dist/evenrow.js", "check", "samples/sleeve.yaml", ...words], {
          encoding: "utf8",
          stdio: ["ignore", "pipe", "pipe"],
          ...somebody,
        });
      } catch (error) {
        return String((error as { stderr: string }).stderr);
      }
    };
    expect(run("-o", file, "--force")).toMatch(/not allowed|must not be written/);
    expect(run("-o", join(folder, "other.txt"))).toContain("you are not allowed to read or write it");
    expect(readFileSync(file, "utf8")).toBe("mine\n");
    expect(readdirSync(folder)).toEqual(["out.txt"]);
    chmodSync(folder, 0o755);
  });
});
