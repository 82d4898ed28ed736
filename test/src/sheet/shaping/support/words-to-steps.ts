import type { ShapingStep } from "../../../../../src/sheet/shaping/shaping-runs.ts";

/** What a knitter makes of a passage: the steps it names, with nothing to go by but its words. */
export interface ReadPassage {
  readonly act: string;
  readonly at: string;
  readonly steps: readonly ShapingStep[];
}

/** @throws where the words are none that a passage is made of */
export function stepsFromWords(words: string): ReadPassage {
  const head = /^(increase|decrease|cast on|bind off) (\d+) at (each side|the [a-z ]+?) (on rows? .*)$/.exec(
    words,
  );
  if (!head) throw new Error(`no shaping: ${words}`);
  const [, act, amount, at, rhythm] = head;
  // "12, 18 and 25" stays in one piece: only a comma before a word or before "2 every" parts.
  const parts = rhythm!.split(/, (?!\d+(?:,| and |$)|\d+(?:st|nd|rd|th)(?:,| and ))/);
  const steps: ShapingStep[] = [];
  let needles = Number(amount);
  for (const part of parts) {
    const plain = part.replace(/^then /, "");
    const end = /^to row (\d+)$/.exec(plain);
    if (end) {
      if (steps.at(-1)?.row !== Number(end[1])) throw new Error(`ends elsewhere: ${words}`);
      continue;
    }
    const changed = /^(\d+) (.*)$/.exec(plain);
    if (changed) needles = Number(changed[1]);
    for (const row of rowsOf(changed?.[2] ?? plain, steps.at(-1)?.row ?? 0)) steps.push({ row, needles });
  }
  return { act: act!, at: at!.replace(/^the /, ""), steps };
}

function rowsOf(part: string, before: number): number[] {
  if (part.startsWith("on row")) return numbersIn(part);
  const gaps = /^every (other|.*?\d.*?)? ?row(?: by turns)? (once|twice|(\d+) times)$/.exec(part);
  if (!gaps) throw new Error(`no rows: ${part}`);
  const turns = gaps[1] === undefined ? [1] : gaps[1] === "other" ? [2] : numbersIn(gaps[1]);
  const times = gaps[2] === "once" ? 1 : gaps[2] === "twice" ? 2 : Number(gaps[3]);
  let row = before;
  return Array.from({ length: times }, (_, index) => {
    row += turns[index % turns.length]!;
    return row;
  });
}

const numbersIn = (text: string): number[] => [...text.matchAll(/\d+/g)].map(([digits]) => Number(digits));
