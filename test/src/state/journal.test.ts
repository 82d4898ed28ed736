import * as nodeFiles from "node:fs";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, expect, it } from "vitest";
import { beginJournal, entriesIn, type Journal, readJournal } from "../../../src/state/journal.ts";

let folder: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-journal-"));
  file = join(folder, "one.journal");
});
afterEach(() => rmSync(folder, { recursive: true }));

const begin = (first: object, files?: Parameters<typeof beginJournal>[3]): Journal =>
  beginJournal(file, first, () => true, files)!;

it("gives back what was put in, in its order", () => {
  const journal = begin({ a: "ü\n🧶" });
  journal.append([{ b: 1 }, { c: [null, ""] }]);
  journal.append([{ d: 2 }]);
  journal.close();
  expect(readJournal(file)).toEqual([{ a: "ü\n🧶" }, { b: 1 }, { c: [null, ""] }, { d: 2 }]);
  expect(readJournal(join(folder, "none"))).toBeUndefined();
});

it("cut off at any byte gives the entries whose lines are whole, and no others", () => {
  const journal = begin({ first: "ü" });
  const entries = Array.from({ length: 12 }, (_, index) => ({ index, text: "é".repeat(index) }));
  for (const entry of entries) journal.append([entry]);
  journal.close();
  const bytes = readFileSync(file);
  const all = [{ first: "ü" }, ...entries];
  for (let length = 0; length <= bytes.length; length++) {
    const cut = bytes.subarray(0, length);
    const whole = cut.filter((byte) => byte === 0x0a).length;
    expect(entriesIn(cut.toString("utf8"))).toEqual(all.slice(0, whole));
  }
});

it("ends before the first line in which a byte is another one", () => {
  const journal = begin({ first: 1 });
  for (let index = 0; index < 8; index++) journal.append([{ index }]);
  journal.close();
  const text = readFileSync(file, "latin1");
  fc.assert(
    fc.property(fc.nat(text.length - 1), fc.integer({ min: 0x20, max: 0x7e }), (at, code) => {
      const letter = String.fromCharCode(code);
      const isSign = (text.slice(0, at).split("\n").at(-1) ?? "").length === 16;
      fc.pre(text[at] !== letter && !(isSign && " ?".includes(letter)));
      const damaged = text.slice(0, at) + letter + text.slice(at + 1);
      const line = text.slice(0, at).split("\n").length - 1;
      expect(entriesIn(damaged)).toEqual(entriesIn(text).slice(0, line));
    }),
    { seed: 20261125, numRuns: 400 },
  );
});

it("tells what was settled from what was only written, and the reader says whether that counts", () => {
  const journal = begin({ first: 1 });
  journal.append([{ a: 1 }, { b: 2 }]);
  journal.settle();
  journal.append([{ c: 3 }]);
  expect(readJournal(file)).toEqual([{ first: 1 }, { a: 1 }, { b: 2 }, { c: 3 }]);
  expect(readJournal(file, () => false)).toEqual([{ first: 1 }, { a: 1 }, { b: 2 }]);
  journal.settle();
  expect(readJournal(file, () => false)).toHaveLength(4);
  journal.close();
});

it("takes no lines of another journal for its own, nor its own in another order", () => {
  const journal = begin({ first: 1 });
  journal.append([{ a: 1 }]);
  journal.append([{ b: 2 }]);
  journal.close();
  const [first, a, b] = readFileSync(file, "utf8").split("\n");
  expect(entriesIn(`${first}\n${b}\n${a}\n`)).toEqual([{ first: 1 }]);
  begin({ first: 2 }).close();
  expect(entriesIn(`${readFileSync(file, "utf8")}${a}\n`)).toEqual([{ first: 2 }]);
});

it("is not begun where it may not be, and leaves nothing behind", () => {
  writeFileSync(file, "old");
  expect(beginJournal(file, {}, () => false)).toBeUndefined();
  expect(readFileSync(file, "utf8")).toBe("old");
  expect(nodeFiles.readdirSync(folder)).toEqual(["one.journal"]);
});

it("knows whether it is the one that a reader finds", () => {
  const journal = begin({ first: 1 });
  expect(journal.isInPlace()).toBe(true);
  const other = begin({ first: 2 });
  expect([journal.isInPlace(), other.isInPlace()]).toEqual([false, true]);
  journal.append([{ late: 1 }]);
  expect(readJournal(file)).toEqual([{ first: 2 }]);
  journal.close();
  other.close();
});

const { writeSync, fdatasyncSync } = nodeFiles;
it.each(Object.entries({ writeSync, fdatasyncSync }))(
  "takes out again what %s would not keep",
  (name, call) => {
    let fails = false;
    const usual = call as (...all: readonly unknown[]) => unknown;
    const files: typeof nodeFiles = {
      ...nodeFiles,
      [name](descriptor: number, ...rest: readonly unknown[]) {
        if (!fails) return usual(descriptor, ...rest);
        fails = false;
        // Half of it is written before the disk is full.
        if (name === "writeSync") usual(descriptor, rest[0], 0, 5, rest[3]);
        throw Object.assign(new Error("no space"), { code: "ENOSPC" });
      },
    };
    const journal = begin({ first: 1 }, files);
    journal.append([{ a: 1 }]);
    const before = readFileSync(file);
    fails = true;
    expect(() => journal.append([{ b: 2 }])).toThrow("no space");
    expect(readFileSync(file)).toEqual(before);
    journal.append([{ c: 3 }]);
    expect(readJournal(file)).toEqual([{ first: 1 }, { a: 1 }, { c: 3 }]);
    journal.close();
  },
);

it("writes on where the system takes only a few bytes at a time", () => {
  const files: typeof nodeFiles = {
    ...nodeFiles,
    writeSync: ((descriptor: number, bytes: Uint8Array, offset: number, length: number, position: number) =>
      nodeFiles.writeSync(
        descriptor,
        bytes,
        offset,
        Math.min(3, length),
        position,
      )) as typeof nodeFiles.writeSync,
  };
  const journal = begin({ first: "a longer text" }, files);
  journal.append([{ second: "another one" }]);
  journal.close();
  expect(readJournal(file)).toEqual([{ first: "a longer text" }, { second: "another one" }]);
});
