import { describe, expect, it } from "vitest";
import { fileRefused, heard, opened, type Turn } from "../../../src/wizard/dialogue.ts";

const typing = (turn: Turn, lines: readonly string[]): Turn =>
  lines.reduce((before, line) => heard(before.dialogue, line), turn);

const enters = (count: number): readonly string[] => Array.from({ length: count }, () => "");

describe("the dialogue", () => {
  it("says how it goes and asks the first question", () => {
    const { lines, prompt } = opened(undefined, 80);
    expect(lines).toEqual([
      "A few questions, and then a garment file that you can change at will.",
      "Enter takes what stands in brackets; ? says more; back goes back; quit stops.",
      "",
      "1 of 26: What is the garment called?",
      "  A title for the sheet and the file, in your own words.",
    ]);
    expect(prompt).toBe("  [My garment] ");
  });

  it("says only what is wrong with an answer, and what would be right", () => {
    const turn = typing(opened(undefined, 80), ["", "28,5"]);
    expect(turn.lines).toEqual([
      "  That cannot be: the number of stitches: decimals are written with a point.",
      "  Right would be: 28.5",
    ]);
    expect(turn.prompt).toBe("  [28] ");
  });

  it("says what looks like a slip before it asks on", () => {
    const turn = typing(opened(undefined, 80), [...enters(12), "sleve"]);
    expect(turn.lines.slice(0, 2)).toEqual([
      "  Did you mean sleeve? It is called sleve now. back answers again.",
      "",
    ]);
    expect(typing(turn, ["back"]).prompt).toBe("  [sleve] ");
  });

  it("draws the piece once its length is known, and again only where it changed", () => {
    const known = typing(opened(undefined, 80), enters(16));
    expect(known.lines.join("\n")).toContain("bind-off, 43 cm");
    expect(typing(known, [""]).lines.join("\n")).not.toContain("bind-off");
    expect(typing(known, ["", ""]).lines.join("\n")).toContain("bind-off, 43 cm");
  });

  it("lists the words that a question takes", () => {
    expect(typing(opened(undefined, 80), enters(6)).lines).toContain("  cord or cable");
    expect(typing(opened(undefined, 80), enters(13)).lines).toContain("  straight, tapered or neck");
    expect(typing(opened(undefined, 80), enters(19)).lines).toContain("  cast-on, hem top or taper top");
  });

  it("never says more than a small screen holds", () => {
    let turn = opened(undefined, 80);
    while (!turn.lines.includes("Into which file should it be written?")) {
      expect(turn.lines.length).toBeLessThanOrEqual(22);
      for (const line of turn.lines) expect(line.length).toBeLessThanOrEqual(80);
      turn = heard(turn.dialogue, "");
    }
    expect(turn.prompt).toBe("  [my-garment.yaml] ");
  });

  it("asks for the file last, and goes back from there", () => {
    const named = typing(opened(undefined, 80), ["Größe 1/2!", ...enters(25)]);
    expect(named.prompt).toBe("  [große-1-2.yaml] ");
    expect(typing(named, ["back"]).lines).toContain(
      "26 of 26: Which yarn is the cloth of: its tex, or a ball's grams and metres?",
    );
    expect(typing(named, ["?"]).prompt).toBe(named.prompt);
    expect(typing(named, ["quit"]).end).toBe("quit");
    expect(typing(named, [""])).toMatchObject({ end: "write", dialogue: { file: "große-1-2.yaml" } });
    expect(typing(named, [" my own.yaml "])).toMatchObject({
      end: "write",
      dialogue: { file: "my own.yaml" },
    });
  });

  it("shows what was answered once more before it is written", () => {
    const looked = typing(opened("a.yaml", 80), ["", "28", "44 over 14.6 cm", "14 cm", ...enters(22)]);
    expect(looked.end).toBeUndefined();
    expect(looked.lines).toContain(
      "  28 stitches over 14 cm, 44 rows over 14.6 cm; 200 needles, 4.5 mm apart",
    );
    expect(looked.lines.at(-1)).toBe("Is that right, to be written into a.yaml?");
    expect(looked.prompt).toBe("  [yes] ");
    expect(typing(looked, ["maybe"])).toMatchObject({ prompt: "  [yes] " });
    expect(typing(looked, ["back"]).lines.join()).toContain("26 of 26");
    expect(typing(looked, ["back", ""]).lines).toContain("What you said:");
    expect(typing(looked, ["quit"]).end).toBe("quit");
    const cable = typing(opened(undefined, 80), [
      ...enters(6),
      "cable",
      ...enters(3),
      "front",
      ...enters(13),
    ]);
    expect(cable.lines.join("\n")).toContain("cable, 2 over 2, draw-in 0 %");
    expect(cable.lines.join("\n")).toContain("neck 8 cm deep");
  });

  it("does not ask for a file that was given, until it is refused", () => {
    const last = typing(opened("a.yaml", 80), enters(27));
    expect(last).toMatchObject({ end: "write", dialogue: { file: "a.yaml" } });
    const again = fileRefused(last.dialogue, "a.yaml: the disk is full");
    expect(again.lines).toEqual([
      "  a.yaml: the disk is full",
      "",
      "Into which file should it be written?",
      "  It can be changed with any text editor.",
    ]);
  });

  it("stops at quit", () => {
    expect(typing(opened(undefined, 80), ["", "quit"]).end).toBe("quit");
  });
});
