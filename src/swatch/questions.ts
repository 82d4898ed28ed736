import { readSwatch, type SwatchProblem } from "./read-swatch.ts";
import type { Swatch } from "./swatch.ts";

/** One thing that is asked about swatches; an empty answer means that there is none. */
export interface SwatchQuestion {
  readonly ask: string;
  /** What `?` says. */
  readonly more: string;
  /** What is taken to stand before the colon, where the answer has none. */
  readonly label: string;
}

const swatchQuestions: readonly SwatchQuestion[] = [
  {
    ask: "A swatch of the ground, before washing? (such as 40 stitches 18.2 cm, 60 rows 19.4 cm; Enter: no more)",
    more: "Count whole stitches away from the edges, and lay the tape along them without stretching.",
    label: "ground",
  },
  {
    ask: "A swatch of the ground, washed and dried as the garment will be? (Enter: no more)",
    more: "It may be the one from before, counted and measured again. The washed swatches are the ones that count.",
    label: "washed ground",
  },
  {
    ask: "Cord, measured in its middle? (such as on 3 needles: 50 stitches 26 cm; Enter: no more)",
    more: "Knit 6 in (15 cm) of cord or more, leave out 1 in at either end, and do not stretch it. Washed cord: washed cord on 3 needles: 50 stitches 26 cm",
    label: "cord",
  },
];

/** How far the questions have got. */
export interface Asking {
  readonly swatches: readonly Swatch[];
  /** Index of the question that is asked; beyond the last once all are answered. */
  readonly at: number;
  /** As it was before the last answer, to which `back` returns. */
  readonly before?: Asking;
}

export const askingBegun: Asking = { swatches: [], at: 0 };

export const questionAt = ({ at }: Asking): SwatchQuestion | undefined => swatchQuestions[at];

export type Answered = { readonly asking: Asking } | { readonly refused: SwatchProblem };

/** Takes an answer to the question that is asked; `back` takes the last one back. */
export function answer(asking: Asking, line: string): Answered {
  const question = questionAt(asking);
  const text = line.trim();
  if (text === "back") return { asking: asking.before ?? asking };
  if (!question || text === "") return { asking: { ...asking, at: asking.at + 1, before: asking } };
  const read = readSwatch(labelled(text, question.label));
  return "problem" in read
    ? { refused: read }
    : { asking: { ...asking, swatches: [...asking.swatches, read.swatch], before: asking } };
}

/** "on 3 needles: ..." is said of a cord where a cord is asked for. */
function labelled(text: string, label: string): string {
  if (!text.includes(":")) return `${label}: ${text}`;
  return /^on\b/i.test(text) ? `${label} ${text}` : text;
}
