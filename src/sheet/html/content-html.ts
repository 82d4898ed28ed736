import { element, type Markup } from "../../draw/svg/element.ts";
import type { Content } from "../document/document.ts";

export function contentMarkup(content: Content): Markup {
  switch (content.kind) {
    case "paragraph":
      return element("p", {}, content.text);
    case "facts":
      return element(
        "dl",
        {},
        ...content.facts.map(({ name, value }) =>
          element("div", {}, element("dt", {}, name), element("dd", {}, value)),
        ),
      );
    case "table":
      return element(
        "table",
        { class: "figures" },
        element("caption", {}, content.caption),
        element(
          "thead",
          {},
          element("tr", {}, ...content.head.map((cell) => element("th", { scope: "col" }, cell))),
        ),
        element(
          "tbody",
          {},
          ...content.rows.map(([name, ...cells]) =>
            element(
              "tr",
              {},
              element("th", { scope: "row" }, name!),
              // On a narrow screen a cell stands by itself, with its column's name before it.
              ...cells.map((cell, index) => element("td", { "data-column": content.head[index + 1] }, cell)),
            ),
          ),
        ),
      );
  }
}
