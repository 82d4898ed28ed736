import stringWidth from "string-width";
import { needleAt, needleName } from "../../cloth/bed.ts";
import { printable } from "../../diagnostics/shown.ts";
import type { Scene } from "../scene.ts";
import { sideInSight } from "../view.ts";
import type { Glyphs } from "./glyph-sets.ts";
import { terminalRow } from "./place.ts";
import type { Window } from "./window.ts";

/** The names of marks by the terminal row at which they stand. */
export function markLabels(scene: Scene, view: Window, glyphs: Glyphs): ReadonlyMap<number, string> {
  const names = new Map<number, string[]>();
  if (view.labels === 0) return new Map();
  for (const { name, row } of scene.marks) {
    const at = terminalRow(row, scene, view);
    if (at !== undefined) names.set(at, [...(names.get(at) ?? []), name]);
  }
  return new Map(
    [...names].map(([row, here]) => {
      const text = here.map(printable).join(", ");
      return [row, cut(glyphs.name === "ascii" ? plainLetters(text) : text, view.labels - 1)] as const;
    }),
  );
}

const cut = (text: string, columns: number): string => {
  if (stringWidth(text) <= columns) return text;
  const letters = [...text];
  while (letters.length > 0 && stringWidth(letters.join("")) > columns - 1) letters.pop();
  return `${letters.join("")}~`;
};

/** Letters without their accents; others as a question mark. */
const plainLetters = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\x20-\x7e]/gu, "?");

/**
 * Row numbers by terminal row: those of the marks, and between them every tenth, twentieth ... as room allows; each
 * with an arrow to the side at which the carriage rests then.
 */
export function gutterNumbers(scene: Scene, view: Window): ReadonlyMap<number, string> {
  const numbers = new Map<number, string>();
  const numberOf = (row: number): string =>
    `${row}${sideInSight(scene.carriage[row]!, view.sight) === "left" ? "<" : ">"}`;
  if (view.gutter === 0) return numbers;
  for (const { row } of scene.marks) {
    const at = terminalRow(row, scene, view);
    if (at !== undefined) numbers.set(at, numberOf(row));
  }
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((one) => one * view.rowsPerRow >= 2) ?? 1000;
  for (let row = 0; row <= scene.rows; row += step) {
    const at = terminalRow(row, scene, view);
    if (at !== undefined && ![at - 1, at, at + 1].some((near) => numbers.has(near)))
      numbers.set(at, numberOf(row));
  }
  return numbers;
}

/** Needle names below the drawing: the outermost, the two at the centre, and others where there is room. */
export function bottomNames(scene: Scene, view: Window): string {
  const line: string[] = Array.from({ length: view.columns + view.labels }, () => " ");
  const put = (needle: number): void => {
    const name = needleName(needle);
    const boundary = needle > 0 ? needle - 0.5 : needle + 0.5;
    const { x } = view.toDot({ xMm: boundary * scene.stitch.widthMm, yMm: 0 });
    const middle = Math.floor(Math.round(x) / view.glyphs.dots.across);
    if (middle < 0 || middle >= view.columns) return;
    const start = Math.max(0, middle - Math.floor(name.length / 2));
    const end = start + name.length;
    if (end > line.length) return;
    // A space on both sides keeps names apart.
    if (line.slice(Math.max(0, start - 1), end + 1).some((character) => character !== " ")) return;
    [...name].forEach((character, place) => {
      line[start + place] = character;
    });
  };
  const { from, to } = scene.widest;
  for (const needle of [-1, 1, needleAt(from + 0.5), needleAt(to - 0.5), ...scene.needlesAtStart])
    put(needle);
  for (const step of [50, 20, 10, 5, 1])
    for (let needle = step; needle <= Math.max(-from, to); needle += step) {
      if (view.columnsPerNeedle * step < 6) break;
      if (needle <= -from) put(-needle);
      if (needle <= to) put(needle);
    }
  return line.join("").trimEnd();
}
