import { describe, expect, it } from "vitest";
import { createStatusLine } from "../../../../src/cli/progress/status-line.ts";

function onTerminal(columns: number) {
  const written: string[] = [];
  const line = createStatusLine(
    { isTTY: true, columns, write: (text) => written.push(text) },
    { TERM: "xterm" },
  );
  return { line: line!, written };
}

describe("createStatusLine", () => {
  it("writes over the line, and takes it away once", () => {
    const { line, written } = onTerminal(80);
    line.show("one");
    line.show("two");
    line.show(undefined);
    line.show(undefined);
    expect(written).toEqual(["\r\u001b[2Kone", "\r\u001b[2Ktwo", "\r\u001b[2K"]);
  });

  it("writes nothing where there is nothing to take away", () => {
    const { line, written } = onTerminal(80);
    line.show(undefined);
    expect(written).toEqual([]);
  });

  it("stays within the terminal's width, so that the line does not wrap", () => {
    const { line, written } = onTerminal(10);
    line.show("0123456789");
    expect(written).toEqual(["\r\u001b[2K012345678"]);
  });

  it("is not there in a file or a pipe, nor on a terminal that cannot go back", () => {
    const write = () => undefined;
    expect(createStatusLine({ write }, { TERM: "xterm" })).toBeUndefined();
    expect(createStatusLine({ isTTY: true, write }, { TERM: "dumb" })).toBeUndefined();
  });
});
