import { element, type Markup } from "../../draw/svg/element.ts";
import { blockName } from "../block-name.ts";
import type { Block, DoLine, KnitLine, WorkLine } from "../document/document.ts";
import { knitPhrase } from "../document/phrases.ts";
import { stepsOf } from "../steps.ts";
import { tickGroups } from "../tick-boxes.ts";
import { contentMarkup } from "./content-html.ts";

/** A block of rows as a table whose head comes again on every sheet. */
export function blockMarkup(block: Block, piece: string): Markup {
  const { title, before, shaping, lines } = block;
  return element(
    "section",
    { class: "block" },
    element("h3", {}, title ?? "Rows"),
    ...before.map(contentMarkup),
    ...(shaping.length === 0
      ? []
      : [
          element("p", { class: "shaping-head" }, "Shaping, which also stands at its rows:"),
          element("ul", {}, ...shaping.map((words) => element("li", {}, words))),
        ]),
    element(
      "table",
      { class: "work" },
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          ...["Done", "Row"].map((name) => element("th", { scope: "col" }, name)),
          element("th", { scope: "col" }, `What to do: ${blockName(piece, block)}`),
        ),
      ),
      ...stepsOf(lines).map((step) => element("tbody", {}, ...step.map(lineMarkup))),
    ),
  );
}

const lineMarkup = (line: WorkLine): Markup => (line.kind === "knit" ? knitMarkup(line) : doMarkup(line));

const knitMarkup = (line: KnitLine): Markup =>
  element(
    "tr",
    { class: "knit" },
    element(
      "td",
      { colspan: 3 },
      element("p", {}, knitPhrase(line)),
      element(
        "div",
        { class: "ticks" },
        ...tickGroups(line).map((rows) =>
          element(
            "span",
            {},
            ...rows.map((row) => box(`row ${row} knitted`)),
            element("small", { "aria-hidden": "true" }, String(rows.at(-1))),
          ),
        ),
      ),
    ),
  );

const doMarkup = ({ row, carriage, phrases, running }: DoLine): Markup =>
  element(
    "tr",
    { class: "do" },
    element("td", { class: "tick" }, box(`row ${row} done`)),
    element(
      "th",
      { scope: "row" },
      element("b", {}, String(row)),
      element("small", {}, `carriage ${carriage}`),
    ),
    element(
      "td",
      {},
      ...phrases.map((phrase) => element("p", {}, phrase)),
      ...running.map((words) => element("p", { class: "running" }, words)),
    ),
  );

const box = (name: string): Markup => element("input", { type: "checkbox", "aria-label": name });
