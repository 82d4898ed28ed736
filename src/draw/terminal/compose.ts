import type { Glyphs } from "./glyph-sets.ts";
import type { Ink } from "./inks.ts";
import type { Cell } from "./runs.ts";
import type { Window } from "./window.ts";

interface Filling {
  ink: Ink;
  bits: number;
  /** Dots of the ink that gives the cell its role. */
  dots: number;
  stroke: string;
}

const empty: Cell = { character: " ", role: "plain" };

/** Inks laid over one another: loud ones share a cell, and its role is that of the one with the most dots there. */
export function composeCells(view: Window, glyphs: Glyphs, inks: readonly Ink[]): Cell[][] {
  const fillings: (Filling | undefined)[] = Array.from({ length: view.columns * view.rows });
  for (const ink of inks) layInk(view, ink, fillings);
  return Array.from({ length: view.rows }, (_, row) =>
    Array.from({ length: view.columns }, (_, column) => {
      const filling = fillings[row * view.columns + column];
      return filling ? cellFor(filling, glyphs) : empty;
    }),
  );
}

function layInk(view: Window, ink: Ink, fillings: (Filling | undefined)[]): void {
  const own = new Map<number, { bits: number; dots: number; stroke: string }>();
  for (const { column, row, bit, stroke } of ink.dots) {
    const at = row * view.columns + column;
    const here = own.get(at);
    if (!here) own.set(at, { bits: bit, dots: 1, stroke });
    else if ((here.bits & bit) === 0) {
      here.bits |= bit;
      here.dots++;
    }
  }
  for (const [at, { bits, dots, stroke }] of own) {
    const below = fillings[at];
    if (!below || (ink.loud && !below.ink.loud)) fillings[at] = { ink, bits, dots, stroke };
    else if (ink.loud === below.ink.loud) {
      const on = ink.role !== below.ink.role || dots >= below.dots;
      fillings[at] = on
        ? { ink, bits: ink.loud ? bits | below.bits : bits, dots, stroke }
        : { ...below, bits: bits | below.bits };
    }
  }
}

function cellFor({ ink, bits, stroke }: Filling, glyphs: Glyphs): Cell {
  const quietly = !ink.loud && glyphs.name !== "braille";
  const character = glyphs.name === "ascii" || quietly ? stroke : glyphs.character(bits);
  return { character, role: ink.role, ...(ink.strand !== undefined && { strand: ink.strand }) };
}
