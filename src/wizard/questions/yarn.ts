import * as limits from "../../garment/read/limits.ts";
import { lengthFrom, massFrom, numberFrom, type Parsed } from "../parsers.ts";
import { always, type Question } from "../question.ts";
import { noYarn, texOf } from "../yarn.ts";

export const yarnQuestions: readonly Question[] = [
  {
    id: "yarn",
    ask: () => "Which yarn is the cloth of: its tex, or a ball's grams and metres?",
    explain: "From it follows how much the yarn of the cloth weighs. Enter leaves it out.",
    more: "Such as 370 (grams of 1000 m), or from the label of a ball: 50 g = 135 m.",
    isAsked: always,
    suggested: () => noYarn,
    optional: true,
    parse: yarnFrom,
  },
];

/** "370", or a ball's label in either order: "50 g = 135 m", "135 m, 50 g". */
function yarnFrom(text: string): Parsed {
  if (text.trim().toLowerCase() === noYarn) return { answer: noYarn };
  const [first = "", second, third] = text
    .split(/[=,/]|(?<=\p{L})\s+(?=\d)/u)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (second === undefined || third !== undefined)
    return numberFrom(text.replace(/\s*tex\s*$/i, ""), "the yarn's tex", limits.tex);
  const [weight, length] = /(?:g|kg|oz)$/i.test(first) ? [first, second] : [second, first];
  const grams = massFrom(weight, "a ball's weight", limits.onHandGrams);
  if ("problem" in grams) return grams;
  const metres = lengthFrom(length, "a ball's length", {
    leastMm: limits.onHandMm.least,
    mostMm: limits.onHandMm.most,
  });
  if ("problem" in metres) return metres;
  const answer = `${grams.answer} = ${metres.answer}`;
  const tex = texOf(answer);
  if (tex !== undefined && tex >= limits.tex.least && tex <= limits.tex.most) return { answer };
  return { problem: "no yarn is as thick or as thin as that", right: "50 g = 135 m" };
}
