import type { Bed, CordGauge, Gauge, GroundGauge } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, type Table, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt, numberAt, percentageAt, wholeAt } from "./numbers.ts";

const bedExample = "{ needles: 200, pitch: 4.5 mm }";

export function bedAt(reading: Reading, cursor: Cursor): Bed | undefined {
  const table = tableAt(reading, cursor, "the bed", keysOf("bed"), bedExample);
  const needlesCursor = table?.need("needles", bedExample);
  const needles = needlesCursor && wholeAt(reading, needlesCursor, "the bed's needles", limits.bedNeedles);
  const pitchCursor = table?.at("pitch");
  const pitchMm = pitchCursor && lengthAt(reading, pitchCursor, "the pitch", limits.pitchMm);
  const carriageCursor = table?.at("carriage");
  const carriage =
    carriageCursor && wordAt(reading, carriageCursor, "the carriage's side", ["left", "right"]);
  if (needles === undefined) return undefined;
  return { needles, ...(pitchMm !== undefined && { pitchMm }), carriage: carriage ?? "right" };
}

const gaugeExample = "{ stitches: 22, rows: 31, over: 10 cm }";
const withinExample = "{ stitches: 0.9 %, rows: 0.7 % }";
const cordExample = "{ needles: 3, stitches: 19, over: 10 cm }";

export function gaugeAt(reading: Reading, cursor: Cursor): Gauge | undefined {
  const table = tableAt(reading, cursor, "the gauge", keysOf("gauge"), `ground: ${gaugeExample}`);
  const groundCursor = table?.need("ground", `ground: ${gaugeExample}`);
  const ground = groundCursor && groundAt(reading, groundCursor);
  const cordCursor = table?.at("cord");
  const cord = cordCursor && cordAt(reading, cordCursor);
  return ground && { ground, ...(cord && { cord }) };
}

function groundAt(reading: Reading, cursor: Cursor): GroundGauge | undefined {
  const table = tableAt(reading, cursor, "the ground's gauge", keysOf("ground gauge"), gaugeExample);
  if (!table) return undefined;
  const stitches = swatchCount(reading, table, "stitches", gaugeExample);
  const rows = swatchCount(reading, table, "rows", gaugeExample);
  const overMm = swatchLength(reading, table, gaugeExample);
  const rowsOverCursor = table.at("rows over");
  const rowsOverMm =
    rowsOverCursor && lengthAt(reading, rowsOverCursor, "what the rows were counted over", limits.swatchMm);
  const within = groundWithinAt(reading, table);
  if (stitches === undefined || rows === undefined || overMm === undefined) return undefined;
  sensible(reading, cursor, overMm / stitches, "a stitch", "wide");
  sensible(reading, cursor, (rowsOverMm ?? overMm) / rows, "a row", "high");
  return {
    stitches,
    rows: rowsOverMm === undefined ? rows : (rows * overMm) / rowsOverMm,
    overMm,
    ...(rowsOverMm !== undefined && { rowsCounted: { rows, overMm: rowsOverMm } }),
    ...(within !== undefined && { within }),
  };
}

function cordAt(reading: Reading, cursor: Cursor): CordGauge | undefined {
  const table = tableAt(reading, cursor, "the cord's gauge", keysOf("cord gauge"), cordExample);
  if (!table) return undefined;
  const needlesCursor = table.need("needles", cordExample);
  const needles = needlesCursor && wholeAt(reading, needlesCursor, "the cord's needles", limits.cordNeedles);
  const stitches = swatchCount(reading, table, "stitches", cordExample);
  const overMm = swatchLength(reading, table, cordExample);
  const within = withinAt(reading, table);
  const thicknessCursor = table.at("thickness");
  const thicknessMm =
    thicknessCursor && lengthAt(reading, thicknessCursor, "the cord's thickness", limits.cordThicknessMm);
  if (needles === undefined || stitches === undefined || overMm === undefined) return undefined;
  const { least, most } = limits.usualCordNeedles;
  if (needlesCursor && (needles < least || needles > most))
    report(reading, needlesCursor, {
      severity: "warning",
      code: "unusual-cord",
      message: "a cord is usually knitted on 3 to 5 needles",
      expected: `from ${least} to ${most}`,
    });
  sensible(reading, cursor, overMm / stitches, "a cord stitch", "long");
  return {
    needles,
    stitches,
    overMm,
    ...(within !== undefined && { within }),
    ...(thicknessMm !== undefined && { thicknessMm }),
  };
}

function withinAt(reading: Reading, table: Table): number | undefined {
  const cursor = table.at("within");
  return cursor && percentageAt(reading, cursor, "how far the gauge may be off", limits.gaugeWithin);
}

/** One percentage for stitches and rows, or one for each. */
function groundWithinAt(reading: Reading, table: Table): GroundGauge["within"] {
  const cursor = table.at("within");
  if (!cursor) return undefined;
  if (cursor.written.kind !== "table") {
    const both = withinAt(reading, table);
    return both === undefined ? undefined : { stitches: both, rows: both };
  }
  const what = "how far the gauge may be off";
  const each = tableAt(reading, cursor, what, keysOf("within"), withinExample);
  if (!each) return undefined;
  if (each.keys().length === 0)
    return report(reading, cursor, {
      code: "missing-key",
      message: `neither stitches nor rows are said in ${what}`,
      expected: withinExample,
    });
  const one = (key: "stitches" | "rows"): number | undefined => {
    const at = each.at(key);
    return at && percentageAt(reading, at, `how far the ${key} may be off`, limits.gaugeWithin);
  };
  const [stitches, rows] = [one("stitches"), one("rows")];
  return { ...(stitches !== undefined && { stitches }), ...(rows !== undefined && { rows }) };
}

function swatchCount(reading: Reading, table: Table, key: string, example: string): number | undefined {
  const cursor = table.need(key, example);
  return cursor && numberAt(reading, cursor, `the number of ${key}`, limits.swatchCount);
}

function swatchLength(reading: Reading, table: Table, example: string): number | undefined {
  const cursor = table.need("over", example);
  return cursor && lengthAt(reading, cursor, "what the swatch was counted over", limits.swatchMm);
}

/** A slip in one of two numbers shows in their ratio. */
function sensible(reading: Reading, cursor: Cursor, mm: number, what: string, how: string): void {
  const { least, most } = limits.oneStitchMm;
  if (mm >= least && mm <= most) return;
  report(reading, cursor, {
    code: "absurd-size",
    message: `at this gauge ${what} is ${Number(mm.toPrecision(3))} mm ${how}`,
    expected: `from ${least} to ${most} mm`,
  });
}
