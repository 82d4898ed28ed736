import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { setValue } from "../../../src/edit/set-value.ts";
import { applyEdits } from "../../../src/explore/apply-edits.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import { Ended, type Pace, type WhyNot, whyNot } from "../../../src/why/why.ts";
import { whyToJson } from "../../../src/why/why-json.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const garmentWith = ({ plait = "", place = "", piece = "", more = "" }): string => `format: evenrow/1
bed: { needles: 100 }
gauge:
  ground: { stitches: 20, rows: 30, over: 10 cm }
  cord: { needles: 3, stitches: 18, over: 10 cm }
pieces:
  front:
    outline: [{ height: 0 cm, width: 14 cm }, { height: 10 cm, width: 14 cm }]
    ${piece}
  back:
    outline: [{ height: 0 cm, width: 14 cm }, { height: 10 cm, width: 14 cm }]
motifs:
  plait:
    like: crossed cord
    ease: { from: -20 %, to: 40 % }
    ${plait}
place:
  - { motif: plait, on: front${place} }
  - { motif: plait, on: back, margins: { bottom: 0..30, top: 0..30 } }
${more}
`;

const patient: Pace = { leftMs: () => 60_000, goOn: () => {} };

async function whyOf(source: string, pace = patient) {
  const { garment } = readSource(source, "test.yaml");
  if (!garment) throw new Error("the garment of a test is sound");
  return whyNot({ source, name: "test.yaml", garment }, simplexEngine, pace);
}

const fits = async (source: string): Promise<boolean> =>
  (await fitHere(soundGarment(source), { rivals: 0 })).status === "fits";

/** The file after each change, as its JSON says it: put at those paths. */
function withSets(why: WhyNot, source: string): readonly string[] {
  const told = whyToJson(why, source) as { changes: { set: { path: string[]; to: string }[] }[] };
  return told.changes.map(({ set }) => set.reduce((text, { path, to }) => setValue(text, path, to), source));
}

describe("a change is said as a knitter would do it", () => {
  test.each([
    [
      "a length in rows and in its unit",
      { plait: "interval: 4", place: ", margins: { bottom: 0, top: 1 }, repeats: 3", piece: "grow: 1 mm" },
      /let the front shrink by up to 1 row \(3.5 mm\) instead of not at all|let the front grow by up to \d+ rows? \(.*mm\) instead of 1 mm, which is less than a row/,
    ],
    [
      "margins at both sides",
      { plait: "spread: 6", place: ", margins: { side: { least: 10 } }" },
      /leave at least 8 needles at each side of plait on front instead of 10/,
    ],
    [
      "rows below",
      { plait: "interval: 4", place: ", margins: { bottom: 0, top: 0 }, repeats: 3" },
      /leave 0 or 2 rows below plait on front instead of 0/,
    ],
    [
      "ease by the end that gives way",
      { plait: "interval: 4\n    spread: 3", place: "" },
      /allow plait an ease down to -\d+(\.\d+)? % instead of 10 %/,
    ],
  ])("%s", async (_, parts, expected) => {
    const source = garmentWith(parts).replace(
      "-20 %, to: 40 %",
      expected.source.includes("ease") ? "10 %, to: 10.5 %" : "-20 %, to: 40 %",
    );
    const { changes } = await whyOf(source);
    expect(changes.map(({ words }) => words).join("\n")).toMatch(expected);
  });
});

describe("a rule that can only be taken out", () => {
  test.each([
    ["two sides of a comparison that have to be equal", { plait: 'rules: [ "mod(interval, 2) = 3" ]' }],
    [
      "one comparison of two",
      { plait: 'rules: [ "mod(interval, 2) = 3", "spread <= interval + 2" ]', place: "" },
    ],
    [
      "a meeting",
      {
        plait: "interval: 4",
        place: ", repeats: 1, margins: { bottom: 1, top: 0..30 }, meet: { mark: bind-off, at: whole }",
      },
    ],
    [
      "one meeting of two",
      {
        plait: "interval: 4",
        place:
          ", margins: { bottom: 0..9, top: 0..9 }, meet: [{ mark: cast-on, at: whole }, { mark: cast-on, at: 1 }]",
      },
    ],
    [
      "a match",
      {
        plait: "interval: 5",
        place: ", repeats: 1, margins: { bottom: 0, top: 0..40 }",
        more: "match: [{ motif: plait, on: [front, back], mark: bind-off }]",
      },
    ],
  ])("is proposed to be taken out, at its stated cost: %s", async (_, parts) => {
    const source = garmentWith(parts).replace(
      "bottom: 0..30, top",
      "more" in parts ? "bottom: 1, top" : "bottom: 0..30, top",
    );
    expect(await fits(source)).toBe(false);
    const why = await whyOf(source);
    const out = why.changes.filter(({ edits }) => edits.some((edit) => "remove" in edit));
    expect(out.length, JSON.stringify(why.changes)).toBeGreaterThan(0);
    for (const { edits, cost } of out) {
      expect(cost).toBe(20 * edits.filter((edit) => "remove" in edit).length);
      const edited = applyEdits(source, edits);
      expect("text" in edited && (await fits(edited.text))).toBe(true);
    }
    for (const text of withSets(why, source)) expect(await fits(text), text).toBe(true);
  });
});

test("put into the file at its paths, what the JSON of a change says lets it fit, also where something is taken out", async () => {
  const source = garmentWith({
    plait: 'rules: [ "spread <= interval + 2", "mod(interval, 2) = 3" ]',
    place: ", margins: { bottom: 0..9, top: 0..9 }",
  });
  const why = await whyOf(source);
  const texts = withSets(why, source);
  expect(texts.length).toBeGreaterThan(0);
  for (const text of texts) expect(await fits(text), text).toBe(true);
  expect(JSON.stringify(whyToJson(why, source))).toContain('"to":["spread <= interval + 2"]');
});

describe("an asking that is ended early", () => {
  const source = garmentWith({ plait: "spread: 6", place: ", margins: { side: { least: 10 } }" });
  /** Ends after so many questions. */
  const endingAfter = (questions: number): Pace => {
    let left = questions;
    return {
      ...patient,
      goOn: () => {
        left -= 1;
        if (left < 0) throw new Ended();
      },
    };
  };

  test("keeps what was found so far", async () => {
    const whole = await whyOf(source);
    let counted = 0;
    await whyOf(source, { ...patient, goOn: () => void counted++ });
    const [nothing, some] = [
      await whyOf(source, endingAfter(3)),
      await whyOf(source, endingAfter(counted - 1)),
    ];
    expect(nothing).toMatchObject({ smallest: false, complete: false, changes: [] });
    expect(nothing.conflict.length).toBeGreaterThan(whole.conflict.length);
    expect(some).toMatchObject({ smallest: true, complete: false });
    expect(some.conflict.map(({ rule }) => rule)).toEqual(whole.conflict.map(({ rule }) => rule));
    expect(some.changes.length).toBeGreaterThan(0);
  });

  test("tells of every finding as it comes", async () => {
    const lengths: number[] = [];
    const found: Pace["found"] = (why) =>
      void (why.status === "does not fit" && lengths.push(why.changes.length));
    const { changes } = await whyOf(source, { ...patient, found });
    expect(lengths.at(-1)).toBe(changes.length);
    expect(new Set(lengths)).toEqual(
      new Set(Array.from({ length: changes.length + 1 }, (_, index) => index)),
    );
  });
});

test("of each rule in the way that no change is proposed of, it is said how far it was followed", async () => {
  // 102 rows of cloth for 8 rows of lead and 6 repeats of 16.
  const { changes, unhelpful } = await whyOf(`format: evenrow/1
bed: { needles: 150 }
gauge:
  ground: { stitches: 22, rows: 31, over: 10 cm }
  cord: { needles: 3, stitches: 19, over: 10 cm }
pieces:
  sleeve:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 33 cm, width: 31 cm }]
    grow: 0 cm
    shrink: 0 cm
motifs:
  plait: { like: crossed cord, interval: 8, spread: 3, ease: { from: -40 %, to: 40 % } }
place:
  - { motif: plait, on: sleeve, repeats: 6, margins: { bottom: 0, top: 0 } }
`);
  expect(changes.map(({ words }) => words)).toEqual([
    "let the sleeve grow by up to 2 rows (6.5 mm) instead of not at all",
  ]);
  expect(unhelpful.map(({ words }) => words)).toEqual([
    "plait on sleeve: repeats 6; no change of it alone helps (followed up to 40 either way)",
    "plait: interval 8 rows; no change of it alone helps (followed up to 12 either way)",
  ]);
});
