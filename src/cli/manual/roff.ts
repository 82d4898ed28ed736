/** The macros of man(7), in which manual pages are written. */

/** The first line of a page; no date, which would make every build differ. */
export const heading = (name: string, section: number, version: string, manual: string): string =>
  `.TH ${name.toUpperCase()} ${section} "" "evenrow ${version}" "${manual}"`;

export const section = (heading: string, lines: readonly string[]): readonly string[] => [
  `.SH ${heading}`,
  ...(lines[0] === ".PP" ? lines.slice(1) : lines),
];

export const paragraphs = (...texts: readonly string[]): readonly string[] =>
  texts.flatMap((text) => [".PP", escaped(text)]);

/** A list of what is explained; a tag is text of the page's own, so it may be set in several faces. */
export const tagged = (
  entries: readonly (readonly [tag: string, ...texts: readonly string[]])[],
): readonly string[] =>
  entries.flatMap(([tag, first, ...more]) => [
    ".TP",
    tag,
    escaped(first ?? ""),
    ...more.flatMap((text) => [".br", escaped(text)]),
  ]);

export const bold = (text: string): string => `\\fB${escaped(text)}\\fR`;
export const italic = (text: string): string => `\\fI${escaped(text)}\\fR`;

/** Text as it is: no letter is an escape, no hyphen is broken, no line is taken for a request. */
export const escaped = (text: string): string =>
  text.replaceAll("\\", "\\e").replaceAll("-", "\\-").replace(/^[.']/, "\\&$&");
