import { LENGTH } from "../../units/length.ts";
import { isUnit } from "../../units/measure.ts";
import type { Stock, Supply } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt, massAt, numberAt } from "./numbers.ts";

const ballsExample = "{ balls: 6, each: 50 g }";
const labelExample = "{ weight: 50 g, length: 135 m }";

/** So much yarn; with the tex that a ball's label tells by its weight and its length. */
export interface TakenStock extends Stock, Pick<Supply, "balls"> {
  readonly label?: Label;
}

/** What a ball's label says, and where it is written. */
export interface Label {
  readonly cursor: Cursor;
  readonly grams: number;
  readonly metres: number;
  /** Grams of 1000 m. */
  readonly tex: number;
}

/** Yarn by weight, by length, or in balls. */
export const takenStockAt = (reading: Reading, cursor: Cursor, what: string): TakenStock | undefined =>
  cursor.written.kind === "table" ? ballsAt(reading, cursor, what) : stockAt(reading, cursor, what);

function ballsAt(reading: Reading, cursor: Cursor, what: string): TakenStock | undefined {
  const table = tableAt(reading, cursor, what, keysOf("balls"), ballsExample);
  const countCursor = table?.need("balls", ballsExample);
  const count = countCursor && numberAt(reading, countCursor, "the number of balls", limits.balls);
  const eachCursor = table?.need("each", ballsExample);
  const label = eachCursor?.written.kind === "table" ? labelAt(reading, eachCursor) : undefined;
  const each =
    eachCursor?.written.kind === "table"
      ? label && { amount: label.grams, unit: "g" as const }
      : eachCursor && stockAt(reading, eachCursor, "one ball");
  if (count === undefined || !each) return undefined;
  return {
    amount: count * each.amount,
    unit: each.unit,
    balls: { count, each },
    ...(label && { label }),
  };
}

function labelAt(reading: Reading, cursor: Cursor): Label | undefined {
  const table = tableAt(reading, cursor, "one ball", keysOf("ball"), labelExample);
  const weight = table?.need("weight", labelExample);
  const length = table?.need("length", labelExample);
  const grams = weight && massAt(reading, weight, "one ball's weight", limits.onHandGrams);
  const mm = length && lengthAt(reading, length, "one ball's length", limits.onHandMm);
  if (grams === undefined || mm === undefined) return undefined;
  const metres = mm / 1000;
  const tex = (1000 * grams) / metres;
  if (tex >= limits.tex.least && tex <= limits.tex.most) return { cursor, grams, metres, tex };
  return report(reading, cursor, {
    code: "absurd-size",
    message: `by this label 1000 m of the yarn weigh ${Number(tex.toPrecision(3))} g`,
    expected: `from ${limits.tex.least} to ${limits.tex.most} g`,
  });
}

/** A weight or a length, as its unit says. */
function stockAt(reading: Reading, cursor: Cursor, what: string): Stock | undefined {
  const { written } = cursor;
  if (written.kind === "number")
    return report(reading, cursor, {
      code: "missing-unit",
      message: `${what} is a weight or a length, and needs its unit`,
      expected: `${written.text} g or ${written.text} m`,
    });
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is a weight or a length`,
      expected: "300 g, 400 m, or { balls: 6, each: 50 g }",
    });
  const balls = inBalls.exec(written.text)?.groups;
  if (balls)
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} in balls is told by their number and what each of them is`,
      expected: `{ balls: ${balls.count}, each: ${balls.each ?? "50 g"} }`,
    });
  if (isLength(written.text)) {
    const mm = lengthAt(reading, cursor, what, limits.onHandMm);
    return mm === undefined ? undefined : { amount: mm / 1000, unit: "m" };
  }
  const grams = massAt(reading, cursor, what, limits.onHandGrams);
  return grams === undefined ? undefined : { amount: grams, unit: "g" };
}

/** "5 balls", "5 balls of 50 g", "5 x 50 g". */
const inBalls =
  /^\s*(?<count>\d+(?:\.\d+)?)\s*(?:(?:balls?|skeins?|cones?)\b\s*(?:of|at|x|\*|\u00d7|@)?|x|\*|\u00d7)\s*(?<each>\d+(?:\.\d+)?\s*[a-z]+)?\s*$/iu;

function isLength(text: string): boolean {
  const unit = /[\p{L}"'\u2033\u201d]*$/u.exec(text.trim().replace(/\.$/, ""))![0];
  return isUnit(LENGTH, unit) || LENGTH.otherSpellings.has(unit.toLowerCase());
}
