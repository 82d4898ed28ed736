import * as nodeFiles from "node:fs";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Files } from "../../../src/state/durable.ts";
import { keptWork, type WorkPlace, workPlace } from "../../../src/state/work-place.ts";
import { startWork, type WorkSession } from "../../../src/state/work-session.ts";
import { applyEvents, type WorkEvent } from "../../../src/work/events.ts";
import type { WorkRecord } from "../../../src/work/record.ts";
import { anyEvents, twoPieces } from "../work/support/records.ts";

const start = await twoPieces();
let top: string;
let place: WorkPlace;

beforeEach(async () => {
  top = mkdtempSync(join(tmpdir(), "evenrow-work-"));
  writeFileSync(join(top, "sleeve.yaml"), "");
  place = await workPlace(join(top, "state"), join(top, "sleeve.yaml"));
});
afterEach(() => rmSync(top, { recursive: true }));

function open(files?: Files, takeOver = false): WorkSession {
  const starting = startWork(place, takeOver, files);
  if (starting.status !== "open") throw new Error(JSON.stringify(starting));
  return starting.session;
}

const record = (): WorkRecord => {
  const kept = keptWork(place);
  if (kept.status !== "kept") throw new Error(kept.status);
  return kept.record;
};

const next: WorkEvent = { kind: "next" };
const kept = { status: "kept" };

/** A disk that takes only so many bytes more, or that refuses one kind of call from some time on. */
function failingFiles(): Files & { room: number; refused: string } {
  const failing = {
    ...nodeFiles,
    room: Number.POSITIVE_INFINITY,
    refused: "",
    writeSync(
      descriptor: number,
      bytes: Uint8Array,
      offset: number,
      length: number,
      position: number,
    ): number {
      const fits = Math.min(length, failing.room);
      if (fits <= 0) throw Object.assign(new Error("ENOSPC"), { code: "ENOSPC" });
      failing.room -= fits;
      return nodeFiles.writeSync(descriptor, bytes, offset, fits, position);
    },
  };
  const { fdatasyncSync, fsyncSync, ftruncateSync, renameSync, openSync } = nodeFiles;
  for (const [name, usual] of Object.entries({
    fdatasyncSync,
    fsyncSync,
    ftruncateSync,
    renameSync,
    openSync,
  }))
    Object.assign(failing, {
      [name](...args: readonly unknown[]) {
        if (failing.refused.includes(name)) throw Object.assign(new Error("EIO"), { code: "EIO" });
        return (usual as (...all: readonly unknown[]) => unknown)(...args);
      },
    });
  return failing as never;
}

describe("the work on a garment", () => {
  it("is none at first, and afterwards what was kept last, across many runs", () => {
    expect(keptWork(place)).toEqual({ status: "none" });
    fc.assert(
      fc.property(fc.array(anyEvents, { maxLength: 4 }), (runs) => {
        rmSync(place.folder, { recursive: true, force: true });
        let now = start;
        for (const events of runs) {
          const session = open();
          for (const event of events) {
            expect(session.keep(now, [event])).toEqual(kept);
            now = applyEvents(now, [event]);
          }
          session.close();
          if (events.length > 0) expect(record()).toEqual(now);
        }
      }),
      { seed: 20261125, numRuns: 25 },
    );
  });

  it("cut off at any byte is a place at which it was", () => {
    const session = open();
    const places: WorkRecord[] = [start];
    session.keep(start, []);
    const events: readonly WorkEvent[] = [
      next,
      next,
      { kind: "note", text: "dropped ü" },
      { kind: "choose", piece: "front" },
      next,
      { kind: "back" },
      { kind: "mistake" },
    ];
    const headLength = readFileSync(place.journal).length;
    for (const event of events) {
      session.keep(places.at(-1)!, [event]);
      places.push(applyEvents(places.at(-1)!, [event]));
    }
    session.close();
    const bytes = readFileSync(place.journal);
    for (let length = headLength; length <= bytes.length; length++) {
      writeFileSync(place.journal, bytes.subarray(0, length));
      const lines = bytes.subarray(0, length).filter((byte) => byte === 0x0a).length;
      expect(record()).toEqual(places[lines - 1]);
    }
  });

  it("is for nobody else to read", () => {
    open().keep(start, [next]);
    expect(nodeFiles.statSync(place.folder).mode & 0o777).toBe(0o700);
    for (const name of readdirSync(place.folder))
      expect(nodeFiles.statSync(join(place.folder, name)).mode & 0o777).toBe(0o600);
  });

  it("is held by one copy at a time; taken over it is lost to the first, which then writes nothing", () => {
    const first = open();
    first.keep(start, [next]);
    expect(startWork(place, false)).toMatchObject({ status: "held", owner: { pid: process.pid } });
    const second = open(undefined, true);
    const now = record();
    expect(second.keep(now, [next])).toEqual(kept);
    const bytes = readFileSync(place.journal);
    expect(first.keep(now, [{ kind: "back" }])).toEqual({ status: "lost" });
    expect(readFileSync(place.journal)).toEqual(bytes);
    first.close();
    expect(second.keep(applyEvents(now, [next]), [next])).toEqual(kept);
    expect(record()).toEqual(applyEvents(start, [next, next, next]));
  });

  it("that another copy takes over in the middle of a step is not said to be kept", () => {
    let second: WorkSession | undefined;
    const files: Files = {
      ...nodeFiles,
      fdatasyncSync(descriptor) {
        nodeFiles.fdatasyncSync(descriptor);
        second = open(undefined, true);
      },
    };
    const first = open(files);
    first.keep(start, [next]);
    expect(first.keep(applyEvents(start, [next]), [next])).toEqual({ status: "lost" });
    expect(second!.keep(record(), [next])).toEqual(kept);
  });

  it("that was written but never settled was not shown, unless the power was lost since", () => {
    const session = open();
    session.keep(start, [next]);
    session.keep(applyEvents(start, [next]), [next]);
    session.close();
    const text = readFileSync(place.journal, "utf8");
    const sign = text.lastIndexOf("\n", text.length - 2) + 1 + 16;
    writeFileSync(place.journal, `${text.slice(0, sign)}?${text.slice(sign + 1)}`);
    const isOtherRun = !existsSync("/proc/sys/kernel/random/boot_id");
    expect(record()).toEqual(applyEvents(start, isOtherRun ? [next, next] : [next]));
  });

  it("goes on whole where its files are taken away meanwhile", () => {
    const session = open();
    session.keep(start, [next]);
    rmSync(place.journal);
    expect(session.keep(applyEvents(start, [next]), [next])).toEqual(kept);
    expect(record()).toEqual(applyEvents(start, [next, next]));
  });

  it("that cannot be read is told, and not begun anew", () => {
    const session = open();
    session.keep(start, [next]);
    session.close();
    writeFileSync(place.journal, "nothing of ours\n");
    expect(keptWork(place)).toEqual({
      status: "unreadable",
      reason: "its beginning is damaged or of another version",
    });
  });

  it("says why it cannot be kept where there is no folder for it", async () => {
    for (const folder of [join(top, "sleeve.yaml", "state"), "/proc/evenrow"]) {
      place = await workPlace(folder, join(top, "sleeve.yaml"));
      expect(startWork(place, false)).toMatchObject({ status: "failed", reason: expect.any(String) });
    }
  });
});

describe("a disk that refuses", () => {
  it("leaves the old place whole wherever it becomes full, and goes on once there is room", () => {
    const files = failingFiles();
    let now = start;
    const session = open(files);
    expect(session.keep(now, [next])).toEqual(kept);
    now = applyEvents(now, [next]);
    for (let room = 0; room < 60; room++) {
      files.room = room;
      const outcome = session.keep(now, [next]);
      if (outcome.status === "kept") now = applyEvents(now, [next]);
      else expect(outcome).toEqual({ status: "failed", reason: "the disk is full" });
      expect(record()).toEqual(now);
      files.room = Number.POSITIVE_INFINITY;
      if (room % 7 === 0) {
        expect(session.keep(now, [next])).toEqual(kept);
        now = applyEvents(now, [next]);
        expect(record()).toEqual(now);
      }
    }
    session.close();
    expect(readdirSync(place.folder)).toHaveLength(1);
  });

  it.each([
    "fdatasyncSync fsyncSync",
    "fsyncSync renameSync",
    "fdatasyncSync openSync",
    "fdatasyncSync renameSync",
  ])("by %s leaves the old place whole", (refused) => {
    const files = failingFiles();
    const session = open(files);
    session.keep(start, [next]);
    const now = applyEvents(start, [next]);
    files.refused = refused.includes("fdatasyncSync") ? refused : `${refused} fdatasyncSync`;
    for (let time = 0; time < 3; time++) {
      const outcome = session.keep(now, [next]);
      if (outcome.status === "kept") throw new Error("nothing could be kept");
      expect(record()).toEqual(now);
    }
    files.refused = "";
    expect(session.keep(now, [next])).toEqual(kept);
    expect(record()).toEqual(applyEvents(now, [next]));
    session.close();
    expect(existsSync(place.lock)).toBe(false);
  });
});

it("each size of a file is work of its own", async () => {
  const file = join(top, "sleeve.yaml");
  const places = await Promise.all(
    [undefined, "S", "M"].map((size) => workPlace(join(top, "state"), file, size)),
  );
  expect(new Set(places.map(({ journal }) => journal)).size).toBe(3);
  expect(new Set(places.map(({ lock }) => lock)).size).toBe(3);
  expect(places.map(({ size }) => size)).toEqual([undefined, "S", "M"]);
  place = places[1]!;
  const session = open();
  session.close();
  expect(keptWork(places[2]!).status).toBe("none");
});
