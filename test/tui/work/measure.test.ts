import { describe, expect, test } from "vitest";
import { applyEvents } from "../../../src/work/events.ts";
import { currentPiece } from "../../../src/work/record.ts";
import { unicodeGlyphs } from "../../../tui/content/glyphs.ts";
import { plainText } from "../../../tui/content/line.ts";
import { workFrame } from "../../../tui/work/content/frame.ts";
import { sleeveAndFront, workDriver } from "./support.ts";

const at50 = applyEvents(sleeveAndFront, [{ kind: "jump", row: 50, part: 1 }]);
const measured = { lengthMm: 170 };
const told = {
  status: "measured",
  headline: ["ends at 38.1 cm", "planned 36 cm"],
  lines: ["A row is 3.40 mm (within 0.09), planned 3.23 mm."],
} as const;

const typedLength = (size = { columns: 80, rows: 24 }) => {
  const work = workDriver({ record: at50, terminal: size });
  work.press("m", ..."17", "space", ..."cm", "enter", "enter");
  return work;
};

const shown = (work: ReturnType<typeof workDriver>): string =>
  workFrame(work.state(), unicodeGlyphs).map(plainText).join("\n");

describe("measuring at the machine", () => {
  test("asks for the length and the width, and reckons elsewhere", () => {
    const work = typedLength();
    expect(work.state().screen).toEqual({ kind: "reckoning", measured, refits: false });
    expect(work.effects).toEqual(["reckon"]);
    expect(shown(work)).toContain("Reckoning ...");
    expect(work.events).toEqual([]);
  });

  test("says that a unit is missing, that a length is above 0, and that one of the two is needed", () => {
    const work = workDriver({ record: at50 });
    work.press("m", ..."17", "enter");
    expect(work.state().message?.words).toBe(
      "a length needs its unit; expected: 17 cm, or another of mm, cm, m or in.",
    );
    work.press("ctrl-u", ..."0cm", "enter");
    expect(work.state().message?.words).toBe("A length is above 0.");
    work.press("ctrl-u", "enter", "enter");
    expect(work.state().message?.words).toBe("Neither a length nor a width is given; Esc leaves it.");
    work.press(..."22cm", "enter");
    expect(work.state().screen).toMatchObject({ kind: "reckoning", measured: { widthMm: 220 } });
  });

  test.each([
    { columns: 80, rows: 24 },
    { columns: 140, rows: 45 },
  ])("shows where the piece ends and what can be done, at $columns by $rows", (size) => {
    const work = typedLength(size);
    work.send({ kind: "reckoned", answer: told });
    for (const words of [told.lines[0], "r    fit the rest anew", "k    keep the sheet", "Esc  leave all"])
      expect(shown(work)).toContain(words);
    expect(shown(work)).toMatch(/[█▀▄]/);
  });

  test("keeps the measurement with the sheet as it is, or nothing", () => {
    const work = typedLength();
    work.send({ kind: "reckoned", answer: told });
    work.press("k");
    expect(work.events).toEqual([{ kind: "measure", measured }]);
    const left = typedLength();
    left.send({ kind: "reckoned", answer: told });
    left.press("escape");
    expect(left.state().screen).toEqual({ kind: "main" });
    expect(left.events).toEqual([]);
  });

  test("follows a refit only once Enter says so", () => {
    const work = typedLength();
    work.send({ kind: "reckoned", answer: told });
    work.press("r");
    const { sheet } = currentPiece(at50);
    work.send({
      kind: "reckoned",
      answer: { status: "refitted", headline: [], lines: ["What changes: x."], sheet },
    });
    expect(shown(work)).toContain("What changes: x.");
    expect(work.events).toEqual([]);
    work.press("enter");
    expect(work.events).toEqual([{ kind: "measure", measured, sheet }]);
    expect(work.state().screen).toEqual({ kind: "main" });
  });

  test("gives a reckoning up, and an answer that comes late changes nothing", () => {
    const work = typedLength();
    work.press("escape");
    expect(work.effects).toEqual(["reckon", "give up"]);
    work.send({ kind: "reckoned", answer: told });
    expect(work.state().screen).toEqual({ kind: "main" });
  });

  test("says what stands in the way, and what is no measurement", () => {
    const work = typedLength();
    work.send({
      kind: "reckoned",
      answer: { status: "no refit", lines: ["These rules cannot all be kept."] },
    });
    expect(shown(work)).toContain("These rules cannot all be kept.");
    const refused = typedLength();
    refused.send({ kind: "reckoned", answer: { status: "refused", lines: ["Check the row."] } });
    expect(shown(refused)).toContain("Check the row.");
    refused.press("escape");
    expect(refused.state().screen).toEqual({ kind: "main" });
  });
});
