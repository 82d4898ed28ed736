import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { inTurn, readState, writeState } from "../../../src/state/kept.ts";

test("makes the folders that are missing, for their owner alone", async () => {
  const folder = mkdtempSync(join(tmpdir(), "evenrow-kept-"));
  const file = join(folder, "state", "evenrow", "one.json");
  await writeState(file, { row: 3 });
  expect(await readState(file)).toEqual({ row: 3 });
  expect(readFileSync(file, "utf8")).toBe('{"row":3}\n');
  expect(statSync(dirname(file)).mode & 0o777).toBe(0o700);
  rmSync(folder, { recursive: true });
});

test("says why where the system lets nobody make a folder, and does not try for ever", async () => {
  const kept = await inTurn("below proc", () => writeState("/proc/evenrow/deep/one.json", {}));
  expect(kept).toMatchObject({ status: "failed" });
});
