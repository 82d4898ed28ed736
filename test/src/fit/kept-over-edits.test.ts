import { describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { applyEdits } from "../../../src/explore/apply-edits.ts";
import { moveEnd } from "../../../src/explore/change-allows.ts";
import { isRefused } from "../../../src/explore/edit.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import { rulesFor } from "../../../src/explore/rules-for.ts";
import { givingSteps } from "../../../src/explore/steps.ts";
import { enumerate } from "../../../src/fit/enumerate.ts";
import { createKept, type Kept } from "../../../src/fit/kept.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { sampleGarments } from "../../support/random-garment.ts";
import { fitHere } from "../../support/run-garment.ts";

const read = (text: string): Garment | undefined => readSource(text, "test.yaml").garment;

/** The garment's text after one step of one of its rules, either way; undefined where that one cannot be taken. */
function stepped(text: string, garment: Garment, at: number): string | undefined {
  const rules = rulesFor(garment);
  const steps = givingSteps(rules);
  if (steps.length === 0) return undefined;
  const { rule, end, by } = steps[at % steps.length]!;
  const way = at % 3 === 0 ? (-by as 1 | -1) : by;
  const change = moveEnd(text, rules.find(({ id }) => id === rule)!, end, way);
  if (isRefused(change)) return undefined;
  const edited = applyEdits(text, change.edits);
  return "text" in edited && read(edited.text) ? edited.text : undefined;
}

/** How often looks and layouts are worked out. */
function counting(): { readonly kept: Kept; readonly made: () => { looks: number; layouts: number } } {
  const within = createKept();
  let made = { looks: 0, layouts: 0 };
  return {
    kept: (of, make) =>
      within(of, () => {
        made[of.startsWith("looks") ? "looks" : "layouts"] += 1;
        return make();
      }),
    made: () => {
      const before = made;
      made = { looks: 0, layouts: 0 };
      return before;
    },
  };
}

test("what was kept of earlier states of a garment changes nothing of what can be chosen, nor its fit", async () => {
  const { kept, made } = counting();
  let states = 0;
  let edits = 0;
  for (const file of sampleGarments(12, 20_731, { phases: true, wearers: true, steady: true })) {
    let text = stringify(file);
    for (let at = 0; at < 60 && states < 150; at += 7) {
      const garment = read(text);
      if (!garment) break;
      states += 1;
      expect(enumerate(garment, { kept })).toEqual(enumerate(garment));
      if (at % 3 === 0) {
        const [again, anew] = [
          await fitHere(garment, { rivals: 2, kept }),
          await fitHere(garment, { rivals: 2 }),
        ];
        expect(again).toEqual(anew);
      }
      const next = stepped(text, garment, at);
      if (next !== undefined && next !== text) edits += 1;
      text = next ?? text;
    }
  }
  expect(edits).toBeGreaterThan(40);
  expect(made().layouts).toBeGreaterThan(0);
});

describe("after a change of one rule", () => {
  const source = `format: evenrow/1
bed: { needles: 150 }
gauge:
  ground: { stitches: 22, rows: 31, over: 10 cm }
  cord: { needles: 3, stitches: 19, over: 10 cm }
pieces:
  front: { outline: [{ height: 0 cm, width: 40 cm }, { height: 36 cm, width: 42 cm }] }
  sleeve: { outline: [{ height: 0 cm, width: 24 cm }, { height: 36 cm, width: 31 cm }] }
motifs:
  plait: { like: crossed cord, interval: { allow: [2, 4, 6], prefer: 4 }, spread: { allow: 2..6, prefer: 3 } }
  rope:
    kind: cable
    quantities: { every: { unit: rows, allow: 4..8, prefer: 6 } }
    cross: [2, 2]
    lead: every
    repeat: every
    crossings: { start: [0, 0], repeat: [[0, every]] }
place:
  - { motif: plait, on: front, margins: { bottom: 2..9, top: 2..9, side: { least: 5 } } }
  - { motif: rope, on: sleeve, margins: { bottom: 2..8, top: 2..8, side: { least: 5 } } }
`;

  const madeAfter = (change: (text: string) => string) => {
    const { kept, made } = counting();
    enumerate(read(source)!, { kept });
    const first = made();
    expect(change(source)).not.toBe(source);
    enumerate(read(change(source))!, { kept });
    const fresh = counting();
    enumerate(read(change(source))!, { kept: fresh.kept });
    return { first, again: made(), anew: fresh.made() };
  };

  test("that says nothing of the fit, nothing is worked out again", () => {
    const { first, again } = madeAfter((text) =>
      text.replace("format: evenrow/1", "# read anew\nformat: evenrow/1"),
    );
    expect(first.looks).toBe(2);
    expect(first.layouts).toBeGreaterThan(10);
    expect(again).toEqual({ looks: 0, layouts: 0 });
  });

  test("of one placement, only its own layouts are", () => {
    const { first, again } = madeAfter((text) => text.replace("bottom: 2..8", "bottom: 2..7"));
    expect(again.looks).toBe(0);
    expect(again.layouts).toBeGreaterThan(0);
    expect(again.layouts).toBeLessThan(first.layouts / 2);
  });

  test("of one motif, only its looks are, and the layouts on footings that it did not have", () => {
    const { first, again } = madeAfter((text) => text.replace("allow: 2..6", "allow: 2..7"));
    expect(again).toEqual({ looks: 1, layouts: 3 });
    expect(first.layouts).toBeGreaterThan(15);
  });

  test("of the gauge, everything is", () => {
    const { again, anew } = madeAfter((text) => text.replace("rows: 31", "rows: 32"));
    expect(again).toEqual(anew);
  });
});
