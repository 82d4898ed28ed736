import { describe, expect, test } from "vitest";
import { styleRules } from "../../../../src/sheet/html/style.ts";

interface Rule {
  /** The media it is for; none where it is for all. */
  readonly media: string;
  readonly selectors: readonly string[];
  readonly declarations: readonly string[];
}

const parts = (text: string, separator: string): readonly string[] =>
  text
    .split(separator)
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** The rules of a style sheet that has no braces in its strings. */
function rulesOf(css: string, media = ""): readonly Rule[] {
  const rules: Rule[] = [];
  for (let rest = css.trim(); rest !== ""; ) {
    const start = rest.indexOf("{");
    if (start < 0) throw new Error(`no rule: ${rest}`);
    const prelude = rest.slice(0, start).trim();
    let end = start + 1;
    for (let open = 1; open > 0; end++) open += { "{": 1, "}": -1 }[rest[end]!] ?? 0;
    const inner = rest.slice(start + 1, end - 1);
    if (prelude.startsWith("@media ")) rules.push(...rulesOf(inner, prelude.slice("@media ".length)));
    else rules.push({ media, selectors: parts(prelude, ","), declarations: parts(inner, ";") });
    rest = rest.slice(end).trim();
  }
  return rules;
}

const declared = (selector: string, media = ""): readonly string[] =>
  rulesOf(styleRules(undefined))
    .filter((rule) => rule.media === media && rule.selectors.includes(selector))
    .flatMap(({ declarations }) => declarations);

describe("how the sheet looks", () => {
  test("its typeface comes with it, regular and bold", () => {
    const rules = rulesOf(styleRules({ regular: "AAEC", bold: "AwQF" }));
    expect(
      rules.filter(({ selectors }) => selectors[0] === "@font-face").map((rule) => rule.declarations),
    ).toEqual([
      [
        "font-family: Sheet",
        "font-weight: normal",
        "src: url(data:font/ttf",
        'base64,AAEC) format("truetype")',
      ],
      [
        "font-family: Sheet",
        "font-weight: bold",
        "src: url(data:font/ttf",
        'base64,AwQF) format("truetype")',
      ],
    ]);
    expect(rules.slice(2)).toEqual(rulesOf(styleRules(undefined)));
  });

  test("without a typeface the reader's own fonts serve, and none is fetched", () => {
    const css = styleRules(undefined);
    expect(css).not.toMatch(/@font-face|url\(|@import/);
    expect(declared("body").find((one) => one.startsWith("font:"))).toMatch(/, sans-serif$/);
  });

  test("on paper steps, tables of figures and charts are not split, and heads come again or stay with what follows", () => {
    for (const selector of [".figures", ".work tbody", ".work tr", "dl div"])
      expect(declared(selector)).toContain("break-inside: avoid");
    expect(declared(".chart-page", "print")).toEqual(["break-before: page", "break-inside: avoid"]);
    expect(declared(".work thead")).toEqual(["display: table-header-group"]);
    for (const heading of ["h1", "h2", "h3", ".shaping-head"])
      expect(declared(heading)).toContain("break-after: avoid");
  });

  test("on a narrow screen the head of a table of figures goes, and its cells say their columns themselves", () => {
    const narrow = "screen and (max-width: 34rem)";
    expect(declared(".figures thead", narrow)).toEqual(["position: absolute", "left: -999rem"]);
    expect(declared(".figures td", narrow)).toContain("display: block");
    expect(declared(".figures td::before", narrow)).toEqual(['content: attr(data-column) ": "']);
  });

  test("a box that is ticked shows it by a sign, not by a colour", () => {
    expect(declared("input:checked::after")).toContain('content: "\\2713"');
    const colours = styleRules(undefined).match(/#[0-9a-f]{3,6}\b/g)!;
    expect(new Set(colours)).toEqual(new Set(["#000", "#fff"]));
  });
});
