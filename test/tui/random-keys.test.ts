import fc from "fast-check";
import { expect, test } from "vitest";
import { readSource } from "../../src/explore/read-source.ts";
import { frame } from "../../tui/content/frame.ts";
import { asciiGlyphs, unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { lineWidth } from "../../tui/content/line.ts";
import { spokenLines } from "../../tui/content/spoken.ts";
import { keyTable } from "../../tui/keys.ts";
import { type Driver, opened } from "./support/driver.ts";

const seed = 20_260_101;

const everyKey = [...new Set(keyTable.flatMap(({ keys }) => keys)), ..."0123456789.,%abx#"];

/** Keys that change the garment one step, wherever the program is. */
const changingKeys = [
  "+",
  "-",
  "up",
  "down",
  "left",
  "right",
  "space",
  "enter",
  "tab",
  "a",
  "3",
  "9",
  "backspace",
];

/** What must hold of every state, whatever led there. */
function expectValid({ state }: Driver): void {
  const { garment, screen, shelf } = state();
  expect(shelf.at).toBeGreaterThanOrEqual(0);
  if (!garment) {
    expect(["files", "opening", "help"]).toContain(screen.kind);
    return;
  }
  const { reading, view, solving, version } = garment;
  expect(reading.garment).toBeDefined();
  const rule = reading.rules[view.rule];
  expect(rule?.fields).toContain(view.field);
  expect(view.choice).toBeLessThanOrEqual(solving.shown?.rivals.length ?? 0);
  expect(reading.garment?.placements[view.placement]).toBeDefined();
  expect(readSource(version.text, garment.file).garment).toBeDefined();
  if (screen.kind === "compare") expect(solving.shown?.rivals[screen.rival - 1]).toBeDefined();
}

function expectFrames({ state }: Driver): void {
  const { columns, rows } = state().terminal;
  for (const glyphs of [unicodeGlyphs, asciiGlyphs]) {
    const lines = frame(state(), glyphs);
    expect(lines).toHaveLength(rows - 1);
    for (const line of lines) expect(lineWidth(line)).toBe(columns);
  }
  expect(spokenLines(state()).length).toBeGreaterThan(0);
}

test("no sequence of 10,000 keys leads to an exception or a state that cannot be", async () => {
  const program = await opened("sleeve");
  const [keys] = fc.sample(
    fc.array(fc.constantFrom(...everyKey), { minLength: 10_000, maxLength: 10_000, size: "max" }),
    { seed, numRuns: 1 },
  );
  for (const [index, key] of keys!.entries()) {
    program.press(key);
    const { screen } = program.state();
    if (screen.kind === "opening")
      program.send({ kind: "not opened", file: screen.file, reason: "a reason" });
    if (!program.state().garment)
      program.send({ kind: "opened", file: "sleeve.yaml", text: (await opened("sleeve")).text() });
    if (program.garment().saving !== "no") program.send({ kind: "saved", text: program.text() });
    if (index % 100 === 0) {
      await program.solve();
      expectFrames(program);
    }
    if (index % 10 === 0) expectValid(program);
    program.effects.splice(0, Math.max(0, program.effects.length - 500));
  }
});

test("undo is the exact inverse of every change, and redo of undo", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom("sleeve", "scarf", "front", "cable-sleeve"),
      fc.array(fc.constantFrom(...changingKeys), { minLength: 1, maxLength: 60 }),
      async (name, keys) => {
        const program = await opened(name);
        const first = program.garment().version;
        const versions = [first];
        for (const key of keys) {
          program.press(key);
          if (program.state().screen.kind === "compare") program.press("escape");
          if (program.garment().version !== versions.at(-1)) {
            versions.push(program.garment().version);
            await program.solve();
          }
        }
        program.press("escape", "escape");
        for (const version of versions.slice(0, -1).reverse()) {
          program.press("u");
          expect(program.garment().version).toEqual(version);
        }
        expect(program.text()).toBe(first.text);
        expect(program.garment().past).toEqual([]);
        for (const version of versions.slice(1)) {
          program.press("ctrl-r");
          expect(program.garment().version).toEqual(version);
        }
        expect(program.garment().future).toEqual([]);
      },
    ),
    { seed, numRuns: 40 },
  );
});
