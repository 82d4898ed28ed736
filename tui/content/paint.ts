import type { Line, Style } from "./line.ts";

/**
 * SGR parameters (ECMA-48 8.3.117), only of the 16 colours that the user's own theme defines. Nothing is told by
 * colour alone: every style goes with words, brackets or a mark of its own.
 */
const coloured: Readonly<Record<Style, string>> = {
  plain: "",
  strong: "1",
  dim: "2",
  title: "7",
  chosen: "7",
  accent: "36",
  warning: "1;33",
  first: "33",
  second: "36",
};

const colourless: Readonly<Record<Style, string>> = {
  plain: "",
  strong: "1",
  dim: "",
  title: "7",
  chosen: "7",
  accent: "1",
  warning: "1",
  first: "",
  second: "",
};

/** A line as the terminal takes it. */
export const paint = (spans: Line, colour: boolean): string =>
  spans
    .map(({ text, style = "plain" }) => {
      const codes = (colour ? coloured : colourless)[style];
      return codes === "" || text === "" ? text : `\u001b[${codes}m${text}\u001b[0m`;
    })
    .join("");
