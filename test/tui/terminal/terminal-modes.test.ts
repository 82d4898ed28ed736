import { writeSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { createTerminalModes } from "../../../tui/terminal/terminal-modes.ts";

vi.mock("node:fs", async (original) => ({ ...(await original<object>()), writeSync: vi.fn() }));

const terminal = { fd: 1 } as NodeJS.WriteStream & { fd: number };

/** What reaches a terminal that takes so many bytes at a time, or is busy (null), or is gone (undefined). */
function reaching(takes: readonly (number | null | undefined)[], use: () => void): string {
  let reached = "";
  let turn = 0;
  vi.mocked(writeSync).mockImplementation((_, bytes) => {
    const most = takes[turn++ % takes.length];
    if (most === undefined) throw Object.assign(new Error(), { code: "EIO" });
    if (most === null) throw Object.assign(new Error(), { code: "EAGAIN" });
    const taken = (bytes as unknown as Uint8Array).subarray(0, most);
    reached += new TextDecoder().decode(taken);
    return taken.length;
  });
  use();
  return reached;
}

const leave = "\u001b[0m\u001b[?25h\u001b[?1049l";

test("the terminal is given back once, also where it is busy or takes a few bytes at a time", () => {
  const modes = createTerminalModes(terminal, true);
  reaching([1000], modes.take);
  expect(reaching([null, 3, null, null, 5], modes.giveBack)).toBe(leave);
  expect(reaching([1000], modes.giveBack)).toBe("");
});

test("a terminal that is gone is let go", () => {
  const modes = createTerminalModes(terminal, true);
  reaching([1000], modes.take);
  expect(reaching([undefined], modes.giveBack)).toBe("");
});
