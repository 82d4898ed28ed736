import { chosenText } from "../../src/explore/chosen.ts";
import { type GarmentRule, isHeld } from "../../src/explore/garment-rule.ts";
import { termTitle } from "../../src/explore/holding-back.ts";
import { allowsText, preferText } from "../../src/explore/rule-words.ts";
import type { Fit } from "../../src/fit/fit.ts";
import { differences } from "../../src/report/differences.ts";
import { counted } from "../../src/report/words.ts";
import { fitShown, isHeldHere, type OpenGarment, type State } from "../state.ts";
import { choiceLines } from "./choices-pane.ts";
import { footer } from "./footer.ts";
import { plainText } from "./line.ts";
import { messageLine } from "./main-screen.ts";
import { helpLines, mistakesLines, questionLines, sheetLines } from "./other-screens.ts";
import { nowHeldBack, stepLines } from "./steps-pane.ts";
import { titleText } from "./title.ts";
import { tradeFacts } from "./trade-screen.ts";
import { whyFacts } from "./why-screen.ts";

const wide = 10_000;

/**
 * The facts of the screen as lines of text, one fact a line and the newest first, for a screen reader and for
 * terminals that cannot move their cursor.
 */
export function spokenLines(state: State): readonly string[] {
  const { screen, garment, shelf } = state;
  const message = plainText(messageLine(state)).trim();
  const keys = `Keys: ${footer(state, wide, 1).map(plainText).join(" ").trim().replaceAll(/ {2,}/g, ", ")}`;
  const said = message === "" ? [] : [message];
  if (screen.kind === "help") return [...said, ...textOf(helpLines(wide)), keys];
  if (!garment || screen.kind === "files" || screen.kind === "opening")
    return [
      ...said,
      "Evenrow: choose a garment to open.",
      ...shelf.entries.map(
        ({ title, file }, index) =>
          `${index === shelf.at ? "Chosen: " : ""}${title}${file === "" ? "" : `, ${file}`}`,
      ),
      keys,
    ];
  switch (screen.kind) {
    case "mistakes":
      return [...said, ...textOf(mistakesLines(garment, wide)), keys];
    case "sheet":
      return [...said, ...textOf(sheetLines(garment, wide)), keys];
    case "trade":
      return [...said, ...tradeFacts(screen), keys];
    case "why":
      return [...said, ...whyFacts(screen), keys];
    case "ask quit":
    case "ask unsaved":
    case "ask conflict":
      return [...said, ...textOf(questionLines(screen, garment, wide))];
    default:
      return [...said, ...facts(state, garment), keys];
  }
}

const textOf = (lines: readonly (readonly { readonly text: string }[])[]): readonly string[] =>
  lines.map(plainText).filter((text) => text.trim() !== "");

function facts(state: State, garment: OpenGarment): readonly string[] {
  const { reading, view, solving } = garment;
  const fit = fitShown(garment);
  const rule = reading.rules[view.rule];
  return [
    titleText(garment),
    nowHeldBack(garment),
    ...(rule ? [`Chosen rule: ${ruleFacts(garment, rule, fit)}. ${fieldFacts(state, garment)}`] : []),
    ...textOf(stepLines(garment)),
    ...reading.rules.map((one) => `Rule: ${ruleFacts(garment, one, fit)}.`),
    ...(solving.outcome.kind === "does not fit" ? textOf(choiceLines(garment, wide)) : choiceFacts(garment)),
    ...(fit ? costFacts(fit) : []),
    ...(fit ? pieceFacts(fit) : []),
  ];
}

function ruleFacts(garment: OpenGarment, rule: GarmentRule, fit: Fit | undefined): string {
  const chosen = fit ? chosenText(rule, fit) : "";
  return [
    `${rule.name} of ${rule.owner}`,
    `allowed ${allowsText(rule.allows)}${rule.unit === "%" || rule.unit === "repeats" || rule.unit === "columns" ? "" : ` ${rule.unit}`}`.trimEnd(),
    ...(rule.prefer === undefined ? [] : [`preferred ${preferText(rule)}`]),
    ...(chosen === "" ? [] : [`fit ${chosen}`]),
    ...(isHeldHere(garment, rule) ? ["held fast"] : isHeld(rule) ? ["this one value only"] : []),
    ...(rule.weight ? [`weight ${rule.weight.value}`] : []),
  ].join(", ");
}

const fields = { from: "lower end", to: "upper end", prefer: "preference", weight: "weight" } as const;

function fieldFacts({ screen }: State, { view }: OpenGarment): string {
  const field = `Field: ${fields[view.field]}.`;
  return screen.kind === "typing" ? `${field} Typed: ${screen.text}` : field;
}

function choiceFacts({ solving, view }: OpenGarment): readonly string[] {
  const { shown, current } = solving;
  if (!shown) return [];
  const before = current ? "" : " before the change";
  return [shown.fit, ...shown.rivals].map((fit, index) => {
    const words = index === 0 ? `Best fit${before}` : `Rival ${index}${before}`;
    const apart = index === 0 ? "" : `, ${differences(shown.fit, fit).join(", ")}`;
    return `${index === view.choice ? "Looked at: " : ""}${words}: cost ${fit.cost.toFixed(3)}${apart}.`;
  });
}

const costFacts = (fit: Fit): readonly string[] =>
  fit.terms.map(
    (term) =>
      `Cost of ${termTitle(fit, term)}: ${term.cost.toFixed(3)}, ${counted(term.amount, term.unit.replace(/s$/, ""), term.unit)} at weight ${term.weight}.`,
  );

const pieceFacts = (fit: Fit): readonly string[] =>
  fit.placements.map(
    ({ piece, motif, firstRow, lastRow, repeats, margins }) =>
      `Piece ${piece}: ${motif} from row ${firstRow} to row ${lastRow}, ${counted(repeats, "repeat")}; margins ${margins.bottom} rows below, ${margins.top} above, ${margins.left} needles left, ${margins.right} right.`,
  );
