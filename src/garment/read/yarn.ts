import type { WeighedSwatch, Yarn, Yarns } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { massAt, numberAt, wholeAt } from "./numbers.ts";

const yarnExample = "{ tex: 370 }";
const swatchExamples = {
  ground: "{ stitches: 50, rows: 70, weight: 38 g }",
  cord: "{ stitches: 40, weight: 4 g }",
} as const;

type Which = keyof Yarns;

export function yarnsAt(reading: Reading, cursor: Cursor): Yarns {
  const table = tableAt(reading, cursor, "the yarn", keysOf("yarns"), `ground: ${yarnExample}`);
  const yarn = (which: Which): Yarn | undefined => {
    const inner = table?.at(which);
    return inner && yarnAt(reading, inner, which);
  };
  const [ground, cord] = [yarn("ground"), yarn("cord")];
  return { ...(ground && { ground }), ...(cord && { cord }) };
}

function yarnAt(reading: Reading, cursor: Cursor, which: Which): Yarn | undefined {
  const table = tableAt(reading, cursor, `the ${which} yarn`, keysOf("yarn"), yarnExample);
  if (!table) return undefined;
  const texCursor = table.at("tex");
  const tex = texCursor && numberAt(reading, texCursor, "the yarn's tex", limits.tex);
  const swatchCursor = table.at("swatch");
  const swatch = swatchCursor && swatchAt(reading, swatchCursor, which);
  if (!texCursor && !swatchCursor)
    return report(reading, cursor, {
      code: "missing-key",
      message: `neither tex nor a weighed swatch is said of the ${which} yarn`,
      expected: `tex: 370, or swatch: ${swatchExamples[which]}`,
      found: "",
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
  return { ...(tex !== undefined && { tex }), ...(swatch && { swatch }) };
}

function swatchAt(reading: Reading, cursor: Cursor, which: Which): WeighedSwatch | undefined {
  const example = swatchExamples[which];
  const what = `the ${which}'s weighed swatch`;
  const table = tableAt(reading, cursor, what, keysOf(`${which} swatch`), example);
  if (!table) return undefined;
  const count = (key: "stitches" | "rows"): number | undefined => {
    const inner = table.need(key, example);
    return inner && wholeAt(reading, inner, `the swatch's ${key}`, limits.fromOne);
  };
  const stitches = count("stitches");
  const rows = which === "ground" ? count("rows") : 1;
  const weightCursor = table.need("weight", example);
  const grams = weightCursor && massAt(reading, weightCursor, "the swatch's weight", limits.swatchGrams);
  if (stitches === undefined || rows === undefined || grams === undefined) return undefined;
  return { stitches: stitches * rows, grams };
}
