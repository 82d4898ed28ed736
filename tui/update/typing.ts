import { typeAllows } from "../../src/explore/change-allows.ts";
import { typePreference, typeWeight } from "../../src/explore/change-preference.ts";
import type { GarmentRule } from "../../src/explore/garment-rule.ts";
import { allowsText, preferText, ruleTitle } from "../../src/explore/rule-words.ts";
import type { Next } from "../message.ts";
import { type OpenGarment, ruleAt, type State } from "../state.ts";
import { next, onScreen, withView } from "./next.ts";
import { changed } from "./versions.ts";

/** No rule is longer than this. */
const longestTyped = 120;

/** Starts typing the field that is chosen, from what it says now. */
export function startTyping(state: State): Next {
  const rule = state.garment && ruleAt(state.garment);
  if (!state.garment || !rule) return next(state);
  const { field } = state.garment.view;
  return next(onScreen(state, { kind: "typing", field, text: fieldText(rule, field) }));
}

function fieldText(rule: GarmentRule, field: OpenGarment["view"]["field"]): string {
  if (field === "prefer") return preferText(rule);
  return field === "weight" ? String(rule.weight?.value ?? "") : allowsText(rule.allows);
}

/** Takes what was typed; where it is refused, typing goes on. */
export function acceptTyped(state: State): Next {
  const { screen, garment } = state;
  const rule = garment && ruleAt(garment);
  if (screen.kind === "finding") return next(onScreen(state, { kind: "main" }));
  if (screen.kind !== "typing" || !garment || !rule) return next(state);
  const { text: source } = garment.version;
  if (screen.text.trim() === fieldText(rule, screen.field)) return next(onScreen(state, { kind: "main" }));
  const change =
    screen.field === "prefer"
      ? typePreference(source, rule, screen.text)
      : screen.field === "weight"
        ? typeWeight(source, rule, screen.text)
        : typeAllows(source, rule, screen.text);
  return changed(state, change);
}

/** Puts one more letter to what is typed, or changes it as a whole. */
export function typed(state: State, change: (text: string) => string): Next {
  const { screen } = state;
  if (screen.kind === "typing")
    return next(
      onScreen({ ...state, message: undefined }, { ...screen, text: limited(change(screen.text)) }),
    );
  if (screen.kind !== "finding") return next(state);
  const text = limited(change(screen.text));
  return next(found(onScreen({ ...state, message: undefined }, { ...screen, text }), text, screen.from));
}

const limited = (text: string): string => [...text].slice(0, longestTyped).join("");

/** Jumps to the next rule, from where the search began, whose name holds the letters. */
function found(state: State, text: string, from: number): State {
  const rules = state.garment?.reading.rules ?? [];
  const wanted = text.trim().toLowerCase();
  const inTurn = rules.map((_, offset) => (from + offset) % rules.length);
  const at =
    wanted === ""
      ? from
      : (inTurn.find((index) => rules[index]!.name.toLowerCase().startsWith(wanted)) ??
        inTurn.find((index) => ruleTitle(rules[index]!).toLowerCase().includes(wanted)));
  if (at === undefined)
    return { ...state, message: { kind: "refused", words: `No rule is called "${text}".` } };
  return withView(state, ({ field }) => {
    const fields = rules[at]?.fields ?? [];
    return { rule: at, pane: "rules", field: fields.includes(field) ? field : (fields[0] ?? "from") };
  });
}
