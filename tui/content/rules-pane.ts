import { chosenText } from "../../src/explore/chosen.ts";
import { type GarmentRule, isHeld, type RuleField } from "../../src/explore/garment-rule.ts";
import { allowsText, preferText } from "../../src/explore/rule-words.ts";
import { isHeldHere, type OpenGarment, type Screen } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { cell, type Line, line, type Span } from "./line.ts";
import { paneTitle } from "./pane-title.ts";
import { windowAround } from "./window.ts";

interface Columns {
  readonly name: number;
  readonly allows: number;
  readonly prefer: number;
  readonly chosen: number;
  readonly weight: number;
}

const pointerWidth = 2;
const heldWidth = 5;

function columnsFor(width: number): Columns {
  const [prefer, chosen, weight] = [7, 7, 6];
  const rest = width - pointerWidth - prefer - chosen - heldWidth - weight;
  const name = Math.min(15, Math.max(9, Math.floor(rest * 0.42)));
  return { name, allows: rest - name, prefer, chosen, weight };
}

/** Every rule: what is allowed, what is preferred, what the fit chose, whether it is held fast, what it weighs. */
export function rulesPane(
  garment: OpenGarment,
  screen: Screen,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const { reading, view, solving } = garment;
  const columns = columnsFor(width);
  const inFocus = view.pane === "rules";
  const owners = new Set(reading.rules.map(({ owner }) => owner));
  const withOwners = reading.rules.length + owners.size <= height - 2;
  const selected = reading.rules[view.rule];
  const unit = selected && selected.unit !== "" ? `: ${selected.name} in ${selected.unit}` : "";
  const title = (withOwners || !selected ? "Rules" : `Rules of ${selected.owner}`) + unit;
  const lines: Line[] = [];
  let at = 0;
  let owner: string | undefined;
  reading.rules.forEach((rule, index) => {
    if (withOwners && rule.owner !== owner) lines.push(line(rule.owner, "strong"));
    owner = rule.owner;
    if (index === view.rule) at = lines.length;
    lines.push(ruleLine(garment, rule, index === view.rule && inFocus, screen, columns, glyphs));
  });
  const stale = solving.shown !== undefined && !solving.current;
  return [
    paneTitle(title, inFocus, width, glyphs),
    header(columns, stale),
    ...windowAround(lines, at, height - 2),
  ];
}

const header = ({ name, allows, prefer, chosen, weight }: Columns, stale: boolean): Line =>
  line(
    " ".repeat(pointerWidth) +
      cell("rule", name) +
      cell("allowed", allows) +
      cell("prefer", prefer) +
      cell(stale ? "before" : "fit", chosen) +
      cell("", heldWidth) +
      cell("weight", weight, "right"),
    "dim",
  );

function ruleLine(
  garment: OpenGarment,
  rule: GarmentRule,
  selected: boolean,
  screen: Screen,
  columns: Columns,
  glyphs: Glyphs,
): Line {
  const { solving, view } = garment;
  const fit = solving.shown?.fit;
  const isHere = isHeldHere(garment, rule);
  const allowed = `${allowsText(rule.allows)}${isHeld(rule) && !isHere ? " only" : ""}`;
  const chosen = fit ? chosenText(rule, fit) : "";
  const typing = selected && screen.kind === "typing" ? screen : undefined;
  const field = (name: RuleField, text: string, width: number, align: "left" | "right" = "left"): Span[] => {
    const isChosen =
      selected && (view.field === name || (name === "from" && view.field === "to" && isSpan(rule)));
    if (!isChosen) return [{ text: cell(text, width, align) }];
    if (typing && view.field === name) return [{ text: cell(`${typing.text}_`, width), style: "chosen" }];
    return [{ text: cell(marked(rule, text, view.field, glyphs), width, align), style: "chosen" }];
  };
  return [
    { text: selected ? `${glyphs.pointer} ` : "  ", style: "accent" },
    {
      text: cell(shortName(rule.name, columns.name - 1), columns.name - 1),
      style: selected ? "strong" : "plain",
    },
    { text: " " },
    ...(rule.fields.includes("from")
      ? field(view.field === "to" && selected && typing ? "to" : "from", allowed, columns.allows - 1)
      : field("to", allowed, columns.allows - 1)),
    { text: " " },
    ...field("prefer", preferText(rule), columns.prefer - 1),
    { text: " " },
    {
      text: cell(chosen, columns.chosen - 1),
      style: solving.current ? "strong" : "dim",
    },
    { text: " " },
    { text: cell(isHere ? "held" : "", heldWidth), style: "accent" },
    ...field("weight", rule.weight ? String(rule.weight.value) : "", columns.weight, "right"),
  ];
}

const shortName = (name: string, width: number): string =>
  name.length > width ? name.replace(/ margin$/, "") : name;

/** Rules that have two ends in one column. */
const isSpan = ({ fields }: GarmentRule): boolean => fields.includes("from") && fields.includes("to");

/** A sign before what a step would move, or behind it where that is the upper end, so that it shows without any style. */
const marked = (
  rule: GarmentRule,
  text: string,
  field: RuleField,
  { pointer, pointerBack }: Glyphs,
): string => (field === "to" && isSpan(rule) ? `${text} ${pointerBack}` : `${pointer} ${text}`.trimEnd());
