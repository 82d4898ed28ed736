import { wrap } from "../../src/report/wrap.ts";
import { bindingWords, changeWords, headOfChanges, headOfUnhelpful } from "../../src/why/why-text.ts";
import type { WhyTold } from "../../src/why/why-told.ts";
import type { WhyScreen } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { type Line, line } from "./line.ts";
import { paneTitle } from "./pane-title.ts";
import { linesAround } from "./window.ts";

/** Widest text that reads well. */
const readingWidth = 100;

/** What stands in the way and what would help, or which rules bind, as far as it is found out. */
export function whyLines(screen: WhyScreen, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const wide = Math.min(width, readingWidth);
  const { why } = screen;
  const blocks = answersIn(why).map((words, index): readonly Line[] => {
    const isChosen = index === screen.at;
    return wrap(words, wide - 2).map((text, row) =>
      line(`${row === 0 && isChosen ? glyphs.pointer : " "} ${text}`, isChosen ? "chosen" : "plain"),
    );
  });
  const others = othersIn(why);
  const foot = [
    ...others.flatMap((words) => wrap(words, wide, words.startsWith("-") ? 2 : 0).map((text) => line(text))),
    ...(others.length > 0 ? [line("")] : []),
    ...wrap(standing(screen), wide).map((text) => line(text, "accent")),
  ];
  const answers = [
    ...reasonsIn(why).flatMap((words) =>
      wrap(words, wide, words.startsWith("-") ? 2 : 0).map((text) => line(text)),
    ),
    ...(blocks.length > 0 ? [line("")] : []),
    ...headOfAnswers(why).flatMap((words) => wrap(words, wide).map((text) => line(text, "strong"))),
    ...blocks.flat(),
  ];
  const head = [paneTitle("Why", true, width, glyphs)];
  const before = answers.length - blocks.flat().length;
  const at = blocks.slice(0, screen.at).reduce((rows, block) => rows + block.length, before);
  const room = Math.max(1, height - head.length - foot.length - 1);
  return [
    ...head,
    ...linesAround(answers, blocks.length > 0 ? at : 0, room, wide, glyphs.cut),
    line(""),
    ...foot,
  ];
}

/** The same as sentences. */
export function whyFacts(screen: WhyScreen): readonly string[] {
  const { why } = screen;
  return [
    ...reasonsIn(why).map((words) => words.replace(/^- /, "Rule: ")),
    ...headOfAnswers(why),
    ...answersIn(why).map((words, index) => `${index === screen.at ? "Chosen: " : ""}${words}.`),
    ...othersIn(why).map((words) => words.replace(/^- /, "Rule: ")),
    standing(screen),
  ];
}

function othersIn(why: WhyTold | undefined): readonly string[] {
  if (why?.status !== "does not fit" || why.unhelpful.length === 0) return [];
  return [headOfUnhelpful, ...why.unhelpful.map(({ words }) => `- ${words}`)];
}

function reasonsIn(why: WhyTold | undefined): readonly string[] {
  if (!why || why.status === "fits") return [];
  if (!why.smallest) return ["Nothing fits."];
  if (why.conflict.length === 0)
    return ["Nothing fits: the field is too short or too narrow for the motif; no rule alone is to blame."];
  return [
    why.conflict.length === 1
      ? "Nothing fits. This rule stands in the way whatever else is chosen:"
      : "Nothing fits. These rules cannot all be kept, whatever else gives way:",
    ...why.conflict.map(({ words, line: at }) => `- ${words}${at === undefined ? "" : ` (line ${at})`}`),
  ];
}

function headOfAnswers(why: WhyTold | undefined): readonly string[] {
  if (!why) return [];
  if (why.status === "fits")
    return why.binding.length > 0
      ? ["It fits. These rules bind; what a step of each would cost more or less:"]
      : why.complete
        ? ["It fits, and no rule holds it back."]
        : ["It fits."];
  return why.changes.length > 0 ? [`${headOfChanges.slice(0, -1)}; Enter makes it:`] : [];
}

function answersIn(why: WhyTold | undefined): readonly string[] {
  if (!why) return [];
  return why.status === "fits" ? why.binding.map(bindingWords) : why.changes.map(changeWords);
}

/** What is being done, or how the asking ended. */
function standing({ why, doing, isDone }: WhyScreen): string {
  if (!isDone) return `${doing === undefined || doing === "" ? "Working" : doing} ... Esc gives it up.`;
  if (!why) return `No answer was found: ${doing ?? "the time was up"}.`;
  if (!why.complete) return "The time allowed was up before everything was tried.";
  if (why.status === "does not fit" && why.changes.length === 0)
    return "No change of one rule, or of two together, was found that would let it fit.";
  return "Everything was tried.";
}
