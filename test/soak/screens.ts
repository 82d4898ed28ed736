import { readFileSync } from "node:fs";
import fc from "fast-check";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { fitGarment } from "../../src/fit/solve.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { buildSheet } from "../../src/sheet/build-sheet.ts";
import type { SheetPiece } from "../../src/sheet/sheet.ts";
import { applyEvents } from "../../src/work/events.ts";
import { newRecord } from "../../src/work/record.ts";
import { frame } from "../../tui/content/frame.ts";
import { asciiGlyphs, unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { lineWidth } from "../../tui/content/line.ts";
import { spokenLines } from "../../tui/content/spoken.ts";
import { keyTable } from "../../tui/keys.ts";
import { workFrame } from "../../tui/work/content/frame.ts";
import { workSpokenLines } from "../../tui/work/content/spoken.ts";
import { workKeys } from "../../tui/work/keys.ts";
import type { WorkState } from "../../tui/work/state.ts";
import { updateWork } from "../../tui/work/update.ts";
import { driver } from "../tui/support/driver.ts";
import { must, type Target, targetOf } from "./target.ts";

/** Keys of a table, and keys, pastes and letters that are in none. */
const keysOf = (table: readonly { readonly keys: readonly string[] }[]): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...new Set(table.flatMap(({ keys }) => keys))) },
    { weight: 2, arbitrary: fc.constantFrom(..."0123456789.,%abx#-") },
    fc.constantFrom(
      "",
      "f12",
      "ctrl-z",
      "🧶",
      "\u0000",
      "\u001b[31m",
      "\u202e",
      "__proto__",
      "constructor",
      "9".repeat(400),
    ),
    fc.string({ unit: "binary", maxLength: 3 }),
  );

interface Sequence {
  readonly keys: readonly string[];
  readonly columns: number;
  readonly rows: number;
}

const sequences = (table: Parameters<typeof keysOf>[0]): fc.Arbitrary<Sequence> =>
  fc.record({
    keys: fc.array(keysOf(table), { minLength: 1, maxLength: 60 }),
    columns: fc.oneof({ weight: 3, arbitrary: fc.constant(80) }, fc.integer({ min: 1, max: 220 })),
    rows: fc.oneof({ weight: 3, arbitrary: fc.constant(24) }, fc.integer({ min: 1, max: 70 })),
  });

function mustFit(lines: readonly Parameters<typeof lineWidth>[0][], { columns, rows }: Sequence): void {
  must(lines.length <= Math.max(rows, 1), `${lines.length} lines on a screen of ${rows}`);
  for (const line of lines)
    must(lineWidth(line) <= columns, `a line ${lineWidth(line)} wide on a screen of ${columns}`);
}

/** Key sequences in the screen of explore, at sizes of a terminal that are odd and usual. */
export const exploreKeys: Target = targetOf({
  name: "keys in explore",
  usual: 6000,
  inputs: () => sequences(keyTable),
  attempt: async () => {
    const texts = ["sleeve", "scarf", "front", "too-narrow"].map((name) =>
      readFileSync(`samples/${name}.yaml`, "utf8"),
    );
    let turn = 0;
    return (sequence) => {
      const program = driver(sequence.columns, sequence.rows);
      turn += 1;
      const text = texts[turn % texts.length]!;
      program.send({ kind: "opened", file: "garment.yaml", text });
      for (const key of sequence.keys) {
        program.press(key);
        const { screen, garment } = program.state();
        if (screen.kind === "opening")
          program.send({ kind: "not opened", file: screen.file, reason: "a reason" });
        if (garment?.saving !== undefined && garment.saving !== "no")
          program.send(
            sequence.keys.length % 3 === 0
              ? { kind: "changed on disk", theirs: text }
              : { kind: "saved", text: garment.version.text },
          );
      }
      const state = program.state();
      for (const glyphs of [asciiGlyphs, unicodeGlyphs]) mustFit(frame(state, glyphs), sequence);
      must(
        spokenLines(state).every((line) => !/\p{Cc}/u.test(line)),
        "what is spoken steers a terminal",
      );
      if (state.garment)
        must(
          readGarment(state.garment.version.text, "soak.yaml").garment !== undefined,
          "a change left a file that does not read",
        );
      return "accepted";
    };
  },
});

async function pieceOf(name: string): Promise<SheetPiece> {
  const { garment } = readGarment(readFileSync(`samples/${name}.yaml`, "utf8"), name);
  const result = await fitGarment(garment!, simplexEngine, { rivals: 0 });
  if (result.status !== "fits") throw new Error(`the sample ${name} does not fit`);
  return buildSheet(result.fit).pieces[0]!;
}

/** Key sequences at the row counter, on a piece without and one with a neck, as its owner and as one who looks on. */
export const workKeysPressed: Target = targetOf({
  name: "keys at the row counter",
  usual: 6000,
  inputs: () => sequences(workKeys),
  attempt: async () => {
    const record = newRecord({ pieces: [await pieceOf("sleeve"), await pieceOf("front")] }, "text");
    return (sequence) => {
      let state: WorkState = {
        terminal: { columns: sequence.columns, rows: sequence.rows },
        file: "garment.yaml",
        record,
        standing: sequence.keys.length % 5 === 0 ? "looking" : "mine",
        owner: undefined,
        screen: { kind: "main" },
        change: undefined,
        message: undefined,
        bell: sequence.columns % 2 === 0,
      };
      let kept = record;
      for (const key of sequence.keys) {
        const next = updateWork(state, { kind: "key", key });
        state = next.state;
        kept = applyEvents(kept, next.events);
      }
      must(
        JSON.stringify(kept) === JSON.stringify(state.record),
        "the record is not what the events add up to",
      );
      for (const glyphs of [asciiGlyphs, unicodeGlyphs]) mustFit(workFrame(state, glyphs), sequence);
      must(
        workSpokenLines(state).every((line) => !/\p{Cc}/u.test(line)),
        "what is spoken steers a terminal",
      );
      return "accepted";
    };
  },
});
