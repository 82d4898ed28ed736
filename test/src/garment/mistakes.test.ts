import { describe, expect, it } from "vitest";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText, marked } from "../../support/garment-text.ts";
import { type Changes, expectOnly, type Mistake } from "../../support/one-mistake.ts";

function table(name: string, mistakes: readonly Mistake[]): void {
  describe(name, () => {
    it.each(mistakes)("%j is %s", expectOnly);
  });
}

const CORD = "{ needles: 3, stitches: 19, over: 10 cm }";
const GROUND = "{ stitches: 22, rows: 31, over: 10 cm }";
const OUTLINE = "[{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]";
const MARKS = "{ rib top: 4 cm, underarm: 33 cm }";

const ground = (text: string): Changes => ({ gauge: `gauge:\n  ground: ${text}\n  cord: ${CORD}` });
const cord = (text: string): Changes => ({ gauge: `gauge:\n  ground: ${GROUND}\n  cord: ${text}` });
const sleeve = (parts: Readonly<Record<string, string>>): Changes => {
  const lines = Object.entries({ outline: OUTLINE, marks: MARKS, ...parts }).filter(
    ([, text]) => text !== "",
  );
  return { pieces: `pieces:\n  sleeve:\n${lines.map(([key, text]) => `    ${key}: ${text}`).join("\n")}` };
};
const outline = (text: string): Changes => sleeve({ outline: text });
const plait = (text: string): Changes => ({ motifs: `motifs:\n  plait: { like: crossed cord, ${text} }` });
const cable = (text: string): Changes => ({
  motifs: `motifs:\n  plait: { like: transferred cable, ${text} }`,
});
const place = (text: string): Changes => ({
  place: `place:\n  - { motif: plait, on: sleeve, from: rib top, to: underarm, ${text} }`,
});
const placeFrom = (from: string, to: string): Changes => ({
  place: `place:\n  - { motif: plait, on: sleeve, from: ${from}, to: ${to} }`,
});
/** No placement on the piece in question, whose height is part of the mistake. */
const anywhere: Changes = { place: "place: [{ motif: plait, on: sleeve }]" };
const full = (parts: Readonly<Record<string, string>>, title = "plait"): Changes => {
  const lines = Object.entries({
    kind: "cord",
    quantities: "{ interval: { unit: rows, allow: 2..8 } }",
    lead: "interval",
    repeat: "2 * interval",
    strands:
      "{ one: { start: [1, 0], lead-in: [[2, interval]], repeat: [[-2, interval], [2, 2 * interval]] } }",
    ...parts,
  }).filter(([, text]) => text !== "");
  return { motifs: `motifs:\n  ${title}:\n${lines.map(([key, text]) => `    ${key}: ${text}`).join("\n")}` };
};

table("an unknown key", [
  [{ format: "format: evenrow/1\n§titel: x" }, "unknown-key", "titel", "title (the nearest known key)"],
  [{ format: "format: evenrow/1\n§Titles: x" }, "unknown-key", "Titles", "title (the nearest known key)"],
  [{ format: "format: evenrow/1\n§colour: x" }, "unknown-key", "colour", "one of format, title, bed"],
  [{ format: "format: evenrow/1\n§outline: x" }, "unknown-key", "outline", "outline belongs to a piece"],
  [{ format: "format: evenrow/1\n§__proto__: x" }, "unknown-key", "__proto__", "one of format"],
  [{ format: "format: evenrow/1\n§constructor: x" }, "unknown-key", "constructor", "one of format"],
  [{ format: "format: evenrow/1\n§toString: x" }, "unknown-key", "toString", "one of format"],
  [{ format: "format: evenrow/1\n§<<: { title: x }" }, "unknown-key", "<<", "one of format"],
  [{ format: 'format: evenrow/1\n§"a\\e[31mb": x' }, "unknown-key", "a\\u001b[31mb", "one of format"],
  [{ bed: "bed: { needles: 150, §pich: 6.5 mm }" }, "unknown-key", "pich", "pitch (the nearest known key)"],
  [
    { bed: "bed: { needles: 150, §pitch:6.5 }" },
    "unknown-key",
    "pitch:6.5",
    "a space after the colon: pitch: 6.5",
  ],
  [
    { bed: "bed: { needles: 150, §within: 2 }" },
    "unknown-key",
    "within",
    "within belongs to the ground's gauge",
  ],
  [ground("{ stitches: 22, rows: 31, over: 10 cm, §wihtin: 2 % }"), "unknown-key", "wihtin", "within"],
  [
    cord("{ needles: 3, stitches: 19, over: 10 cm, §thicknes: 5 mm }"),
    "unknown-key",
    "thicknes",
    "thickness",
  ],
  [{ yarn: "yarn: { §grund: { tex: 370 } }" }, "unknown-key", "grund", "ground"],
  [{ yarn: "yarn: { ground: { tex: 370, §ply: 2 } }" }, "unknown-key", "ply", "one of tex"],
  [
    { pieces: `pieces:\n  sleeve:\n    outline: ${OUTLINE}\n    marks: ${MARKS}\n    §grwo: 1 cm` },
    "unknown-key",
    "grwo",
    "grow",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm, §widht: 2 cm }, { height: 36 cm, width: 31 cm }]"),
    "unknown-key",
    "widht",
    "width",
  ],
  [
    sleeve({ neck: "[{ height: 30 cm, width: 5 cm, §least: 2 cm }]" }),
    "unknown-key",
    "least",
    "least belongs to a margin",
  ],
  [plait("§intervall: 4"), "unknown-key", "intervall", "interval (the nearest known key)"],
  [plait("§cross: [2, 2]"), "unknown-key", "cross", "cross belongs to a motif of the kind cable"],
  [plait("interval: { allow: 4, §perfer: 4 }"), "unknown-key", "perfer", "prefer"],
  [plait("interval: { from: 2, to: 8, §stepp: 2 }"), "unknown-key", "stepp", "step"],
  [plait("ease: { from: -5 %, §too: 15 % }"), "unknown-key", "too", "to"],
  [cable("limits: { §stiches: 6 }"), "unknown-key", "stiches", "stitches"],
  [
    full({ strands: "{ one: { start: [1, 0], §leadin: [], repeat: [[1, interval]] } }" }),
    "unknown-key",
    "leadin",
    "lead-in",
  ],
  [place("§repeets: 3"), "unknown-key", "repeets", "repeats"],
  [place("margins: { §botom: 2 }"), "unknown-key", "botom", "bottom"],
  [place("margins: { top: { §lesst: 2, least: 2 } }"), "unknown-key", "lesst", "least"],
  [{ weights: "weights: { §lenght: 3 }" }, "unknown-key", "lenght", "length (the nearest known key)"],
  [{ weights: "weights: { §constructor: 3 }" }, "unknown-key", "constructor", "one of length"],
]);

table("a missing key", [
  [{ format: "§title: x" }, "missing-key", undefined, "format: evenrow/1"],
  [{ format: "§format: evenrow/1", bed: "" }, "missing-key", undefined, "{ needles: 200, pitch: 4.5 mm }"],
  [{ format: "§format: evenrow/1", gauge: "" }, "missing-key", undefined, "ground: { stitches: 22"],
  [{ format: "§format: evenrow/1", place: "" }, "missing-key", undefined, "- { motif: plait, on: sleeve"],
  [{ bed: "§bed: { pitch: 6.5 mm }" }, "missing-key", undefined, "needles: 200"],
  [{ gauge: `§gauge:\n  cord: ${CORD}` }, "missing-key", undefined, "ground: { stitches: 22"],
  [
    { gauge: `gauge:\n  §ground: { stitches: 22, over: 10 cm }\n  cord: ${CORD}` },
    "missing-key",
    undefined,
    "rows: 31",
  ],
  [
    { gauge: `gauge:\n  ground: ${GROUND}\n  §cord: { needles: 3, stitches: 19 }` },
    "missing-key",
    undefined,
    "over: 10 cm",
  ],
  [{ yarn: "yarn: { §cord: {} }" }, "missing-key", undefined, "tex: 370, or swatch:"],
  [
    { pieces: `pieces:\n  §sleeve:\n    marks: ${MARKS}` },
    "missing-key",
    undefined,
    "- { height: 0 cm, width: 20 cm }",
  ],
  [
    outline("[§{ width: 20 cm }, { height: 36 cm, width: 31 cm }]"),
    "missing-key",
    undefined,
    "{ height: 33 cm",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm }, §{ height: 36 cm }]"),
    "missing-key",
    undefined,
    "{ height: 33 cm",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm }, §{ height: 36 cm, left: 3 cm }]"),
    "missing-key",
    undefined,
    "right: 16 cm",
  ],
  [sleeve({ neck: "[§{ height: 30 cm }]" }), "missing-key", undefined, "width: 8 cm"],
  [full({ repeat: "" }, "§plait"), "missing-key", undefined, "repeat: 2 * interval"],
  [full({ strands: "" }, "§plait"), "missing-key", undefined, "left: { start: [-1, 0]"],
  [{ motifs: "motifs:\n  §plait: { rules: [] }" }, "missing-key", undefined, "cord, cable or band, or like:"],
  [full({ strands: "{ §one: { repeat: [[1, interval]] } }" }), "missing-key", undefined, "start: [-1, 0]"],
  [
    full({ quantities: "{ interval: { unit: rows, allow: 4 }, §twist: { unit: rows } }" }),
    "missing-key",
    undefined,
    "allow: 2..9",
  ],
  [full({ quantities: "{ §interval: { allow: 2..8 } }" }), "missing-key", undefined, "unit: rows"],
  [plait("§interval: { from: 2 }"), "missing-key", undefined, "the greatest value"],
  [{ place: "place:\n  - §{ on: sleeve }" }, "missing-key", undefined, "the name of a motif"],
  [{ place: "place:\n  - §{ motif: plait }" }, "missing-key", undefined, "the name of a piece"],
  [{ gauge: `§gauge:\n  ground: ${GROUND}` }, "no-cord-gauge", undefined, "cord: { needles: 3"],
]);

table("a value of another kind", [
  [{ bed: "bed: §150" }, "wrong-type", "150", "{ needles: 200"],
  [{ bed: "bed:§" }, "wrong-type", "nothing", "{ needles: 200"],
  [{ bed: "bed: { needles: §many }" }, "wrong-type", '"many"', "a number from 2 to 600"],
  [{ bed: "bed: { needles: §[150] }" }, "wrong-type", "a list of 1", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §yes }" }, "wrong-type", '"yes"', "a number from 2 to 600"],
  [{ bed: "bed: { needles: §true }" }, "wrong-type", "true", "a number from 2 to 600"],
  [{ bed: "bed: { needles: 150, carriage: §off }" }, "wrong-word", '"off"', "left or right"],
  [{ bed: "bed: { needles: 150, carriage: §Rihgt }" }, "wrong-word", '"Rihgt"', "right"],
  [{ bed: 'bed: { needles: §"150" }' }, "quoted-number", '"150"', "150"],
  [ground("{ stitches: §'22', rows: 31, over: 10 cm }"), "quoted-number", '"22"', "22"],
  [{ format: "format: evenrow/1\nyarn: §wool" }, "wrong-type", '"wool"', "ground: { tex: 370 }"],
]);

table("words, names and the format", [
  [{ format: "format: §evenrow/2" }, "unknown-format", '"evenrow/2"', "format: evenrow/1"],
  [{ format: "format: §1" }, "unknown-format", "1", "format: evenrow/1"],
  [{ format: "format: evenrow/1\ntitle: §[a]" }, "wrong-type", "a list of 1", "a word or two"],
  [{ format: "format: evenrow/1\ntitle: §''" }, "wrong-type", '""', "a word or two"],
  [sleeve({ carriage: "§no" }), "wrong-word", '"no"', "left or right"],
  [sleeve({ shaping: "§even" }), "wrong-word", '"even"', "even rows"],
  [cable("over: §both"), "wrong-word", '"both"', "left or right"],
  [full({ kind: "§chord" }), "wrong-word", '"chord"', "cord"],
  [plait("kind: §cable"), "different-kind", '"cable"', "cord, or no kind at all"],
  [plait("quantities: { interval: { unit: §needles } }"), "different-kind", '"needles"', "rows"],
  [full({ quantities: "{ interval: { unit: §row, allow: 4 } }" }), "wrong-word", '"row"', "rows"],
  [
    full({
      quantities: "{ interval: { unit: rows, allow: 4 }, shift: { unit: needles, allow: 4, signed: §yes } }",
    }),
    "wrong-type",
    '"yes"',
    "true or false",
  ],
  [
    full({ quantities: "{ interval: { unit: rows, allow: 4 }, §half turn: { unit: rows, allow: 4 } }" }),
    "bad-name",
    "half turn",
    "half_turn",
  ],
  [
    full({ quantities: "{ interval: { unit: rows, allow: 4 }, §2nd: { unit: rows, allow: 4 } }" }),
    "bad-name",
    "2nd",
    "_2nd",
  ],
  [
    full({ quantities: "{ interval: { unit: rows, allow: 4 }, §min: { unit: rows, allow: 4 } }" }),
    "bad-name",
    "min",
    "another name",
  ],
  [
    full({ quantities: "{ interval: { unit: rows, allow: 4 }, §ease: { unit: rows, allow: 4 } }" }),
    "bad-name",
    "ease",
    "another name",
  ],
  [plait("§interval: 4, quantities: { interval: 6 }"), "conflicting-keys", "4", "one of the two"],
]);

table("a number or a size", [
  [{ bed: "bed: { needles: §-150 }" }, "negative-size", "-150", "from 2 to 600"],
  [{ bed: "bed: { needles: §0 }" }, "zero-size", "0", "from 2 to 600"],
  [{ bed: "bed: { needles: §-0 }" }, "coded-number", "-0", "0"],
  [{ bed: "bed: { needles: §1e308 }" }, "coded-number", "1e308", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §0x96 }" }, "coded-number", "0x96", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §0o226 }" }, "coded-number", "0o226", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §.inf }" }, "coded-number", ".inf", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §.nan }" }, "coded-number", ".nan", "a number from 2 to 600"],
  [{ bed: "bed: { needles: §NaN }" }, "wrong-type", '"NaN"', "a number from 2 to 600"],
  [{ bed: "bed: { needles: §150.5 }" }, "not-whole", "150.5", "150 or 151"],
  [
    { bed: "bed: { needles: §99999999999999999999 }" },
    "absurd-size",
    "99999999999999999999",
    "from 2 to 600",
  ],
  [
    { bed: "bed: { needles: 150, pitch: §6.5 }" },
    "missing-unit",
    "6.5",
    "6.5 cm, or another of mm, cm, m or in",
  ],
  [{ bed: 'bed: { needles: 150, pitch: §"6.5" }' }, "missing-unit", '"6.5"', "6.5 cm, or another of"],
  [{ bed: "bed: { needles: 150, pitch: §6.5 Mm }" }, "unknown-unit", '"6.5 Mm"', "6.5 mm"],
  [{ bed: "bed: { needles: 150, pitch: §6,5 mm }" }, "decimal-comma", '"6,5 mm"', "6.5 mm"],
  [{ bed: "bed:\n  needles: 150\n  pitch: §6,5 mm" }, "decimal-comma", '"6,5 mm"', "6.5 mm"],
  [{ bed: "bed: { needles: 150, pitch: §65 cm }" }, "absurd-size", '"65 cm"', "from 0.1 cm to 3 cm"],
  [{ bed: "bed: { needles: 150, pitch: §-6 mm }" }, "negative-size", '"-6 mm"', "from 0.1 cm to 3 cm"],
  [ground("{ stitches: §-22, rows: 31, over: 10 cm }"), "negative-size", "-22", "from 0.5 to 2000"],
  [ground("{ stitches: §0, rows: 31, over: 10 cm }"), "zero-size", "0", "from 0.5 to 2000"],
  [
    { gauge: `gauge:\n  ground: §{ stitches: 220, rows: 31, over: 10 cm }\n  cord: ${CORD}` },
    "absurd-size",
    "keys (stitches, rows, over)",
    "from 0.5 to 100 mm",
  ],
  [ground('{ stitches: 22, rows: 31, over: §4" }'), "unknown-unit", '"4""', "4 in"],
  [ground("{ stitches: 22, rows: 31, over: §10 }"), "missing-unit", "10", "10 cm"],
  [
    ground("{ stitches: 22, rows: 31, over: 10 cm, within: §{} }"),
    "missing-key",
    "nothing between the brackets",
    "{ stitches: 0.9 %, rows: 0.7 % }",
  ],
  [ground("{ stitches: 22, rows: 31, over: 10 cm, within: { rows: §2 } }"), "missing-percent", "2", "2 %"],
  [ground("{ stitches: 22, rows: 31, over: 10 cm, within: { §row: 2 % } }"), "unknown-key", "row", "rows"],
  [ground("{ stitches: 22, rows: 31, over: 10 cm, within: §2 }"), "missing-percent", "2", "2 %"],
  [ground("{ stitches: 22, rows: 31, over: 10 cm, within: §2 cm }"), "not-a-percentage", '"2 cm"', "2 %"],
  [
    ground("{ stitches: 22, rows: 31, over: 10 cm, within: §99 % }"),
    "absurd-size",
    '"99 %"',
    "from 0 % to 30 %",
  ],
  [cord("{ needles: §40, stitches: 19, over: 10 cm }"), "absurd-size", "40", "from 1 to 12"],
  [{ yarn: "yarn: { ground: { tex: §0 } }" }, "zero-size", "0", "from 1 to 50000"],
  [{ yarn: 'yarn: { ground: { tex: §"370 tex" } }' }, "wrong-type", '"370 tex"', "a number from 1"],
  [sleeve({ grow: "§1" }), "missing-unit", "1", "1 cm"],
  [sleeve({ grow: "§-1 cm" }), "negative-size", '"-1 cm"', "from 0 cm to 1000 cm"],
  [sleeve({ shrink: "§1,5 cm" }), "decimal-comma", '"1,5 cm"', "1.5 cm"],
  [
    outline("[{ height: 0 cm, width: §0 cm }, { height: 36 cm, width: 31 cm }]"),
    "zero-size",
    '"0 cm"',
    "from 0.1 cm to 1000 cm",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm }, { height: §36 m, width: 31 cm }]"),
    "absurd-size",
    '"36 m"',
    "to 1000 cm",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: §31 ells }]"),
    "unknown-unit",
    '"31 ells"',
    "one of mm, cm, m or in",
  ],
  [
    outline("[{ height: 0 cm, left: §0 cm, right: 0 cm }, { height: 36 cm, width: 31 cm }]"),
    "zero-size",
    '"0 cm"',
    "more than 0 cm",
  ],
  [plait("reserve: §15"), "missing-percent", "15", "15 %"],
  [plait("ease: { from: §-5, to: 15 % }"), "missing-percent", "-5", "-5 %"],
  [plait("ease: { from: §-80 % }"), "absurd-size", '"-80 %"', "from -50 % to 200 %"],
  [cable("draw-in: §0.2"), "missing-percent", "0.2", "0.2 %"],
  [cable("draw-in: §95 %"), "absurd-size", '"95 %"', "to 80 %"],
  [cable("limits: { rows: §2.5 }"), "not-whole", "2.5", "2 or 3"],
  [{ weights: "weights: { length: §-1 }" }, "negative-size", "-1", "from 0"],
  [{ weights: "weights: { length: §2 % }" }, "wrong-type", '"2 %"', "a number from 0"],
  [{ weights: "weights: { length: §99999999 }" }, "absurd-size", "99999999", "to 1000000"],
  [{ weights: "weights:\n  length: §1,5" }, "decimal-comma", '"1,5"', "1.5"],
]);

table("a range", [
  [plait("interval: §[]"), "empty-range", "an empty list", "at least one value"],
  [plait("interval: { allow: §8..2 }"), "reversed-range", '"8..2"', "2..8"],
  [plait("interval: §{ from: 8, to: 2 }"), "reversed-range", "keys (from, to)", "2..8"],
  [plait("interval: { from: 2, to: 8, step: §0 }"), "zero-size", "0", "from 1"],
  [plait("interval: { from: 2, to: 8, step: §-2 }"), "negative-size", "-2", "from 1"],
  [plait("interval: §-2"), "negative-size", "-2", "from 0"],
  [plait("interval: §-2..4"), "negative-size", '"-2..4"', "a range from 0 on"],
  [plait("interval: [2, §-4]"), "negative-size", "-4", "from 0"],
  [plait('interval: [2, §"4"]'), "quoted-number", '"4"', "4"],
  [plait("interval: [2, §4.5]"), "not-whole", "4.5", "4 or 5"],
  [plait("interval: [§2..9]"), "wrong-type", '"2..9"', "a number from 0"],
  [plait("interval: §2.5"), "not-whole", "2.5", "2 or 3"],
  [plait("interval: §2-9"), "not-a-range", '"2-9"', "2..9"],
  [plait("interval: §2...9"), "not-a-range", '"2...9"', "2..9"],
  [plait("interval: §2.."), "not-a-range", '"2.."', "2..9"],
  [plait("interval: §any"), "not-a-range", '"any"', "2..9"],
  [plait('interval: §"4"'), "quoted-number", '"4"', "4"],
  [plait("interval: { allow: §2 cm }"), "not-a-range", '"2 cm"', "2..9"],
  [plait("interval: { allow: 2..8, prefer: §4 rows }"), "wrong-type", '"4 rows"', "a number"],
  [plait("interval: { allow: 2..8, prefer: §-4 }"), "negative-size", "-4", "from 0"],
  [plait("spread: §0..99999"), "absurd-size", '"0..99999"', "values up to 10000"],
  [plait("interval: §1e3"), "coded-number", "1e3", "a number from 0"],
  [place("repeats: §0"), "zero-size", "0", "from 1"],
  [place("repeats: §0..4"), "zero-size", '"0..4"', "a range from 1 on"],
  [place("columns: §1.5"), "not-whole", "1.5", "1 or 2"],
  [place("gap: §-1"), "negative-size", "-1", "from 0"],
  [place("margins: { bottom: §20..2 }"), "reversed-range", '"20..2"', "2..20"],
  [place("margins: { side: §-5 }"), "negative-size", "-5", "from 0"],
  [place("margins: { side: { least: §5 cm } }"), "wrong-type", '"5 cm"', "a number from 0"],
  [place("margins: { side: §2..5 }"), "wrong-type", '"2..5"', "{ least: 5 }"],
  [place("margins: { side: 5, §left: 2 }"), "conflicting-keys", "2", "side alone, or left and right"],
  [plait("ease: §{ from: 15 %, to: 7 % }"), "reversed-range", "from 15 % to 7 %", "from: 7 %, to: 15 %"],
]);

table("a piece", [
  [
    { ...sleeve({ outline: "§[{ height: 0 cm, width: 20 cm }]", marks: "" }), ...anywhere },
    "outline-too-short",
    "a list of 1",
    "- { height: 0 cm",
  ],
  [
    {
      ...sleeve({ outline: "§[{ height: 0 cm, width: 2 cm }, { height: 0 cm, width: 3 cm }]", marks: "" }),
      ...anywhere,
    },
    "outline-not-rising",
    "a list of 2",
    "- { height: 0 cm",
  ],
  [outline("§20 cm"), "wrong-type", '"20 cm"', "- { height: 0 cm"],
  [
    outline("[{ height: §2 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]"),
    "outline-not-at-zero",
    "2 cm",
    "0 cm",
  ],
  [
    outline(
      "[{ height: 0 cm, width: 20 cm }, { height: 38 cm, width: 31 cm }, { height: §33 cm, width: 31 cm }]",
    ),
    "outline-not-rising",
    "33 cm after 38 cm",
    "more than 38 cm",
  ],
  [
    outline(
      "[{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }, { height: 36 cm, width: 8 cm }, { height: §36 cm, width: 4 cm }]",
    ),
    "outline-not-rising",
    "36 cm after 36 cm",
    "more than 36 cm",
  ],
  [
    outline("[{ height: 0 cm, width: 20 cm, §left: 3 cm, right: 3 cm }, { height: 36 cm, width: 31 cm }]"),
    "conflicting-keys",
    '"3 cm"',
    "width alone",
  ],
  [
    sleeve({ marks: "{ rib top: 4 cm, underarm: 33 cm, cap: §40 cm }" }),
    "mark-outside",
    '"40 cm"',
    "up to 36 cm",
  ],
  [
    sleeve({ marks: "{ rib top: 4 cm, underarm: 33 cm, cap: §-4 cm }" }),
    "negative-size",
    '"-4 cm"',
    "from 0 cm",
  ],
  [
    sleeve({ marks: "{ rib top: 4 cm, underarm: 33 cm, §bind-off: 36 cm }" }),
    "mark-reserved",
    "bind-off",
    "another name",
  ],
  [sleeve({ marks: "{ rib top: §4, underarm: 33 cm }" }), "missing-unit", "4", "4 cm"],
  [sleeve({ neck: "§[]" }), "empty-range", "an empty list", "- { height: 50 cm"],
  [sleeve({ neck: "[{ height: §40 cm, width: 5 cm }]" }), "neck-outside", '"40 cm"', "up to 36 cm"],
  [sleeve({ neck: "[{ height: §0 cm, width: 5 cm }]" }), "neck-outside", '"0 cm"', "above 0 cm"],
  [
    sleeve({ neck: "[{ height: 34 cm, width: 5 cm }, { height: §30 cm, width: 6 cm }]" }),
    "outline-not-rising",
    "30 cm after 34 cm",
    "more than 34 cm",
  ],
]);

table("what is not there", [
  [
    { place: "place:\n  - { motif: §plat, on: sleeve }" },
    "unknown-motif",
    '"plat"',
    "plait (the nearest known name)",
  ],
  [
    { place: "place:\n  - { motif: §__proto__, on: sleeve }" },
    "unknown-motif",
    '"__proto__"',
    "one of plait, crossed cord",
  ],
  [
    { place: "place:\n  - { motif: plait, on: §slevee }" },
    "unknown-piece",
    '"slevee"',
    "sleeve (the nearest known name)",
  ],
  [{ place: "place:\n  - { motif: plait, on: §back }" }, "unknown-piece", '"back"', "one of sleeve"],
  [placeFrom("§ribtop", "underarm"), "unknown-mark", '"ribtop"', "rib top (the nearest known name)"],
  [placeFrom("rib top", "§neck"), "unknown-mark", '"neck"', "one of cast-on, rib top, underarm, bind-off"],
  [
    placeFrom("underarm", "§rib top"),
    "marks-not-rising",
    "from underarm (33 cm) to rib top (4 cm)",
    "higher",
  ],
  [
    placeFrom("underarm", "§underarm"),
    "marks-not-rising",
    "from underarm (33 cm) to underarm (33 cm)",
    "higher",
  ],
  [
    { place: "place:\n  - { motif: plait, on: sleeve, from: §bind-off }" },
    "marks-not-rising",
    "from bind-off (36 cm) to bind-off (36 cm)",
    "higher",
  ],
  [{ motifs: "motifs:\n  plait: { like: §crosed cord }" }, "unknown-motif", '"crosed cord"', "crossed cord"],
  [
    { motifs: "motifs:\n  plait: { like: §lace }" },
    "unknown-motif",
    '"lace"',
    "one of crossed cord, transferred cable",
  ],
  [full({ order: "[§two]" }), "unknown-strand", '"two"', "one of one"],
  [full({ folded: "[one, §two]" }), "unknown-strand", '"two"', "one of one"],
  [full({ folded: "§[one, one]" }), "repeated-name", "a list of 2", "each strand once"],
  [full({ folded: "§[one]" }), "wrong-type", "a list of 1", "[left, right]"],
  [full({ order: "§[one, one]" }), "repeated-name", "a list of 2", "[one]"],
  [full({ order: "§[]" }), "missing-name", "an empty list", "[one]"],
  [full({ strands: "§{}" }), "empty-range", "nothing between the brackets", "at least one strand"],
  [
    full({ strands: "{ one: { start: [1, 0], repeat: §[] } }" }),
    "empty-range",
    "an empty list",
    "[[needle, row], ...]",
  ],
  [{ place: "place: §[]" }, "empty-range", "an empty list", "- { motif: plait"],
]);

table("a sum", [
  [full({ repeat: "2 * §intervall" }), "expression-unknown-name", "intervall", "interval"],
  [full({ repeat: "'2 * §intervall'" }), "expression-unknown-name", "intervall", "interval"],
  [full({ repeat: '"2 * §intervall"' }), "expression-unknown-name", "intervall", "interval"],
  [full({ repeat: "2 §interval" }), "expression-not-arithmetic", "interval", "one of + - * /"],
  [full({ repeat: "2 §^ interval" }), "expression-not-arithmetic", "^", "numbers, quantities"],
  [full({ repeat: "§(2 * interval" }), "expression-not-arithmetic", "(", "a matching )"],
  [full({ repeat: "§mod(interval)" }), "expression-wrong-count", "mod", "mod(a, b)"],
  [full({ repeat: "'§'" }), "expression-empty", undefined, "a number or a sum"],
  [full({ repeat: "§[2]" }), "wrong-type", "a list of 1", "2 * interval"],
  [full({ repeat: "§true" }), "wrong-type", "true", "2 * interval"],
  [full({ lead: "1 + §cos(1)" }), "expression-unknown-name", "cos", "interval"],
  [
    full({ strands: "{ one: { start: [1, 0], repeat: [[-2, interval §; 1]] } }" }),
    "expression-not-arithmetic",
    ";",
    "numbers",
  ],
  [
    full({ strands: "{ one: { start: [1, 0], repeat: [§[-2, interval, 3]] } }" }),
    "wrong-type",
    "a list of 3",
    "[needle, row]",
  ],
  [full({ strands: "{ one: { start: §1, repeat: [[-2, interval]] } }" }), "wrong-type", "1", "[needle, row]"],
  [cable("cross: §[2]"), "wrong-type", "a list of 1", "[2, 2]"],
  [cable("cross: [2, §wide]"), "expression-unknown-name", "wide", "interval, offset"],
  [plait('rules: ["spread <= interval + §x"]'), "expression-unknown-name", "x", "interval, spread"],
  [plait('rules: ["§width <= interval"]'), "expression-unknown-name", "width", "interval, spread"],
  [plait('rules: [§"spread + interval"]'), "not-a-comparison", '"spread + interval"', "one of < <= = >= >"],
  [plait("rules: [§4]"), "not-a-comparison", "4", "spread <= interval + 2"],
  [plait('rules: ["spread <= interval §<= 4"]'), "expression-not-arithmetic", "<", "numbers"],
  [plait("rules: §spread"), "wrong-type", '"spread"', "spread <= interval + 2"],
]);

describe("pieces and motifs by names that a language keeps for itself", () => {
  it("are ordinary names", () => {
    const text = garmentText({
      pieces: `pieces:\n  __proto__:\n    outline: ${OUTLINE}\n    marks: { constructor: 3 cm, toString: 30 cm }`,
      motifs:
        "motifs:\n  constructor: { like: crossed cord, quantities: { __proto__: { unit: rows, allow: 3 } } }",
      place: "place:\n  - { motif: constructor, on: __proto__, from: constructor, to: toString }",
      weights: "weights: { __proto__: 7 }",
    });
    const { garment, diagnostics } = readGarment(text, "x.yaml");
    expect(diagnostics).toEqual([]);
    expect(garment?.pieces[0]?.name).toBe("__proto__");
    expect(garment?.placements[0]).toMatchObject({
      motif: "constructor",
      from: "constructor",
      to: "toString",
    });
    expect(garment?.motifs[0]?.quantities.map(({ name }) => name)).toEqual([
      "interval",
      "spread",
      "__proto__",
    ]);
    expect(Object.hasOwn(garment?.weights ?? {}, "__proto__")).toBe(true);
    expect(({} as { allow?: unknown }).allow).toBeUndefined();
  });
});

describe("several mistakes in one file", () => {
  it("are told together, in the order of their places, and make up no others", () => {
    const text = `format: evenrow/1
titel: x
bed: { needles: 150, pitch: 6,5 mm }
gauge:
  ground: { stitches: "22", rows: 0x1F, over: 10 Cm, within: 2 }
pieces:
  sleeve:
    outline:
      - { height: 0 cm, width: 20 }
      - { height: 33 cm, width: 31 cm }
      - { height: 30 cm, width: 0 cm }
    marks: { rib top: 4, underarm: 40 cm }
    grow: -1 cm
  body: 5
motifs:
  plait:
    like: crosed cord
    intervall: 4
    spread: { allow: 9..2, prefer: 3 }
    rules: ["spread <= intervl + 2"]
  other:
    kind: cord
    quantities: { twist: { unit: rows, allow: [] } }
    repeat: 2 * twist + tw
    strands: { a: { start: [1, 0], repeat: [[1, twist, 2]] } }
    order: [b]
place:
  - { motif: plait, on: sleve, from: rib top }
  - { motif: plait, on: sleeve, from: rib top, to: nowhere, repeats: 0 }
  - { motif: other, on: body, from: anywhere }
weights: { twist: -1 }
weights: 5
`;
    const { garment, diagnostics } = readGarment(text, "x.yaml");
    expect(garment).toBeUndefined();
    expect(diagnostics.map(({ code, place }) => `${place?.line}:${place?.column} ${code}`)).toEqual([
      "2:1 unknown-key",
      "3:29 decimal-comma",
      "4:1 no-cord-gauge",
      "5:23 quoted-number",
      "5:35 coded-number",
      "5:47 unknown-unit",
      "5:62 missing-percent",
      "9:32 missing-unit",
      "11:19 outline-not-rising",
      "11:33 zero-size",
      "12:23 missing-unit",
      "12:36 mark-outside",
      "13:11 negative-size",
      "14:9 wrong-type",
      "17:11 unknown-motif",
      "18:5 unknown-key",
      "19:22 reversed-range",
      "20:24 expression-unknown-name",
      "21:3 missing-key",
      "23:47 empty-range",
      "24:25 expression-unknown-name",
      "25:45 wrong-type",
      "26:13 unknown-strand",
      "28:25 unknown-piece",
      "29:52 unknown-mark",
      "29:70 zero-size",
      "31:19 negative-size",
      "32:1 duplicate-key",
    ]);
  });

  it("are cut off where they are too many to help", () => {
    const text = garmentText({
      yarn: Array.from({ length: 150 }, (_, index) => `key${index}: 1`).join("\n"),
    });
    const { diagnostics } = readGarment(text, "x.yaml");
    expect(diagnostics).toHaveLength(101);
    expect(diagnostics.at(-1)).toMatchObject({
      code: "too-many-mistakes",
      message: expect.stringContaining("50 more"),
    });
  });
});

describe("warnings", () => {
  it("do not keep a garment from being read", () => {
    const { text, place: where } = marked(garmentText(cord("{ needles: §8, stitches: 19, over: 10 cm }")));
    const { garment, diagnostics } = readGarment(text, "x.yaml");
    expect(garment?.gauge.cord?.needles).toBe(8);
    expect(diagnostics).toMatchObject([
      { severity: "warning", code: "unusual-cord", place: where, found: "8" },
    ]);
  });

  it("say that a preference is not among what is allowed", () => {
    const { text, place: where } = marked(garmentText(plait("interval: { allow: [2, 4, 8], prefer: §6 }")));
    const { garment, diagnostics } = readGarment(text, "x.yaml");
    expect(garment?.motifs[0]?.quantities[0]?.prefer).toBe(6);
    expect(diagnostics).toMatchObject([
      {
        severity: "warning",
        code: "prefer-not-allowed",
        place: where,
        found: "6",
        expected: "one of 2, 4, 8",
      },
    ]);
  });
});
